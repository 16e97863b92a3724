"""`/items/<id>/answers` and `/answers/<id>`: an answer is given, looked at, taken back."""

from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from cards.answers import GRADES, Grade, graded_first
from cards.errors import AnswerMissing, InvalidAnswer, ItemMissing
from cards.kinds.base import Attempt, Cue, KindName
from service.pages import fields
from service.pages.attempts import read_attempt
from service.pages.carrying import same_cue, taken_since
from service.pages.comparing import answered_since
from service.pages.evidence import evidence
from service.pages.fields import Fault
from service.pages.kept_attempts import attempt_kept
from service.use_cases.answer import record_answer, show_answer, take_back
from service.use_cases.commitments import wants_word
from service.use_cases.items import ItemView, show_item
from service.use_cases.ports import Desk
from service.use_cases.preferences import show_reader
from service.use_cases.recording import GivenAnswer


def install(door: Blueprint, desk: Desk) -> None:
    """Add answers to the door."""

    @door.post("/items/<uuid:item_id>/answers")
    def give_answer(item_id: UUID) -> ResponseReturnValue:
        """Keep an answer and lead on to the next item.

        An item that was answered elsewhere since it was compared keeps that answer alone.
        """
        answer_id = fields.identity(request.form, "answer")
        if answer_id is None:
            raise InvalidAnswer("The answer came without its id. Go back and compare again.")
        grade = _grade(request.form.get("grade", ""))
        item = show_item(desk, item_id)
        if answered_since(item) and not _kept(desk, answer_id):
            return redirect(url_for("pages.today", elsewhere=item_id), HTTPStatus.SEE_OTHER)
        attempt = None if item.cue is None else _attempt(item.cue)
        given = GivenAnswer(
            answer_id,
            item_id,
            grade,
            attempt=attempt,
            seconds=taken_since(request.form, desk.now()),
            graded_first=_graded_first(item, attempt),
        )
        record_answer(desk, given)
        return redirect(_onwards(desk, item, answer_id), HTTPStatus.SEE_OTHER)

    @door.get("/answers/<uuid:answer_id>")
    def answer(answer_id: UUID) -> str:
        """Show an answer beside the digest's words."""
        shown = show_answer(desk, answer_id)
        cue, says, given = shown.item.cue, shown.answered, shown.answer.answer
        attempt = None if cue is None else attempt_kept(given.attempt, cue, given.ticked)
        return render_template(
            "answer.html",
            shown=shown,
            given=given,
            attempt=attempt,
            evidence=None
            if cue is None or says is None or attempt is None
            else evidence(cue, says, attempt, shown.mark(attempt)),
            today=show_reader(desk).days.of(desk.now()),
            grades=GRADES,
        )

    @door.post("/answers/<uuid:answer_id>/taken-back")
    def take_answer_back(answer_id: UUID) -> ResponseReturnValue:
        """Take an answer back and lead to Today, where its item is asked again."""
        try:
            take_back(desk, answer_id, desk.new_id())
        except ItemMissing:
            raise AnswerMissing(answer_id) from None
        return redirect(url_for("pages.today", answered=answer_id), HTTPStatus.SEE_OTHER)


def _onwards(desk: Desk, item: ItemView, answer_id: UUID) -> str:
    """Return where an answer leads: from a commitment restated to whether it was kept."""
    if item.kept.item.kind is KindName.RESTATE:
        commitment_id = item.kept.item.part_id
        if wants_word(desk, commitment_id):
            return url_for(
                "pages.check_in_page",
                commitment_id=commitment_id,
                then="today",
                answered=answer_id,
            )
    return url_for("pages.today", answered=answer_id)


def _kept(desk: Desk, answer_id: UUID) -> bool:
    try:
        show_answer(desk, answer_id)
    except AnswerMissing:
        return False
    return True


def _grade(written: str) -> Grade:
    try:
        return Grade(written)
    except ValueError:
        raise InvalidAnswer(
            "Choose how well it came back: blank, hazy, clear or vivid.", where="grade"
        ) from None


def _attempt(cue: Cue) -> Attempt | None:
    """Return what was given; None when its numbers stand for what is no longer shown."""
    if not same_cue(request.form, cue):
        return None
    try:
        return read_attempt(request.form, cue)
    except Fault as fault:
        raise InvalidAnswer(fault.message, where=fault.field) from fault


def _graded_first(item: ItemView, attempt: Attempt | None) -> bool:
    """Tell whether the comparison kept its mark back: by the rule, whatever the form says."""
    answers = item.kept.memory.answers if item.kept.memory else 0
    return attempt is not None and not attempt.empty and graded_first(item.kept.item.id, answers)
