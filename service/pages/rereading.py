"""`/re-reading`: which books to open again, where and why, and what came of doing so."""

from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from cards.errors import Conflict, Invalid
from cards.rereading import MAX_NOTE, MAX_PAGES, MOST_MINUTES
from service.pages import fields
from service.pages.fields import Faults
from service.use_cases.ports import Desk
from service.use_cases.rereading import (
    ReadAgain,
    earlier_rereadings,
    list_rereading,
    record_rereading,
    withdraw_rereading,
)

_FIELDS = {"day", "pages", "minutes", "note"}
_KEPT = {
    "read": "It is kept that you read it again. What it was for is asked afresh within three days.",
    "withdrawn": "The re-reading is taken back.",
}


def install(door: Blueprint, desk: Desk) -> None:
    """Add the re-reading list to the door."""

    @door.get("/re-reading")
    def rereading() -> str:
        """Show the books to open again, and what earlier re-readings came to."""
        return _page(desk)

    @door.post("/books/<uuid:digest_id>/re-readings")
    def keep_rereading(digest_id: UUID) -> ResponseReturnValue:
        """Keep that pages of a book were read again."""
        faults: Faults = {}
        read = _read(desk, digest_id, faults)
        if not faults:
            try:
                record_rereading(desk, read)
            except (Invalid, Conflict) as refusal:
                field = refusal.where or ""
                faults[field if field in _FIELDS else "form"] = refusal.message
            else:
                return _back("read")
        return _page(desk, digest_id, faults), HTTPStatus.UNPROCESSABLE_ENTITY

    @door.post("/re-readings/<uuid:rereading_id>/withdrawal")
    def take_rereading_back(rereading_id: UUID) -> ResponseReturnValue:
        """Take a re-reading back."""
        withdraw_rereading(desk, rereading_id)
        return _back("withdrawn")


def _read(desk: Desk, digest_id: UUID, faults: Faults) -> ReadAgain:
    form = request.form
    day = fields.taken(faults, lambda: fields.day(form, "day"))
    minutes = fields.taken(
        faults,
        lambda: fields.whole(form, "minutes", "The number of minutes", 1, MOST_MINUTES),
    )
    return ReadAgain(
        id=fields.identity(form, "rereading") or desk.new_id(),
        digest_id=digest_id,
        day=day,
        pages=fields.text(form, "pages").strip(),
        minutes=minutes,
        note=fields.text(form, "note").strip(),
    )


def _back(kept: str) -> ResponseReturnValue:
    return redirect(url_for("pages.rereading", kept=kept), HTTPStatus.SEE_OTHER)


def _page(desk: Desk, open_at: UUID | None = None, faults: Faults | None = None) -> str:
    return render_template(
        "rereading.html",
        listed=list_rereading(desk),
        earlier=earlier_rereadings(desk),
        new_id=desk.new_id,
        open_at=open_at,
        form=request.form,
        faults=faults or {},
        said=_KEPT.get(request.args.get("kept", "")),
        most_pages=MAX_PAGES,
        most_note=MAX_NOTE,
    )
