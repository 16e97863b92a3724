"""The page that asks one item, and the line above it that says what the last answer came to."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from flask import render_template, request

from cards.answers import MAX_ATTEMPT
from cards.errors import AnswerMissing, ItemMissing
from cards.kinds.base import Asked
from service.pages import fields
from service.pages.fields import Faults
from service.use_cases.answer import ShownAnswer, show_answer
from service.use_cases.items import ItemView, show_item
from service.use_cases.ports import Desk
from service.use_cases.sit import Sitting


@dataclass(frozen=True, slots=True)
class Turn:
    """Where in the sitting the reader is.

    Attributes:
        left: items still to be asked, this one among them.
        last: the answer given just before, or None.
        elsewhere: the item whose answer was not kept, as it had changed meanwhile; or None.
        today: the reader's day.
    """

    left: int
    last: ShownAnswer | None
    elsewhere: ItemView | None
    today: date


def turn_of(desk: Desk, sitting: Sitting) -> Turn:
    """Return where in a sitting the reader is."""
    return Turn(len(sitting.items), last_answer(desk), _elsewhere(desk), sitting.day)


def last_answer(desk: Desk) -> ShownAnswer | None:
    """Return the answer the address names as the last one, or None."""
    answer_id = fields.identity(request.args, "answered")
    if answer_id is None:
        return None
    try:
        return show_answer(desk, answer_id)
    except AnswerMissing:
        return None


def _elsewhere(desk: Desk) -> ItemView | None:
    item_id = fields.identity(request.args, "elsewhere")
    if item_id is None:
        return None
    try:
        return show_item(desk, item_id)
    except ItemMissing:
        return None


def ask(
    item: ItemView,
    turn: Turn,
    form: Mapping[str, str],
    faults: Faults | None = None,
) -> str:
    """Return the page that asks an item, with what was typed already.

    The plot can be put out of sight where the page is asked for as well.
    """
    cue = item.cue
    assert cue is not None, "only items that are still held are asked"
    both = Asked.GAP in cue.asked and Asked.PAGE in cue.asked
    hidden = both and form.get("plot") == "hidden"
    return render_template(
        "ask.html",
        item=item,
        cue=cue,
        turn=turn,
        form=form,
        faults=faults or {},
        by_words=Asked.WORDS in cue.asked,
        by_gap=Asked.GAP in cue.asked and not hidden,
        by_page=Asked.PAGE in cue.asked,
        by_chapter=Asked.CHAPTER in cue.asked,
        can_hide=both,
        hidden=hidden,
        most=MAX_ATTEMPT,
    )
