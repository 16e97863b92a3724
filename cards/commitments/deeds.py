"""The check-ins known on a day, to be counted by span."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence
from datetime import date

from cards.commitments.check_ins import CheckIn
from cards.commitments.cutting import Span


class Deeds:
    """The check-ins on a commitment that are known on a day, each about its own day."""

    def __init__(self, check_ins: Iterable[CheckIn], day: date) -> None:
        known = sorted(
            (each for each in check_ins if each.day <= day and each.known_on(day)),
            key=lambda each: each.day,
        )
        self._days = [each.day for each in known]
        self._known: Sequence[CheckIn] = known
        self._done = [each.day for each in known if each.done]

    @property
    def first(self) -> date | None:
        """The first day anything is said about, or None."""
        return self._days[0] if self._days else None

    def within(self, span: Span) -> Sequence[CheckIn]:
        """Return the check-ins about the days of a span."""
        first = bisect_left(self._days, span.first)
        return self._known[first : bisect_right(self._days, span.last)]

    def count(self, span: Span) -> int:
        """Return how many whole deeds were done in a span."""
        return sum(each.deeds for each in self.within(span))

    def done_by(self, day: date) -> bool:
        """Tell whether anything was done on a day or before."""
        return bool(self._done) and self._done[0] <= day

    def done_since(self, day: date) -> bool:
        """Tell whether anything was done on a day or later."""
        return bool(self._done) and self._done[-1] >= day

    def done_in(self, span: Span) -> bool:
        """Tell whether anything was done in a span."""
        place = bisect_left(self._done, span.first)
        return place < len(self._done) and self._done[place] <= span.last
