"""The periods in which deeds are due, and the windows they are judged in.

A period belongs to the window in which it ends. Windows are of max(7 days, one period),
counted from the start; periods of months and years are those of the calendar (our own
definition: design, "Stalled, precisely").
"""

from calendar import monthrange
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cached_property

from cards.commitments.measure import WEEKDAYS, Measure, Period

WITHOUT_MEASURE = 28
"""Days of a window, with one check-in due, of what has no measure (design)."""
_SHORTEST = 7
_DAY = timedelta(days=1)
_MONTHS = {Period.MONTH: 1, Period.YEAR: 12}


@dataclass(frozen=True, slots=True)
class Span:
    """Days from a first to a last, both included."""

    first: date
    last: date

    def meets(self, other: "Span") -> bool:
        """Tell whether the two share a day."""
        return self.first <= other.last and other.first <= self.last


class Rhythm:
    """What a measure that recurs asks when, from a start and up to an end.

    Periods and windows are numbered from 0. A period with no possible day from the start to
    the end does not count. What is `once` has no rhythm; without its date it is judged as
    what has no measure is.
    """

    def __init__(self, measure: Measure | None, start: date, end: date | None = None) -> None:
        recurs = measure is not None and measure.period is not Period.ONCE
        self.measure = measure if recurs else None
        self.start = start
        self.end = end
        self._months = _MONTHS.get(measure.period, 0) * measure.every if measure else 0
        self._listed = (
            self.measure is not None and self.measure.period is Period.DAY and bool(self.measure.on)
        )

    @property
    def times(self) -> int:
        """Deeds due in each period."""
        return 1 if self.measure is None else self.measure.times

    @property
    def listed(self) -> bool:
        """Whether its periods are single days that are named, with days between them."""
        return self._listed

    def window_at(self, day: date) -> int:
        """Return the number of the window a day stands in; below 0 before the start."""
        if not self._months:
            return (day - self.start).days // self._window_days
        number = _months_between(self.start, day) // self._months
        return number if self._window_first(number) <= day else number - 1

    def window(self, number: int) -> Span:
        """Return one window; the last one ends with the end."""
        last = self._window_first(number + 1) - _DAY
        return Span(self._window_first(number), last if self.end is None else min(last, self.end))

    def periods_in(self, window: Span) -> Iterator[Span]:
        """Yield the periods that count and end in a window, each cut to the start and the end."""
        number = self._ending_from(window.first)
        while True:
            whole = self._period(number)
            cut = Span(
                max(whole.first, self.start),
                whole.last if self.end is None else min(whole.last, self.end),
            )
            if cut.last > window.last or cut.first > cut.last:
                return
            if any(True for _ in self._possible(whole, cut)):
                yield cut
            if cut.last == self.end:
                return
            number += 1

    def period_at(self, day: date) -> Span | None:
        """Return the period a day stands in, or None when it stands in none that counts."""
        if day < self.start or (self.end is not None and day > self.end):
            return None
        whole = self._period(self._ending_from(day))
        cut = Span(
            max(whole.first, self.start),
            whole.last if self.end is None else min(whole.last, self.end),
        )
        if not cut.first <= day <= cut.last or not any(True for _ in self._possible(whole, cut)):
            return None
        return cut

    def expected(self, first: date, last: date) -> Iterator[date]:
        """Yield the days from `first` to `last` on which a check-in is expected.

        The days named, where as many are due; else the last possible day of each period.
        """
        number = self._ending_from(max(first, self.start))
        while True:
            whole = self._period(number)
            cut = Span(
                max(whole.first, self.start),
                whole.last if self.end is None else min(whole.last, self.end),
            )
            if cut.first > min(last, cut.last):
                return
            for day in self._asked_in(whole, cut):
                if first <= day <= last:
                    yield day
            number += 1

    def nth_period(self, count: int) -> Span:
        """Return the `count`-th period that counts, from 1."""
        number = self._ending_from(self.start)
        while True:
            whole = self._period(number)
            cut = Span(max(whole.first, self.start), whole.last)
            if any(True for _ in self._possible(whole, cut)):
                count -= 1
                if not count:
                    return cut
            number += 1

    def _asked_in(self, whole: Span, cut: Span) -> list[date]:
        if self.measure is None or not self.measure.on:
            return [cut.last]
        possible = list(self._possible(whole, cut))
        return possible if self.times >= len(possible) else possible[-1:]

    @cached_property
    def _window_days(self) -> int:
        return max(_SHORTEST, self._period_days)

    @cached_property
    def _period_days(self) -> int:
        measure = self.measure
        if measure is None:
            return WITHOUT_MEASURE
        if measure.period is Period.WEEK:
            return 7 * measure.every
        if self._listed:
            return 7 * -(-measure.every // len(measure.on))
        return measure.every

    def _window_first(self, number: int) -> date:
        if self._months:
            return _months_on(self.start, number * self._months)
        return self.start + timedelta(days=number * self._window_days)

    @cached_property
    def _offsets(self) -> list[int]:
        """Days from the start to each of the days named in the first week."""
        on = self.measure.on if self.measure else ()
        return sorted((WEEKDAYS.index(day[-2:]) - self.start.weekday()) % 7 for day in on)

    def _listed_day(self, number: int) -> date:
        weeks, place = divmod(number, len(self._offsets))
        return self.start + timedelta(days=7 * weeks + self._offsets[place])

    def _period(self, number: int) -> Span:
        every = 1 if self.measure is None else self.measure.every
        if self._listed:
            return Span(
                self._listed_day(number * every), self._listed_day(number * every + every - 1)
            )
        if self._months:
            first = _months_on(self._first_month, number * self._months)
            return Span(first, _months_on(first, self._months) - _DAY)
        first = self.start + timedelta(days=number * self._period_days)
        return Span(first, first + timedelta(days=self._period_days - 1))

    @cached_property
    def _first_month(self) -> date:
        yearly = self.measure is not None and self.measure.period is Period.YEAR
        return self.start.replace(day=1, month=1 if yearly else self.start.month)

    def _ending_from(self, day: date) -> int:
        """Return the number of the first period that ends on a day or later."""
        if self._listed:
            weeks = (day - self.start).days // 7
            number = max(0, weeks * len(self._offsets) // (self.measure or Measure()).every - 1)
            while self._period(number).last < day:
                number += 1
            return number
        if self._months:
            return max(0, _months_between(self._first_month, day) // self._months)
        return max(0, (day - self.start).days // self._period_days)

    def _possible(self, whole: Span, cut: Span) -> Iterator[date]:
        """Yield the days in a part of a period on which its deeds can be done."""
        if self.measure is None or not self.measure.on or self._listed:
            for offset in range((cut.last - cut.first).days + 1):
                day = cut.first + timedelta(days=offset)
                if not self._listed or day.weekday() in self._weekdays:
                    yield day
            return
        for day in self._named(whole, cut):
            if cut.first <= day <= cut.last:
                yield day

    @cached_property
    def _weekdays(self) -> frozenset[int]:
        on = self.measure.on if self.measure else ()
        return frozenset(WEEKDAYS.index(day[-2:]) for day in on if len(day) == 2)

    def _named(self, whole: Span, cut: Span) -> list[date]:
        named = {
            day
            for each in (self.measure.on if self.measure else ())
            if len(each) > 2
            for day in [self._ordinal(whole, each)]
            if day is not None
        }
        for offset in range((cut.last - cut.first).days + 1 if self._weekdays else 0):
            day = cut.first + timedelta(days=offset)
            if day.weekday() in self._weekdays:
                named.add(day)
        return sorted(named)

    def _ordinal(self, whole: Span, named: str) -> date | None:
        """Return the day `1SA` or `-1FR` names in the first month, or the year, of a period."""
        ordinal, weekday = int(named[:-2]), WEEKDAYS.index(named[-2:])
        yearly = self.measure is not None and self.measure.period is Period.YEAR
        first = whole.first
        last = _months_on(first, 12 if yearly else 1) - _DAY
        if ordinal > 0:
            day = first + timedelta(days=(weekday - first.weekday()) % 7 + 7 * (ordinal - 1))
        else:
            day = last - timedelta(days=(last.weekday() - weekday) % 7 + 7 * (-ordinal - 1))
        return day if first <= day <= last else None


def _months_between(one: date, other: date) -> int:
    return (other.year - one.year) * 12 + other.month - one.month


def _months_on(day: date, months: int) -> date:
    """Return the same day so many months on, or the last of a month too short for it."""
    year, month = divmod(day.year * 12 + day.month - 1 + months, 12)
    return date(year, month + 1, min(day.day, monthrange(year, month + 1)[1]))
