"""`/commitments`: what the books asked, and what came of it today."""

from dataclasses import dataclass
from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from cards.cautions import caution
from cards.commitments import MAX_NOTE, CheckIn, Outcome
from cards.parts import Part, PartKind
from service.pages import fields
from service.pages.book import tallies
from service.pages.fields import Faults
from service.use_cases.check_in import Report, check_in
from service.use_cases.library import OpenDigest, list_digests, open_digest
from service.use_cases.ports import Desk


@dataclass(frozen=True, slots=True)
class Promise:
    """One commitment in the index.

    Attributes:
        book: the digest it comes from, laid open.
        part: its words and identity.
        caution: the caution it carries, or None.
        tally: its check-ins by outcome, in words; "" without any.
        today: the check-ins reported about today.
    """

    book: OpenDigest
    part: Part
    caution: str | None
    tally: str
    today: tuple[CheckIn, ...]


def install(door: Blueprint, desk: Desk) -> None:
    """Add the commitments to the door."""

    @door.get("/commitments")
    def commitments() -> str:
        """Show every commitment with what came of it."""
        return _page(desk)

    @door.post("/books/<uuid:digest_id>/commitments/<uuid:commitment_id>/check-ins")
    def report(digest_id: UUID, commitment_id: UUID) -> ResponseReturnValue:
        """Keep what came of a commitment today."""
        faults = _faults()
        if faults:
            return _page(desk, commitment_id, faults), HTTPStatus.UNPROCESSABLE_ENTITY
        check_in(
            desk,
            Report(
                id=fields.identity(request.form, "check_in") or desk.new_id(),
                digest_id=digest_id,
                commitment_id=commitment_id,
                outcome=Outcome(request.form["outcome"]),
                note=fields.text(request.form, "note").strip(),
            ),
        )
        address = url_for("pages.commitments", checked=commitment_id, _anchor=f"c-{commitment_id}")
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
    return render_template(
        "commitments.html",
        promises=_promises(desk),
        outcomes=tuple(Outcome),
        new_id=desk.new_id,
        open_at=open_at,
        form=request.form,
        faults=faults or {},
        checked=fields.identity(request.args, "checked"),
        most=MAX_NOTE,
    )


def _promises(desk: Desk) -> list[Promise]:
    promises: list[Promise] = []
    after = None
    while True:
        shelf = list_digests(desk, after)
        for entry in shelf.entries:
            if entry.kept.held(PartKind.COMMITMENT):
                promises.extend(_of_book(open_digest(desk, entry.kept.id)))
        after = shelf.next
        if after is None:
            return promises


def _of_book(book: OpenDigest) -> list[Promise]:
    told = tallies(book.check_ins)
    return [
        Promise(
            book=book,
            part=part,
            caution=caution(part.text),
            tally=told[part.id],
            today=tuple(
                each
                for each in book.check_ins
                if each.commitment_id == part.id and each.day == book.today
            ),
        )
        for part in book.kept.held(PartKind.COMMITMENT)
    ]
