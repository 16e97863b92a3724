"""`/items/<id>/compare`: what the reader gave beside what the digest says."""

from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from cards.answers import GRADES, Grade
from cards.errors import ItemMissing
from cards.kinds.base import Asked, Attempt, KindName
from service.pages.asking import ask, turn_of
from service.pages.attempts import read_attempt
from service.pages.fields import Fault
from service.pages.gaps import Step, told
from service.pages.plot_line import PlotLine, plot_line
from service.pages.wording import day_in_words, distance
from service.use_cases.answer import Compared, compare
from service.use_cases.items import show_item
from service.use_cases.library import open_digest
from service.use_cases.ports import Desk
from service.use_cases.sit import todays_sitting


def install(door: Blueprint, desk: Desk) -> None:
    """Add the comparison to the door."""

    @door.get("/items/<uuid:item_id>/compare")
    def compared_before(item_id: UUID) -> ResponseReturnValue:  # noqa: ARG001
        """Lead back to Today: a comparison is made once, of what was just given."""
        return redirect(url_for("pages.today"), HTTPStatus.SEE_OTHER)

    @door.post("/items/<uuid:item_id>/compare")
    def compare_item(item_id: UUID) -> ResponseReturnValue:
        """Show an attempt beside the digest's words, with the four grades."""
        item = show_item(desk, item_id)
        if item.cue is None:
            raise ItemMissing(item_id)
        turn = turn_of(desk, todays_sitting(desk))
        try:
            attempt = read_attempt(request.form, item.cue)
        except Fault as fault:
            page = ask(item, turn, request.form, {fault.field: fault.message})
            return page, HTTPStatus.UNPROCESSABLE_ENTITY
        compared = compare(desk, item_id, attempt)
        return render_template(
            "compare.html",
            item=item,
            cue=item.cue,
            attempt=attempt,
            answered=compared.answered,
            mark=compared.mark,
            grades=[(grade, due_line(compared, grade)) for grade in GRADES],
            answer_id=desk.new_id(),
            turn=turn,
            line=_line(desk, compared, attempt),
            by_gap=Asked.GAP in item.cue.asked,
            plot=_plot(compared, attempt),
        )


def due_line(compared: Compared, grade: Grade) -> str:
    """Return when an item is asked again if it is graded so now."""
    due = compared.due[grade]
    when = f"{day_in_words(due)}, {distance(due, compared.today)}"
    name = grade.value.capitalize()
    if grade is Grade.BLANK:
        return f"{name}: once more before you stop, then on {when}."
    return f"{name}: asked again on {when}."


def _plot(compared: Compared, attempt: Attempt) -> list[Step]:
    cue, gap = compared.item.cue, compared.answered.gap
    return [] if cue is None or gap is None else told(cue.landmarks, gap, attempt.gap)


def _line(desk: Desk, compared: Compared, attempt: Attempt) -> PlotLine | None:
    """Return the strip of the book: for a theme its points, for a page where it stands.

    Quotations are left off: some of them may still be asked today.
    """
    item = compared.item.kept.item
    page = compared.answered.page
    if item.kind is KindName.RESTATE or (item.kind is KindName.PLACE and page is None):
        return None
    kept = open_digest(desk, item.digest_id).kept
    return plot_line(kept, quotations=False, here=page, guess=attempt.page)
