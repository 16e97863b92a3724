"""What the coming weeks ask, and what is known of each book in a year."""

from collections.abc import Sequence
from datetime import date, timedelta
from uuid import UUID

import numpy as np

from cards.planning.library import Habits, Remembered, Unasked
from cards.planning.ranked import Ranked
from cards.planning.records import BookKnown, ComingDay
from cards.planning.sittings import Sittings
from cards.sitting.weights import weights_of
from cards.sitting.worth_memory import Floats, recall

WEEKS = 8
"""How far ahead it is told what the days ask."""
A_YEAR = 365


def coming(
    items: Remembered, unasked: Sequence[Unasked], day: date, habits: Habits
) -> tuple[ComingDay, ...]:
    """Return what each of the coming 56 days is expected to ask, in minutes.

    What is overdue is asked on the first of them, as far as the reader's minutes go, and what
    is left over on the next: no day asks more than these, but for one item that takes longer.

    Args:
        items: all that were asked before.
        unasked: the others, in the order of their books.
        day: the first of the days.
        habits: how the reader sits.
    """
    days = 7 * WEEKS
    sittings = Sittings(Ranked.of(items, unasked, day, habits, days), habits)
    told = []
    for number in range(days):
        spent = sittings.sit()
        on = day + timedelta(days=number)
        told.append(ComingDay(on, spent.due, spent.unasked, sittings.left_over()))
    return tuple(told)


def known_in_a_year(
    items: Remembered, unasked: Sequence[Unasked], day: date, habits: Habits
) -> tuple[BookKnown, ...]:
    """Return how much of each book is known now and in a year, by the id of its digest.

    In a year without any sitting, and with one every day (`cards.planning.sittings`).

    Args:
        items: all that were asked before.
        unasked: the others, in the order of their books.
        day: the reader's day.
        habits: how the reader sits.
    """
    library = Ranked.of(items, unasked, day, habits, A_YEAR)
    sittings = Sittings(library, habits)
    for _ in range(A_YEAR):
        sittings.sit()
    kept_up = _by_book(library.books, sittings.known())
    now = _by_book(items.books, _left_alone(items, day, habits))
    left_alone = _by_book(items.books, _left_alone(items, day + timedelta(days=A_YEAR), habits))
    asked = _by_book(items.books, np.ones(len(items.books)))
    count = dict(asked)
    for entry in unasked:
        count[entry.book] = count.get(entry.book, 0) + entry.count
    return tuple(
        BookKnown(
            book=book,
            items=int(count[book]),
            asked=int(asked.get(book, 0)),
            now=now.get(book, 0.0),
            left_alone=left_alone.get(book, 0.0),
            kept_up=kept_up.get(book, 0.0),
        )
        for book in sorted(count)
    )


def _left_alone(items: Remembered, day: date, habits: Habits) -> Floats:
    """Return the chance that each item comes back on a day, not asked until then."""
    last = np.array([each.toordinal() for each in items.last_days], dtype=np.float64)
    elapsed = np.maximum(day.toordinal() - last, 0.0)
    stability = np.asarray(items.stability, dtype=np.float64)
    return recall(stability, elapsed, weights_of(items.kinds, habits.weighting))


def _by_book(books: Sequence[UUID], values: Floats) -> dict[UUID, float]:
    """Return the sum of the values of each book, however its items are ordered."""
    order = np.argsort(values, kind="stable")
    sums: dict[UUID, float] = {}
    for place in order:
        sums[books[place]] = sums.get(books[place], 0.0) + float(values[place])
    return sums
