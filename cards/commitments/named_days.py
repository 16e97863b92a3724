"""The days named in a measure: on which of a period's days its deeds can be done."""

from collections.abc import Iterator
from datetime import date

from cards.commitments.cutting import Span, months_on
from cards.commitments.measure import WEEKDAYS, Measure, Period

_WEEK = len(WEEKDAYS)
_MOST_OF_A_MONTH, _MOST_OF_A_YEAR = 5, 53


class NamedDays:
    """The days a measure names, as weekdays or as the first or last of a month or year.

    Only in months and years does a number before a weekday mean anything; a 1MO of a week is
    its Monday.

    Attributes:
        any: whether no day is named, so that any will do.
        none: whether what is named never comes, as a sixth Monday of a month.
    """

    def __init__(self, measure: Measure | None) -> None:
        on = () if measure is None else measure.on
        numbered = measure is not None and measure.period in {Period.MONTH, Period.YEAR}
        self.any = not on
        self._weekdays = sorted(
            {WEEKDAYS.index(day[-2:]) for day in on if len(day) == 2 or not numbered}
        )
        self._months = 12 if measure is not None and measure.period is Period.YEAR else 1
        most = _MOST_OF_A_YEAR if self._months > 1 else _MOST_OF_A_MONTH
        self._numbered = [
            (number, WEEKDAYS.index(day[-2:]))
            for day in on
            if len(day) > 2 and numbered
            for number in [int(day[:-2])]
            if 1 <= abs(number) <= most
        ]
        self.none = not (self.any or self._weekdays or self._numbered)

    @property
    def numbered(self) -> bool:
        """Whether only numbered days are named: a month may then be without one, as of a 5SA."""
        return bool(self._numbered) and not self._weekdays

    def leave_any(self, whole: Span, cut: Span) -> bool:
        """Tell whether a day named lies in what is left of a period."""
        if self.any:
            return True
        days = (cut.last - cut.first).days
        first = cut.first.weekday()
        if any((weekday - first) % _WEEK <= days for weekday in self._weekdays):
            return True
        return any(cut.first <= day <= cut.last for day in self._numbered_days(whole))

    def within(self, whole: Span, cut: Span) -> Iterator[date]:
        """Yield the days named in what is left of a period, in order."""
        numbered = {day for day in self._numbered_days(whole) if cut.first <= day <= cut.last}
        if not self._weekdays:
            yield from sorted(numbered)
            return
        wanted = set(self._weekdays)
        for ordinal in range(cut.first.toordinal(), cut.last.toordinal() + 1):
            day = date.fromordinal(ordinal)
            if day.weekday() in wanted or day in numbered:
                yield day

    def last(self, whole: Span, cut: Span) -> date:
        """Return the last day named in what is left of a period; it must leave one."""
        days = [day for day in self._numbered_days(whole) if cut.first <= day <= cut.last]
        last = cut.last.toordinal()
        for weekday in self._weekdays:
            ordinal = last - (cut.last.weekday() - weekday) % _WEEK
            if ordinal >= cut.first.toordinal():
                days.append(date.fromordinal(ordinal))
        return max(days)

    def _numbered_days(self, whole: Span) -> Iterator[date]:
        """Yield the days that `1SA` or `-1FR` name in the first month, or the year, of a period."""
        for number, weekday in self._numbered:
            first = whole.first
            after = months_on(first, self._months)
            last = whole.last if after is None else date.fromordinal(after.toordinal() - 1)
            if number > 0:
                days = (weekday - first.weekday()) % _WEEK + _WEEK * (number - 1)
                ordinal = first.toordinal() + days
            else:
                days = (last.weekday() - weekday) % _WEEK + _WEEK * (-number - 1)
                ordinal = last.toordinal() - days
            if first.toordinal() <= ordinal <= last.toordinal():
                yield date.fromordinal(ordinal)
