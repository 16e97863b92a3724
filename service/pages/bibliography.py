"""`/books/<id>/facts`: the facts of a book taken from a bibliography."""

from dataclasses import replace
from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from cards.digest import Digest
from cards.errors import DigestChanged, Invalid
from service.pages import fields
from service.pages.fields import MOST_REVISIONS, Fault, Faults
from service.use_cases.bibliography import facts_in
from service.use_cases.library import open_digest
from service.use_cases.mend_digest import mend_digest
from service.use_cases.ports import Desk
from service.use_cases.records import BookFacts

MOST_PASTED = 200_000
"""Characters of a bibliography pasted here: some hundred books."""


def install(door: Blueprint, desk: Desk) -> None:
    """Add the taking of facts to the door."""

    @door.get("/books/<uuid:digest_id>/facts")
    def ask_facts(digest_id: UUID) -> str:
        """Ask for a bibliography."""
        return _page(desk, digest_id, {})

    @door.post("/books/<uuid:digest_id>/facts")
    def take_facts(digest_id: UUID) -> ResponseReturnValue:
        """Take the facts of the book that is chosen, or ask which of several is meant."""
        try:
            found = facts_in(desk, fields.text(request.form, "bibliography")[:MOST_PASTED])
            chosen = _chosen(found)
            revision = fields.whole(request.form, "revision", "A revision", 1, MOST_REVISIONS)
            if chosen is None:
                return _page(desk, digest_id, {}, found)
            digest = _with(open_digest(desk, digest_id).kept.digest(), chosen)
            mend_digest(desk, digest_id, digest, revision)
        except DigestChanged:
            changed = {"form": "The digest was changed since you opened this page. Try once more."}
            return _page(desk, digest_id, changed), HTTPStatus.CONFLICT
        except Fault as fault:
            return _page(desk, digest_id, {"form": fault.message}), HTTPStatus.CONFLICT
        except Invalid as refusal:
            page = _page(desk, digest_id, {"bibliography": refusal.message})
            return page, HTTPStatus.UNPROCESSABLE_ENTITY
        address = url_for("pages.book", digest_id=digest_id, kept="facts")
        return redirect(address, HTTPStatus.SEE_OTHER)


def _chosen(found: tuple[BookFacts, ...]) -> BookFacts | None:
    if len(found) == 1:
        return found[0]
    number = fields.whole(request.form, "book", "A book", 1, len(found))
    return None if number is None else found[number - 1]


def _with(digest: Digest, facts: BookFacts) -> Digest:
    """Return the digest with the facts a bibliography gives; what it does not give stays."""
    return replace(
        digest,
        title=facts.title or digest.title,
        author=facts.author or digest.author,
        edition=facts.edition or digest.edition,
        isbn=facts.isbn or digest.isbn,
        pages=facts.pages or digest.pages,
    )


def _page(desk: Desk, digest_id: UUID, faults: Faults, found: tuple[BookFacts, ...] = ()) -> str:
    return render_template(
        "facts.html",
        kept=open_digest(desk, digest_id).kept,
        typed=fields.text(request.form, "bibliography"),
        found=found,
        faults=faults,
        most=MOST_PASTED,
    )
