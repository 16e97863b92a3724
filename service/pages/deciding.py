"""`/commitments/<id>`: one commitment with its record, and what its reader decides about it."""

from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from cards.commitments import Act, Measure, Outcome
from cards.commitments.decisions import MAX_REASON
from cards.digest import MAX_TEXT
from cards.errors import Conflict, Invalid
from cards.wording import check
from service.pages import fields
from service.pages.fields import Fault, Faults
from service.pages.windows import windows_drawn
from service.use_cases.commitments import open_commitment
from service.use_cases.decide import Ruling, decide, withdraw_decision
from service.use_cases.ports import Desk
from service.use_cases.preferences import show_reader

_SAID_OTHERWISE = "This was decided already, otherwise. Decide once more, and it is kept beside it."


def install(door: Blueprint, desk: Desk) -> None:
    """Add a commitment and what is decided about it to the door."""

    @door.get("/commitments/<uuid:commitment_id>")
    def commitment(commitment_id: UUID) -> str:
        """Show one commitment: how it stands and why, its record, what can be decided."""
        return _page(desk, commitment_id, {})

    @door.post("/commitments/<uuid:commitment_id>/decisions")
    def decision(commitment_id: UUID) -> ResponseReturnValue:
        """Keep what was decided about a commitment."""
        try:
            decide(desk, _ruling(desk, commitment_id))
        except Fault as fault:
            return _refused(desk, commitment_id, {fault.field: fault.message})
        except Conflict:
            return _page(desk, commitment_id, {"act": _SAID_OTHERWISE}), HTTPStatus.CONFLICT
        except Invalid as refusal:
            where = refusal.where or "act"
            field = where if where in {"words", "until", "measure", "outcome"} else "act"
            return _refused(desk, commitment_id, {field: refusal.message})
        if request.form.get("then") == "today":
            return redirect(url_for("pages.today", decided=commitment_id), HTTPStatus.SEE_OTHER)
        return redirect(_record(commitment_id), HTTPStatus.SEE_OTHER)

    @door.post("/decisions/<uuid:decision_id>/taken-back")
    def take_decision_back(decision_id: UUID) -> ResponseReturnValue:
        """Take a decision back, and lead to its commitment."""
        fact = withdraw_decision(desk, decision_id)
        return redirect(_record(fact.commitment_id), HTTPStatus.SEE_OTHER)


def _record(commitment_id: UUID) -> str:
    return url_for("pages.commitment", commitment_id=commitment_id, decided="yes")


def _refused(desk: Desk, commitment_id: UUID, faults: Faults) -> ResponseReturnValue:
    return _page(desk, commitment_id, faults), HTTPStatus.UNPROCESSABLE_ENTITY


def _ruling(desk: Desk, commitment_id: UUID) -> Ruling:
    form = request.form
    try:
        act = Act(form.get("act", ""))
    except ValueError:
        raise Fault("act", "Choose what is to become of it.") from None
    outcome = form.get("outcome", "")
    if act is Act.CLOSE and outcome not in {each.value for each in Outcome}:
        raise Fault("outcome", "Say what came of it: kept, partly or missed.")
    measure = None
    if act is Act.MEASURE:
        measure = _measure(desk, fields.text(form, "measure").strip())
    return Ruling(
        id=fields.identity(form, "decision") or desk.new_id(),
        commitment_id=commitment_id,
        act=act,
        day=fields.day(form, "day"),
        measure=measure,
        until=fields.day(form, "until"),
        outcome=Outcome(outcome) if act is Act.CLOSE else None,
        words=fields.text(form, "words").strip(),
    )


def _measure(desk: Desk, words: str) -> Measure:
    """Read a measure from words, as it is read from a commitment's own."""
    if not words:
        raise Fault("measure", "Say how often, how much, or by when.")
    if len(words) > MAX_REASON:
        raise Fault("measure", f"At most {MAX_REASON} characters are read here.")
    today = show_reader(desk).days.of(desk.now())
    # The words of a measure alone are no sentence: an act before them makes one.
    found = check(f"I will do it {words}", today).measure or check(words, today).measure
    if found is None:
        raise Fault(
            "measure",
            "No measure can be read from this. Say it as in “twice a week until 3 March 2026”, "
            "“every other day for a month”, “by Friday”.",
        )
    return found


def _page(desk: Desk, commitment_id: UUID, faults: Faults) -> str:
    opened = open_commitment(desk, commitment_id)
    return render_template(
        "commitment.html",
        opened=opened,
        held=opened.held,
        day=opened.day,
        drawn=windows_drawn(opened.held.stand),
        acts=Act,
        outcomes=tuple(Outcome),
        suggested=check(opened.held.kept.text, opened.day).rewording,
        new_id=desk.new_id,
        faults=faults,
        typed=request.form,
        checked=fields.identity(request.args, "checked"),
        decided="decided" in request.args,
        most_words=MAX_REASON,
        most_text=MAX_TEXT,
    )
