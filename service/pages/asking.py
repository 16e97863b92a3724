"""The page that asks one item, by whatever ways its kind asks."""

from collections.abc import Mapping
from datetime import datetime

from flask import render_template

from cards.answers import MAX_ATTEMPT
from cards.kinds.base import Asked
from service.pages.attempts import LONGEST_BLANK
from service.pages.carrying import begun_at, sign_of
from service.pages.fields import Faults
from service.pages.plot_line import line_of_cue
from service.pages.turn import Turn
from service.use_cases.items import ItemView

_RIGHT = {Asked.GAP, Asked.ORDER}
"""Ways that need the right page: what is placed, or put in order, stands there."""


def ask(
    item: ItemView,
    turn: Turn,
    form: Mapping[str, str],
    now: datetime,
    faults: Faults | None = None,
) -> str:
    """Return the page that asks an item, with what was typed already.

    The plot can be put out of sight where the page is asked for as well.

    Args:
        item: what is asked.
        turn: where in the sitting the reader is.
        form: what was typed, and since when, if the page was sent already.
        now: the instant it is shown.
        faults: what is wrong with it.
    """
    cue = item.cue
    assert cue is not None, "only items that are still held are asked"
    can_hide = Asked.GAP in cue.asked and Asked.PAGE in cue.asked
    hidden = can_hide and form.get("plot") == "hidden"
    ways = [way for way in cue.asked if not (hidden and way is Asked.GAP)]
    return render_template(
        "ask.html",
        item=item,
        cue=cue,
        turn=turn,
        form=form,
        faults=faults or {},
        left_ways=[way for way in ways if way not in _RIGHT],
        right_ways=[way for way in ways if way in _RIGHT],
        by_words=Asked.WORDS in ways,
        by_blanks=Asked.BLANKS in ways,
        can_hide=can_hide,
        hidden=hidden,
        line=line_of_cue(item, in_sight=Asked.GAP in ways) if Asked.PAGE in ways else None,
        begun=(begun_at(form) or now).isoformat(),
        sign=sign_of(cue),
        most=MAX_ATTEMPT,
        longest_blank=LONGEST_BLANK,
    )
