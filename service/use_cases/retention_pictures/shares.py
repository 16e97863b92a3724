"""What came back when asked: by book, by kind, by the age of the memory, by month."""

from collections.abc import Sequence

from cards.retention.shares import Share, Verdict
from service.use_cases.picture_records import Column, Picture, Shares, Table, Unit
from service.use_cases.picture_records.table import MOST_ROWS
from service.use_cases.retaining import Retained
from service.use_cases.retention_pictures.words import (
    KINDS,
    came_back,
    counted,
    drawn,
    listed,
    month_in_words,
    percent,
    title_of,
)

MOST_BOOKS, MOST_MONTHS = 30, 24
"""Rows drawn: a page of books, two years of months. The table holds all."""
_FIGURES = (
    Column("asked", "Asked", Unit.COUNT),
    Column("came_back", "Came back", Unit.COUNT),
    Column("share", "Share", Unit.SHARE),
    Column("low", "From", Unit.SHARE),
    Column("high", "To", Unit.SHARE),
    Column("told", "Against the target", Unit.TEXT),
)
_NOTHING = (
    "Nothing has been asked a second time yet. What comes back is counted from the second day "
    "on which an item is asked."
)
_MOST_NAMED = 3


def by_book(retained: Retained) -> Picture:
    """Return what came back of each book, the most surely forgotten first."""
    found = retained.figures
    rows = sorted(
        ((title_of(retained, book), share) for book, share in found.books.items()),
        key=lambda row: (row[1].high, row[0]),
    )
    below = [title for title, share in rows if share.verdict(found.target) is Verdict.BELOW]
    told = _NOTHING
    if rows:
        told = (
            f"Of {counted(len(rows), 'book')} asked again, {_below(below)} below the "
            f"{found.target:.0%} you aim for beyond what chance alone explains"
        )
        told += f": {_some(below)}." if below else "."
        if len(rows) > MOST_BOOKS:
            told += (
                f" Drawn are the {MOST_BOOKS} that come back least surely; the figures hold all."
            )
    return _picture(
        "by-book",
        "Book by book",
        told,
        Column("book", "Book", Unit.TEXT),
        rows,
        found.target,
        rows[:MOST_BOOKS],
    )


def by_kind(retained: Retained) -> Picture:
    """Return what came back of each kind of item."""
    found = retained.figures
    rows = [(KINDS[kind], share) for kind, share in found.kinds.items()]
    told = _NOTHING
    if rows:
        (best, most), (worst, least) = _ends(rows)
        told = f"{worst}: {came_back(least)}."
        if best != worst:
            told = (
                f"Surest are {best.lower()}: {came_back(most)}. Least sure are "
                f"{worst.lower()}: {came_back(least)}."
            )
    kind = Column("kind", "What was asked", Unit.TEXT)
    return _picture("by-kind", "By what was asked", told, kind, rows, found.target)


def by_age(retained: Retained) -> Picture:
    """Return what came back by the days since the item was asked before."""
    found = retained.figures
    ages = found.forgetting.ages
    rows = [(each.age.words, each.share) for each in ages]
    told = _NOTHING
    if rows:
        (first, young), (last, old) = rows[0], rows[-1]
        told = f"After {first}, {came_back(young)}."
        if len(rows) > 1:
            told = f"After {first}, {came_back(young)}; after {last}, {came_back(old)}."
    age = Column("age", "Days since it was asked before", Unit.TEXT)
    return _picture("by-age", "By the age of the memory", told, age, rows, found.target)


def by_month(retained: Retained) -> Picture:
    """Return what came back month by month."""
    found = retained.figures
    rows = [(month_in_words(month), share) for month, share in found.months.items()]
    told = _NOTHING
    if rows:
        last, share = rows[-1]
        told = f"In {last}, {came_back(share)}."
        if len(rows) > 1:
            before, earlier = rows[-2]
            told = f"In {last}, {came_back(share)}; in {before}, {came_back(earlier)}."
        if len(rows) > MOST_MONTHS:
            told += f" Drawn are the last {MOST_MONTHS} months; the figures hold all."
    month = Column("month", "Month", Unit.TEXT)
    return _picture(
        "by-month", "Month by month", told, month, rows, found.target, rows[-MOST_MONTHS:]
    )


def _picture(
    name: str,
    title: str,
    told: str,
    of: Column,
    rows: Sequence[tuple[str, Share]],
    target: float,
    shown: Sequence[tuple[str, Share]] | None = None,
) -> Picture:
    table = Table(
        (of, *_FIGURES),
        tuple(
            (
                label,
                share.asked,
                share.recalled,
                share.share,
                *share.bounds,
                share.told(target),
            )
            for label, share in rows[:MOST_ROWS]
            if share.asked
        ),
    )
    marks = tuple(drawn(*row) for row in (rows if shown is None else shown) if row[1].asked)
    return Picture(name, title, told, table, Shares(marks, target))


def _ends(rows: Sequence[tuple[str, Share]]) -> tuple[tuple[str, Share], tuple[str, Share]]:
    """Return the row that comes back best and the one that does least, by the middle of each."""
    by_middle = sorted(rows, key=lambda row: sum(row[1].bounds))
    return by_middle[-1], by_middle[0]


def _below(below: Sequence[str]) -> str:
    if not below:
        return "none lies"
    return "one lies" if len(below) == 1 else f"{len(below)} lie"


def _some(titles: Sequence[str]) -> str:
    more = len(titles) - _MOST_NAMED
    if more <= 0:
        return listed(titles)
    return listed([*titles[:_MOST_NAMED], f"{more} more"])


def headline(retained: Retained) -> str:
    """Return what came back of everything, in a sentence or two."""
    share = retained.figures.whole
    if share.share is None:
        return _NOTHING
    low, high = share.bounds
    return (
        f"When you were asked again, {came_back(share)}: {share.told(retained.figures.target)}. "
        f"With so many answers the true share lies, 19 times in 20, from {percent(low)} to "
        f"{percent(high)}."
    )
