"""`/items/<id>/compare`: what the reader gave beside what the digest says."""

from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from cards.answers import GRADES, Grade
from cards.kinds.base import Attempt, KindName
from service.pages.asking import ask
from service.pages.attempts import carried, read_attempt
from service.pages.carrying import begun_at, same_cue, sign_of
from service.pages.evidence import evidence
from service.pages.fields import Fault
from service.pages.plot_line import PlotLine, plot_line
from service.pages.ticks import found_by_comparison
from service.pages.turn import turn_of
from service.pages.wording import day_in_words, distance
from service.use_cases.answer import Compared, compare
from service.use_cases.items import ItemView, show_item
from service.use_cases.library import open_digest
from service.use_cases.ports import Desk
from service.use_cases.sit import todays_sitting

_WITHOUT_LINE = {KindName.RESTATE, KindName.ORDER, KindName.ACROSS}
"""Kinds whose answer stands at no place in the book."""


def install(door: Blueprint, desk: Desk) -> None:
    """Add the comparison to the door."""

    @door.get("/items/<uuid:item_id>/compare")
    def compared_before(item_id: UUID) -> ResponseReturnValue:  # noqa: ARG001
        """Lead back to Today: a comparison is made once, of what was just given."""
        return redirect(url_for("pages.today"), HTTPStatus.SEE_OTHER)

    @door.post("/items/<uuid:item_id>/compare")
    def compare_item(item_id: UUID) -> ResponseReturnValue:
        """Show an attempt beside the digest's words, with the four grades.

        Where the item is not any more what the reader was shown, it leads back to Today.
        """
        item = show_item(desk, item_id)
        if item.cue is None:
            return redirect(url_for("pages.today", gone=item_id), HTTPStatus.SEE_OTHER)
        if answered_since(item):
            return redirect(url_for("pages.today", elsewhere=item_id), HTTPStatus.SEE_OTHER)
        if not same_cue(request.form, item.cue):
            return redirect(url_for("pages.today", changed=item_id), HTTPStatus.SEE_OTHER)
        turn = turn_of(desk, todays_sitting(desk))
        try:
            attempt = read_attempt(request.form, item.cue)
        except Fault as fault:
            page = ask(item, turn, request.form, desk.now(), {fault.field: fault.message})
            return page, HTTPStatus.UNPROCESSABLE_ENTITY
        compared = compare(desk, item_id, attempt)
        mark = None if compared.graded_first else compared.mark
        begun = begun_at(request.form)
        return render_template(
            "compare.html",
            item=compared.item,
            cue=compared.item.cue,
            attempt=attempt,
            answered=compared.answered,
            compared=compared,
            evidence=evidence(item.cue, compared.answered, attempt, mark),
            grades=[(grade, due_line(compared, grade)) for grade in GRADES],
            carried=list(carried(attempt)),
            ticks=request.form.get("ticks", found_by_comparison(compared.mark.ideas)),
            begun="" if begun is None else begun.isoformat(),
            sign=sign_of(item.cue),
            answer_id=desk.new_id(),
            turn=turn,
            line=_line(desk, compared, attempt),
        )


def answered_since(item: ItemView) -> bool:
    """Tell whether an item has other answers now than the form says it had."""
    before = request.form.get("answers_before")
    now = item.kept.memory.answers if item.kept.memory else 0
    return before is not None and before != str(now)


def due_line(compared: Compared, grade: Grade) -> str:
    """Return when an item is asked again if it is graded so now."""
    due = compared.due[grade]
    when = f"{day_in_words(due)}, {distance(due, compared.today)}"
    name = grade.value.capitalize()
    if grade is Grade.BLANK:
        return f"{name}: once more before you stop, then on {when}."
    return f"{name}: asked again on {when}."


def _line(desk: Desk, compared: Compared, attempt: Attempt) -> PlotLine | None:
    """Return the strip of the book: its points, and where what was asked stands.

    Quotations are left off: some of them may still be asked today.
    """
    item = compared.item.kept.item
    page = compared.answered.page
    if item.kind in _WITHOUT_LINE or (item.kind is KindName.PLACE and page is None):
        return None
    kept = open_digest(desk, item.digest_id).kept
    return plot_line(kept, quotations=False, here=page, guess=attempt.page)
