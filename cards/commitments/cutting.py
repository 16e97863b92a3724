"""How the calendar is cut into the periods of a measure: so many days, days named, months.

A cut numbers its periods from 0, the one the start lies in; what would begin after the last
day a date can name (31 December 9999) is no period.
"""

from bisect import bisect_left
from calendar import monthrange
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from typing import Protocol

from cards.commitments.measure import WEEKDAYS

LAST = date.max.toordinal()
"""The last day a date can name, counted as `date.toordinal` counts."""


@dataclass(frozen=True, slots=True)
class Span:
    """Days from a first to a last, both included."""

    first: date
    last: date

    def meets(self, other: "Span") -> bool:
        """Tell whether the two share a day."""
        return self.first <= other.last and other.first <= self.last


class Cut(Protocol):
    """A way of cutting days into periods."""

    def span(self, number: int) -> Span | None:
        """Return a period whole, from number 0, or None where no date is left for it."""
        ...

    def ending_from(self, day: date) -> int:
        """Return the number of the first period that ends on a day or later."""
        ...


class OfDays:
    """Periods of a length in days, the first beginning with the start."""

    def __init__(self, start: date, length: int) -> None:
        self._start = start.toordinal()
        self._length = length

    def span(self, number: int) -> Span | None:
        """Return a period whole, from number 0, or None where no date is left for it."""
        first = self._start + number * self._length
        if first > LAST:
            return None
        last = min(first + self._length - 1, LAST)
        return Span(date.fromordinal(first), date.fromordinal(last))

    def ending_from(self, day: date) -> int:
        """Return the number of the first period that ends on a day or later."""
        return max(0, day.toordinal() - self._start) // self._length


class OfMonths:
    """Periods of calendar months, the first beginning with a month's first day."""

    def __init__(self, first: date, months: int) -> None:
        self._first = first
        self._months = months

    def span(self, number: int) -> Span | None:
        """Return a period whole, from number 0, or None where no date is left for it."""
        first = months_on(self._first, number * self._months)
        if first is None:
            return None
        after = months_on(first, self._months)
        last = LAST if after is None else after.toordinal() - 1
        return Span(first, date.fromordinal(last))

    def ending_from(self, day: date) -> int:
        """Return the number of the first period that ends on a day or later."""
        return max(0, months_between(self._first, day) // self._months)


class OfNamedDays:
    """Periods of so many named days: each from its first such day to its last."""

    def __init__(self, start: date, on: Iterable[str], every: int) -> None:
        self._start = start.toordinal()
        self._every = every
        self._offsets = sorted(
            {(WEEKDAYS.index(day[-2:]) - start.weekday()) % len(WEEKDAYS) for day in on}
        )

    @property
    def days(self) -> int:
        """The days of the whole weeks one period takes."""
        return len(WEEKDAYS) * -(-self._every // len(self._offsets))

    def _named(self, number: int) -> int:
        weeks, place = divmod(number, len(self._offsets))
        return self._start + len(WEEKDAYS) * weeks + self._offsets[place]

    def span(self, number: int) -> Span | None:
        """Return a period whole, from number 0, or None where no date is left for it."""
        first = self._named(number * self._every)
        if first > LAST:
            return None
        last = min(self._named((number + 1) * self._every - 1), LAST)
        return Span(date.fromordinal(first), date.fromordinal(last))

    def ending_from(self, day: date) -> int:
        """Return the number of the first period that ends on a day or later."""
        weeks, days = divmod(max(0, day.toordinal() - self._start), len(WEEKDAYS))
        passed = weeks * len(self._offsets) + bisect_left(self._offsets, days)
        return passed // self._every


def months_between(one: date, other: date) -> int:
    """Return how many months on from the month of one day that of another is."""
    return (other.year - one.year) * 12 + other.month - one.month


def months_on(day: date, months: int) -> date | None:
    """Return the same day so many months on, or the last of a month too short for it.

    None where the year would be past 9999.
    """
    year, month = divmod(day.year * 12 + day.month - 1 + months, 12)
    if year > date.max.year:
        return None
    if day.day > 28:
        return date(year, month + 1, min(day.day, monthrange(year, month + 1)[1]))
    return date(year, month + 1, day.day)
