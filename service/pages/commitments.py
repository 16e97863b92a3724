"""`/commitments`: what the books asked, and what came of it."""

from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from cards.commitments import MAX_NOTE, Outcome
from cards.errors import Conflict
from service.pages import fields, shelf_places
from service.pages.fields import Faults
from service.use_cases.check_in import Report, check_in
from service.use_cases.commitments import list_commitments
from service.use_cases.ports import Desk

BOOKS = 25
"""Books on one page of the commitments: as many as on one page of the library."""
_SAID_OTHERWISE = (
    "This was kept already, saying something else. What you write now is kept beside it, not in "
    "its place."
)


def install(door: Blueprint, desk: Desk) -> None:
    """Add the commitments to the door."""

    @door.get("/commitments")
    def commitments() -> str:
        """Show the commitments of one page of the library with what came of them."""
        return _page(desk)

    @door.post("/books/<uuid:digest_id>/commitments/<uuid:commitment_id>/check-ins")
    def report(digest_id: UUID, commitment_id: UUID) -> ResponseReturnValue:
        """Keep what came of a commitment today."""
        faults = _faults()
        if faults:
            return _page(desk, commitment_id, faults), HTTPStatus.UNPROCESSABLE_ENTITY
        sent = Report(
            id=fields.identity(request.form, "check_in") or desk.new_id(),
            digest_id=digest_id,
            commitment_id=commitment_id,
            outcome=Outcome(request.form["outcome"]),
            note=fields.text(request.form, "note").strip(),
        )
        try:
            check_in(desk, sent)
        except Conflict:
            return _page(desk, commitment_id, {"outcome": _SAID_OTHERWISE}), HTTPStatus.CONFLICT
        address = url_for(
            "pages.commitments",
            after=request.args.get("after"),
            checked=commitment_id,
            _anchor=f"c-{commitment_id}",
        )
        return redirect(address, HTTPStatus.SEE_OTHER)


def _faults() -> Faults:
    faults: Faults = {}
    if request.form.get("outcome") not in {outcome.value for outcome in Outcome}:
        faults["outcome"] = "Say what came of it: kept, partly or missed."
    note = fields.text(request.form, "note").strip()
    if len(note) > MAX_NOTE:
        faults["note"] = f"The note is {len(note)} characters long; at most {MAX_NOTE} are kept."
    return faults


def _page(desk: Desk, open_at: UUID | None = None, faults: Faults | None = None) -> str:
    after = request.args.get("after")
    page = list_commitments(desk, shelf_places.read(after), BOOKS)
    return render_template(
        "commitments.html",
        page=page,
        after=after,
        next=shelf_places.written(page.next),
        outcomes=tuple(Outcome),
        new_id=desk.new_id,
        open_at=open_at,
        form=request.form,
        faults=faults or {},
        checked=fields.identity(request.args, "checked"),
        most=MAX_NOTE,
    )
