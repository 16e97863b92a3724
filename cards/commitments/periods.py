"""The periods in which deeds are due, and the windows they are judged in.

A period belongs to the window in which it ends. Windows are of max(7 days, one period),
counted from the start; periods of months and years are those of the calendar (our own
definition: design, "Stalled, precisely").
"""

from collections.abc import Iterator
from datetime import date
from itertools import islice

from cards.commitments.cutting import (
    LAST,
    Cut,
    OfDays,
    OfMonths,
    OfNamedDays,
    Span,
    months_between,
    months_on,
)
from cards.commitments.measure import Measure, Period
from cards.commitments.named_days import NamedDays

WITHOUT_MEASURE = 28
"""Days of a window, with one check-in due, of what has no measure (design)."""
_SHORTEST = 7
_MONTHS = {Period.MONTH: 1, Period.YEAR: 12}


class Rhythm:
    """What a measure that recurs asks when, from a start and up to an end.

    Periods and windows are numbered from 0. A period with no possible day from the start to
    the end does not count. What is `once` has no rhythm; without its date it is judged as
    what has no measure is.

    Attributes:
        measure: what recurs, or None.
        start: the first day.
        end: the last day, or None while it is open.
    """

    def __init__(self, measure: Measure | None, start: date, end: date | None = None) -> None:
        if measure is not None and measure.period is Period.ONCE:
            measure = None
        self.measure = measure
        self.start = start
        self.end = end
        self._months = 0 if measure is None else _MONTHS.get(measure.period, 0) * measure.every
        self._cut: Cut
        if measure is not None and self._months:
            yearly = measure.period is Period.YEAR
            first = start.replace(day=1, month=1 if yearly else start.month)
            self._cut = OfMonths(first, self._months)
        elif measure is not None and self.listed:
            named = OfNamedDays(start, measure.on, measure.every)
            self._cut = named
            self._window_days = named.days
        else:
            days = _days_in(measure)
            self._cut = OfDays(start, days)
            self._window_days = max(_SHORTEST, days)
        self._named = NamedDays(measure)

    @property
    def times(self) -> int:
        """Deeds due in each period."""
        return 1 if self.measure is None else self.measure.times

    @property
    def listed(self) -> bool:
        """Whether its periods are single days that are named, with days between them."""
        measure = self.measure
        return measure is not None and measure.period is Period.DAY and bool(measure.on)

    def window_at(self, day: date) -> int:
        """Return the number of the window a day stands in; below 0 before the start."""
        if not self._months:
            return (day - self.start).days // self._window_days
        number = months_between(self.start, day) // self._months
        first = self._window_first(number) if number >= 0 else None
        return number if first is not None and first <= day.toordinal() else number - 1

    def window(self, number: int) -> Span:
        """Return one window, from number 0; the last one ends with the end.

        Raises:
            ValueError: no date is left for so late a window.
        """
        first = date.fromordinal(self._window_first(number) or LAST + 1)
        after = self._window_first(number + 1)
        last = LAST if after is None else min(after - 1, LAST)
        if self.end is not None:
            last = min(last, self.end.toordinal())
        return Span(first, date.fromordinal(last))

    def periods_in(self, window: Span) -> Iterator[Span]:
        """Yield the periods that count and end in a window, each cut to the start and the end."""
        for whole, cut in self._cuts(self._cut.ending_from(window.first)):
            if cut.last > window.last:
                return
            if self._named.leave_any(whole, cut):
                yield cut

    def period_at(self, day: date) -> Span | None:
        """Return the period a day stands in, or None when it stands in none that counts."""
        if day < self.start:
            return None
        for whole, cut in self._cuts(self._cut.ending_from(day)):
            stands = cut.first <= day <= cut.last
            return cut if stands and self._named.leave_any(whole, cut) else None
        return None

    def expected(self, first: date, last: date) -> Iterator[date]:
        """Yield the days from `first` to `last` on which a check-in is expected.

        The days named, where as many are due; else the last possible day of each period.
        """
        for whole, cut in self._cuts(self._cut.ending_from(first)):
            if cut.first > last:
                return
            for day in self._asked_in(whole, cut):
                if first <= day <= last:
                    yield day

    def nth_period(self, count: int) -> Span:
        """Return the `count`-th period that counts, from 1; the last day there is without one."""
        if self._named.none:
            return Span(date.max, date.max)
        number = 0
        if not self._named.numbered and count > 1:
            # All after the first have a day named, so that they need not be looked at.
            first = next(self._cuts(0), None)
            counts = first is not None and self._named.leave_any(*first)
            number = count - counts
            count = 1
        for whole, cut in self._cuts(number):
            if self._named.leave_any(whole, cut):
                count -= 1
                if not count:
                    return cut
        return Span(date.max, date.max)

    def _cuts(self, number: int) -> Iterator[tuple[Span, Span]]:
        """Yield the periods from a number on, each whole and cut to the start and the end."""
        start, end = self.start, self.end
        while (whole := self._cut.span(number)) is not None:
            cut = whole
            if whole.first < start or (end is not None and whole.last > end):
                last = whole.last if end is None else min(whole.last, end)
                cut = Span(max(whole.first, start), last)
                if cut.first > cut.last:
                    return
            yield whole, cut
            number += 1

    def _asked_in(self, whole: Span, cut: Span) -> list[date]:
        if self._named.any:
            return [cut.last]
        if not self._named.leave_any(whole, cut):
            return []
        possible = list(islice(self._named.within(whole, cut), self.times + 1))
        return possible if self.times >= len(possible) else [self._named.last(whole, cut)]

    def _window_first(self, number: int) -> int | None:
        """Return the first day of a window by its ordinal, or None where no date is left."""
        if self._months:
            first = months_on(self.start, number * self._months)
            return None if first is None else first.toordinal()
        ordinal = self.start.toordinal() + number * self._window_days
        return None if ordinal > LAST else ordinal


def _days_in(measure: Measure | None) -> int:
    """Return the days of one period."""
    if measure is None:
        return WITHOUT_MEASURE
    return measure.every * (_SHORTEST if measure.period is Period.WEEK else 1)
