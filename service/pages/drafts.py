"""`/drafts`: the digests that are not kept yet, each with what it lacks."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import partial
from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from cards.errors import DraftMissing, Invalid
from service.pages import fields, shelf_places
from service.pages.digest_form import DigestForm, form_from
from service.pages.fields import Fault
from service.pages.form_digest import FormFaults, digest_from
from service.pages.wording import counted
from service.use_cases.drafts import MOST_DRAFTS, drop_draft, keep_draft, list_drafts, open_draft
from service.use_cases.looking_over import already_kept
from service.use_cases.ports import Desk
from service.use_cases.preferences import show_reader
from service.use_cases.records import Draft

SHELF = 25
"""Drafts on one page of the list: as many as books on one page of the library."""


@dataclass(frozen=True, slots=True)
class Listed:
    """A draft in the list.

    Attributes:
        title: as typed, "" when there is none yet.
        author: as typed.
        lacks: what it lacks, in words.
        fit: whether it can be kept as it is.
    """

    draft: Draft
    title: str
    author: str
    lacks: tuple[str, ...]
    fit: bool

    @property
    def whole(self) -> bool:
        """Whether it lacks nothing, and its file was understood to the last line."""
        return self.fit and not self.lacks and not self.draft.left


def install(door: Blueprint, desk: Desk) -> None:
    """Add the list of drafts to the door."""

    @door.get("/drafts")
    def drafts() -> str:
        """Show one page of the drafts, the last changed first."""
        return _page(desk)

    @door.post("/drafts/<uuid:draft_id>/keep")
    def keep_listed(draft_id: UUID) -> ResponseReturnValue:
        """Keep a draft as it stands; one that cannot be kept is opened, and says why."""
        try:
            draft = open_draft(desk, draft_id)
            digest = digest_from(form_from(draft.typed))
            if draft.file is None and already_kept(desk, digest):
                # What was written here corrects nothing unasked; its page asks.
                address = url_for("pages.draft", draft_id=draft_id, _anchor="known")
                return redirect(address, HTTPStatus.SEE_OTHER)
            added = keep_draft(desk, draft_id, digest)
        except (FormFaults, Invalid):
            address = url_for("pages.draft", draft_id=draft_id, check="yes")
            return redirect(address, HTTPStatus.SEE_OTHER)
        except DraftMissing:
            return redirect(url_for("pages.drafts"), HTTPStatus.SEE_OTHER)
        address = url_for("pages.drafts", after=request.args.get("after"), kept=added.kept.id)
        return redirect(address, HTTPStatus.SEE_OTHER)

    @door.post("/drafts/keep")
    def keep_whole() -> ResponseReturnValue:
        """Keep every draft that needs no second look, each by itself."""
        kept = sum(map(partial(_kept_whole, desk), list_drafts(desk, limit=MOST_DRAFTS).drafts))
        return redirect(url_for("pages.drafts", whole=kept), HTTPStatus.SEE_OTHER)

    @door.post("/drafts/<uuid:draft_id>/away")
    def put_away(draft_id: UUID) -> ResponseReturnValue:
        """Put a draft away for good."""
        drop_draft(desk, draft_id)
        address = url_for("pages.drafts", after=request.args.get("after"), away="one")
        return redirect(address, HTTPStatus.SEE_OTHER)


def _kept_whole(desk: Desk, draft: Draft) -> bool:
    """Keep a draft that is whole and of a book not in the library yet; tell whether it was."""
    if not _listed(draft).whole:
        return False
    digest = digest_from(form_from(draft.typed))
    if already_kept(desk, digest):
        return False
    try:
        keep_draft(desk, draft.id, digest)
    except (DraftMissing, Invalid):
        return False
    return True


def _page(desk: Desk) -> str:
    after = request.args.get("after")
    shelf = list_drafts(desk, shelf_places.read(after), SHELF)
    drafts = [_listed(draft) for draft in shelf.drafts]
    return render_template(
        "drafts.html",
        drafts=drafts,
        several_whole=sum(each.whole for each in drafts) > 1,
        after=after,
        next=shelf_places.written(shelf.next),
        days=show_reader(desk).days,
        kept_now=request.args.get("kept", ""),
        away="away" in request.args,
        kept_whole=_count_kept(),
    )


def _count_kept() -> int | None:
    """Return how many drafts were just kept at once, or None when none were asked to be."""
    try:
        return fields.whole(request.args, "whole", "A number", 0, MOST_DRAFTS)
    except Fault:
        return None


def _listed(draft: Draft) -> Listed:
    form = form_from(draft.typed)
    try:
        digest_from(form)
        fit = True
    except FormFaults:
        fit = False
    facts = form.facts
    return Listed(draft, facts["title"].strip(), facts["author"].strip(), tuple(_lacks(form)), fit)


def _lacks(form: DigestForm) -> Iterable[str]:
    """Yield what a digest could still be given, in words."""
    for name, what in (("title", "a title"), ("theme", "a theme")):
        if not form.facts[name].strip():
            yield what
    held = {name: [row for row in rows if row.text.strip()] for name, rows in form.rows.items()}
    for name in ("points", "commitments", "quotations"):
        if not held[name]:
            yield name
    bare = sum(not row.locator.strip() for row in held["quotations"])
    if bare:
        yield f"the {'page' if bare == 1 else 'pages'} of {counted(bare, 'quotation')}"
    points = {str(row.key) for row in held["points"]} | {"0"}
    apart = sum(row.after not in points for row in held["quotations"])
    if apart and held["points"]:
        yield f"the {'place' if apart == 1 else 'places'} of {counted(apart, 'quotation')}"
