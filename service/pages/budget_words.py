"""The two-page budget as it is shown: a bar a page, with words beside it."""

from collections.abc import Iterable
from dataclasses import dataclass

from cards.budget import Budget, PageUse
from service.pages.wording import capital, counted

_PAGES = {1: "Page one", 2: "Page two"}
HOLDS = {1: "theme, points and commitments", 2: "quotations"}
"""What stands on each page."""


@dataclass(frozen=True, slots=True)
class Bar:
    """How much of one page is used, drawn and said.

    Attributes:
        page: 1 or 2.
        name: the page's.
        holds: what stands on it.
        used: percent of the bar's length that is filled, 0 to 100.
        brim: percent of the bar's length at which the page is full.
        words: how many lines of how many, and how many too many.
        over: lines beyond the page, 0 when it fits.
    """

    page: int
    name: str
    holds: str
    used: float
    brim: float
    words: str
    over: int


def bars(budget: Budget) -> tuple[Bar, ...]:
    """Return the bars of a budget, page one first."""
    return tuple(map(_bar, budget.pages))


def over_in_words(shown: Iterable[Bar]) -> str:
    """Return in one sentence which pages are over, "" when none is: what a listener is told."""
    said = [f"{bar.name.lower()} is {counted(bar.over, 'line')} over" for bar in shown if bar.over]
    return f"{capital(' and '.join(said))}." if said else ""


def _bar(use: PageUse) -> Bar:
    longest = max(use.lines_used, use.lines_allowed, 1)
    words = f"{use.lines_used} of {use.lines_allowed} lines"
    if use.over:
        words += f", {use.over} too many"
    return Bar(
        page=use.page,
        name=_PAGES[use.page],
        holds=HOLDS[use.page],
        used=round(100 * use.lines_used / longest, 1),
        brim=round(100 * use.lines_allowed / longest, 1),
        words=words,
        over=use.over,
    )
