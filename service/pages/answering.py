"""`/items/<id>/answers` and `/answers/<id>`: an answer is given, looked at, taken back."""

import re
from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from cards.answers import GRADES, Grade
from cards.errors import AnswerMissing, InvalidAnswer, ItemMissing
from cards.kinds.base import Asked, Attempt, Cue
from service.pages import fields
from service.pages.attempts import read_attempt
from service.pages.fields import Fault
from service.pages.gaps import Step, told
from service.use_cases.answer import (
    GivenAnswer,
    ShownAnswer,
    record_answer,
    show_answer,
    take_back,
)
from service.use_cases.items import ItemView, show_item
from service.use_cases.ports import Desk
from service.use_cases.preferences import show_reader

_PLACE = re.compile(
    r"after (?P<gap>\d{1,9})|chapter (?P<chapter>\d{1,9})"
    r"|page (?P<page>\d{1,9})(?P<unseen>, points out of sight)?",
    re.ASCII,
)
"""A place as `Attempt.as_text` writes it."""


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
        if _changed(item) and not _kept(desk, answer_id):
            return redirect(url_for("pages.today", elsewhere=item_id), HTTPStatus.SEE_OTHER)
        attempt = None if item.cue is None else _attempt(item.cue)
        record_answer(desk, GivenAnswer(answer_id, item_id, grade, attempt=attempt))
        return redirect(url_for("pages.today", answered=answer_id), HTTPStatus.SEE_OTHER)

    @door.get("/answers/<uuid:answer_id>")
    def answer(answer_id: UUID) -> str:
        """Show an answer beside the digest's words."""
        shown = show_answer(desk, answer_id)
        attempt = _placed(shown.answer.answer.attempt, shown.item.cue)
        return render_template(
            "answer.html",
            shown=shown,
            given=shown.answer.answer,
            attempt=attempt,
            by_gap=shown.item.cue is not None and Asked.GAP in shown.item.cue.asked,
            plot=_plot(shown, attempt),
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


def _changed(item: ItemView) -> bool:
    """Tell whether an item has other answers now than when it was compared."""
    before = request.form.get("answers_before")
    now = item.kept.memory.answers if item.kept.memory else 0
    return before is not None and before != str(now)


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


def _attempt(cue: Cue) -> Attempt:
    try:
        return read_attempt(request.form, cue)
    except Fault as fault:
        raise InvalidAnswer(fault.message, where=fault.field) from fault


def _placed(attempt: str, cue: Cue | None) -> Attempt | None:
    """Return the place a kept attempt names; None when it names none that can be shown now."""
    said = _PLACE.fullmatch(attempt)
    if said is None or cue is None or Asked.WORDS in cue.asked:
        return None
    if said["gap"]:
        return Attempt(gap=int(said["gap"])) if cue.landmarks else None
    if said["chapter"]:
        return Attempt(chapter=int(said["chapter"]))
    return Attempt(page=int(said["page"]), landmarks_seen=not said["unseen"])


def _plot(shown: ShownAnswer, attempt: Attempt | None) -> list[Step]:
    cue, answered = shown.item.cue, shown.answered
    if cue is None or answered is None or answered.gap is None:
        return []
    return told(cue.landmarks, answered.gap, None if attempt is None else attempt.gap)
