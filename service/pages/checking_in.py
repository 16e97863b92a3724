"""`/commitments/<id>/check-in`, `/check-ins/<id>`: a commitment is reported on; a report goes."""

from collections.abc import Mapping
from dataclasses import dataclass
from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from cards.commitments import MAX_NOTE, Outcome
from cards.commitments.check_ins import MAX_WITNESS, MOST_DEEDS
from cards.errors import Conflict, Invalid
from service.pages import fields
from service.pages.fields import Faults
from service.pages.turn import turn_of
from service.use_cases.check_in import Report, check_in, withdraw_check_in
from service.use_cases.commitments import open_commitment
from service.use_cases.ports import Desk
from service.use_cases.sit import todays_sitting

_SAID_OTHERWISE = (
    "This was kept already, saying something else. What you say now is kept beside it, not in "
    "its place."
)
_FIELDS = ("day", "count", "note", "witness")


@dataclass(frozen=True, slots=True)
class _Sent:
    """A report as it was typed, or what is wrong with it."""

    report: Report | None
    faults: Faults


def install(door: Blueprint, desk: Desk) -> None:
    """Add check-ins to the door."""

    @door.get("/commitments/<uuid:commitment_id>/check-in")
    def check_in_page(commitment_id: UUID) -> str:
        """Ask what came of a commitment; a calendar and a mail lead here."""
        return _page(desk, commitment_id, request.args, {})

    @door.post("/commitments/<uuid:commitment_id>/check-ins")
    def report(commitment_id: UUID) -> ResponseReturnValue:
        """Keep what came of a commitment."""
        sent = _sent(desk, commitment_id)
        if sent.report is None:
            return _again(desk, commitment_id, sent.faults)
        try:
            fact = check_in(desk, sent.report)
        except Conflict:
            faults = {"outcome": _SAID_OTHERWISE}
            return _page(desk, commitment_id, _without_id(), faults), HTTPStatus.CONFLICT
        except Invalid as refusal:
            return _again(desk, commitment_id, {refusal.where or "outcome": refusal.message})
        return redirect(_onwards(commitment_id, fact.id), HTTPStatus.SEE_OTHER)

    @door.post("/check-ins/<uuid:check_in_id>/taken-back")
    def take_check_in_back(check_in_id: UUID) -> ResponseReturnValue:
        """Take a check-in back, and lead to its commitment."""
        fact = withdraw_check_in(desk, check_in_id)
        return redirect(_onwards(fact.commitment_id, fact.id), HTTPStatus.SEE_OTHER)


def _onwards(commitment_id: UUID, check_in_id: UUID) -> str:
    then = request.form.get("then", "")
    if then == "today":
        return url_for("pages.today", checked=check_in_id)
    if then == "commitments":
        return url_for("pages.commitments", checked=check_in_id, _anchor=f"c-{commitment_id}")
    return url_for("pages.commitment", commitment_id=commitment_id, checked=check_in_id)


def _again(desk: Desk, commitment_id: UUID, faults: Faults) -> ResponseReturnValue:
    return _page(desk, commitment_id, request.form, faults), HTTPStatus.UNPROCESSABLE_ENTITY


def _without_id() -> dict[str, str]:
    return {name: value for name, value in request.form.items() if name != "check_in"}


def _sent(desk: Desk, commitment_id: UUID) -> _Sent:
    form, faults = request.form, Faults()
    day = fields.taken(faults, lambda: fields.day(form, "day"))
    count = fields.taken(faults, lambda: fields.whole(form, "count", "The count", 0, MOST_DEEDS))
    if form.get("outcome") not in {outcome.value for outcome in Outcome}:
        faults["outcome"] = "Say what came of it: kept, partly or missed."
    words = {name: fields.text(form, name).strip() for name in ("note", "witness")}
    for name, most in (("note", MAX_NOTE), ("witness", MAX_WITNESS)):
        if len(words[name]) > most:
            faults[name] = (
                f"The {name} is {len(words[name])} characters long; at most {most} are kept."
            )
    if faults:
        return _Sent(None, faults)
    return _Sent(
        Report(
            id=fields.identity(form, "check_in") or desk.new_id(),
            commitment_id=commitment_id,
            outcome=Outcome(form["outcome"]),
            day=day,
            note=words["note"],
            count=count,
            witness=words["witness"],
            instead_of=fields.identity(form, "instead_of"),
        ),
        faults,
    )


def _page(desk: Desk, commitment_id: UUID, typed: Mapping[str, str], faults: Faults) -> str:
    opened = open_commitment(desk, commitment_id)
    then = typed.get("then", "")
    instead_of = fields.identity(typed, "instead_of")
    former = next(
        (each for each in opened.check_ins if each.id == instead_of and not each.withdrawn_on), None
    )
    shown = {name: typed.get(name, "") for name in _FIELDS}
    if former is not None and request.method == "GET":
        shown = {
            "day": former.day.isoformat(),
            "count": "" if former.count is None else str(former.count),
            "note": former.note,
            "witness": former.witness,
        }
    return render_template(
        "check_in.html",
        held=opened.held,
        day=opened.day,
        turn=turn_of(desk, todays_sitting(desk)) if then == "today" else None,
        then=then,
        former=former,
        typed=shown,
        faults=faults,
        outcomes=tuple(Outcome),
        check_in_id=fields.identity(typed, "check_in") or desk.new_id(),
        most_note=MAX_NOTE,
        most_witness=MAX_WITNESS,
    )
