"""`/books/<id>/proof`: a digest held against the text of its book, and mended from there."""

from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from cards.errors import BookTextMissing, DigestChanged, DocumentRefused, Invalid
from cards.proving.proof import Mend
from service.pages import fields
from service.pages.fields import Fault
from service.use_cases.library import open_digest
from service.use_cases.ports import Desk
from service.use_cases.prove import (
    forget_book,
    give_book,
    mend_from_book,
    proof_of,
)

TEXTS = ".epub,.txt,.html,.htm,.xhtml"
"""What the browser offers to choose; what is read is decided by the file's content."""


def install(door: Blueprint, desk: Desk) -> None:
    """Add the proof to the door."""

    @door.get("/books/<uuid:digest_id>/proof")
    def proof(digest_id: UUID) -> str:
        """Show where each quotation stands in the book, or ask for its text."""
        return _page(desk, digest_id)

    @door.post("/books/<uuid:digest_id>/proof")
    def give_text(digest_id: UUID) -> ResponseReturnValue:
        """Take the text of the book, and prove the digest against it."""
        file = request.files.get("book")
        if file is None or not file.filename:
            fault = "Choose the file of the whole book first: an EPUB, a text file or a web page."
            return _page(desk, digest_id, fault), HTTPStatus.UNPROCESSABLE_ENTITY
        try:
            give_book(desk, digest_id, file.filename, file.read())
        except (DocumentRefused, Invalid) as refusal:
            return _page(desk, digest_id, refusal.message), HTTPStatus.UNPROCESSABLE_ENTITY
        return redirect(url_for("pages.proof", digest_id=digest_id), HTTPStatus.SEE_OTHER)

    @door.post("/books/<uuid:digest_id>/proof/mend")
    def mend_proved(digest_id: UUID) -> ResponseReturnValue:
        """Mend what is ticked, in one step."""
        try:
            mended = mend_from_book(desk, digest_id, _wanted(), fields.revision(request.form))
        except (DigestChanged, Fault):
            fault = "The digest was changed since you opened this page. Look at it as it is now."
            return _page(desk, digest_id, fault), HTTPStatus.CONFLICT
        address = url_for("pages.proof", digest_id=digest_id, mended=mended.kept.revision)
        return redirect(address, HTTPStatus.SEE_OTHER)

    @door.post("/books/<uuid:digest_id>/proof/forget")
    def forget(digest_id: UUID) -> ResponseReturnValue:
        """Forget the text of the book."""
        forget_book(desk, digest_id)
        return redirect(
            url_for("pages.proof", digest_id=digest_id, forgotten="yes"), HTTPStatus.SEE_OTHER
        )


def _wanted() -> dict[int, list[Mend]]:
    """Return what is ticked: `mend` fields such as `3 words`; anything else is passed over."""
    wanted: dict[int, list[Mend]] = {}
    for ticked in request.form.getlist("mend"):
        number, _, what = ticked.partition(" ")
        if number.isdecimal() and len(number) < 4 and what in list(Mend):
            wanted.setdefault(int(number), []).append(Mend(what))
    return wanted


def _page(desk: Desk, digest_id: UUID, fault: str = "") -> str:
    opened = open_digest(desk, digest_id)
    try:
        proved = proof_of(desk, digest_id)
    except BookTextMissing:
        proved = None
    return render_template(
        "proof.html",
        kept=opened.kept,
        proved=proved,
        mends=Mend,
        texts=TEXTS,
        mended="mended" in request.args,
        forgotten="forgotten" in request.args and proved is None,
        fault=fault,
    )
