"""A reader has the wording of a commitment checked, before or after it is in a digest."""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING

from cards.digest import MAX_TEXT
from cards.errors import Invalid
from cards.wording import Wording, check

if TYPE_CHECKING:
    from service.use_cases.ports import Desk


def check_wording(text: str, on: date) -> Wording:
    """Return what the wording check says of a commitment; nothing is kept.

    Args:
        text: the commitment.
        on: the day its days and dates are relative to.

    Raises:
        Invalid: the text has no words, or more than a digest's part can have.
    """
    if not text.strip():
        raise Invalid("There are no words to check: write the commitment.", where="text")
    if len(text) > MAX_TEXT:
        raise Invalid(
            f"The commitment is {len(text)} characters long; at most {MAX_TEXT} are checked.",
            where="text",
        )
    return check(text, on)


def readers_day(desk: Desk) -> date:
    """Return the reader's day it is now."""
    with desk.store.reading() as work:
        return work.readers.get(desk.reader).days.of(desk.now())
