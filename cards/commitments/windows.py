"""Windows: what was due in each, what was done, and whether it counts."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum

from cards.commitments.check_ins import CheckIn, Outcome
from cards.commitments.periods import Rhythm, Span
from cards.commitments.terms import Life, Term

CLOSING = timedelta(days=2)
"""A window closes so long after its last day: a report may be late (design)."""


class Kept(StrEnum):
    """What a closed window came to (design)."""

    KEPT = "kept"
    PARTLY = "partly"
    MISSED = "missed"
    SILENT = "silent"


NOTHING_DONE = frozenset({Kept.MISSED, Kept.SILENT})


@dataclass(frozen=True, slots=True)
class PeriodDone:
    """One period, with the whole deeds due and done in it."""

    span: Span
    due: int
    done: int


@dataclass(frozen=True, slots=True)
class Window:
    """One window.

    Attributes:
        span: its days.
        periods: those that end in it and count.
        came_to: what it comes to by what is known; of an open window, so far.
        paused: whether a pause lies in it and nothing was done in it: it does not count.
        closed: whether it is closed on the day asked about.
    """

    span: Span
    periods: tuple[PeriodDone, ...]
    came_to: Kept
    paused: bool
    closed: bool

    @property
    def counts(self) -> bool:
        """Whether it is judged: it has a period, is not paused, and is closed."""
        return self.closed and bool(self.periods) and not self.paused

    @property
    def began(self) -> date:
        """Its first day, or that of its first period where this one began before it."""
        return min([self.span.first, *(each.span.first for each in self.periods)])

    @property
    def kept_periods(self) -> int:
        """How many of its periods have all their deeds."""
        return sum(each.done >= each.due for each in self.periods)


class Deeds:
    """The check-ins known on a day, to be counted by span."""

    def __init__(self, check_ins: Iterable[CheckIn], day: date) -> None:
        known = sorted(
            (each for each in check_ins if each.day <= day and each.known_on(day)),
            key=lambda each: each.day,
        )
        self._days = [each.day for each in known]
        self._known: Sequence[CheckIn] = known
        self._done = [each.day for each in known if each.done]

    def __len__(self) -> int:
        return len(self._known)

    def within(self, span: Span) -> Sequence[CheckIn]:
        """Return the check-ins about the days of a span."""
        first = bisect_left(self._days, span.first)
        return self._known[first : bisect_right(self._days, span.last)]

    def count(self, span: Span) -> int:
        """Return how many whole deeds were done in a span."""
        return sum(each.deeds for each in self.within(span))

    def done_since(self, day: date) -> bool:
        """Tell whether anything was done on a day or later."""
        return bool(self._done) and self._done[-1] >= day

    def done_in(self, span: Span) -> bool:
        """Tell whether anything was done in a span."""
        place = bisect_left(self._done, span.first)
        return place < len(self._done) and self._done[place] <= span.last


def window(rhythm: Rhythm, number: int, life: Life, deeds: Deeds, day: date) -> Window:
    """Return a window as it stands on a day."""
    span = rhythm.window(number)
    periods = tuple(
        PeriodDone(each, rhythm.times, deeds.count(each)) for each in rhythm.periods_in(span)
    )
    reach = _reach(rhythm, span, periods)
    done = any(deeds.done_in(each) for each in reach)
    if periods and all(each.done >= each.due for each in periods):
        came_to = Kept.KEPT
    elif done:
        came_to = Kept.PARTLY
    else:
        said = any(each.outcome is Outcome.MISSED for some in reach for each in deeds.within(some))
        came_to = Kept.MISSED if said else Kept.SILENT
    asked = [span, *reach]
    paused = not done and any(each.meets(pause) for each in asked for pause in life.pauses)
    return Window(span, periods, came_to, paused, closed=day > span.last + CLOSING)


def _reach(rhythm: Rhythm, span: Span, periods: tuple[PeriodDone, ...]) -> list[Span]:
    """Return the days whose deeds belong to a window: those of its periods.

    Where single days are periods, what is done on a day between them belongs to its window.
    """
    spans = [each.span for each in periods]
    return [span, *spans] if rhythm.listed or not spans else spans


def windows_back(
    rhythm: Rhythm, life: Life, deeds: Deeds, day: date, number: int | None = None
) -> Iterator[Window]:
    """Yield the windows from the one a day stands in, or a given one, back to the first."""
    number = rhythm.window_at(day) if number is None else number
    while number >= 0:
        yield window(rhythm, number, life, deeds, day)
        number -= 1


def windows_of(term: Term, life: Life, deeds: Deeds, day: date) -> tuple[list[Window], date | None]:
    """Return all windows of a term begun by a day, in order, and the day the term ends on.

    Of a term of so many periods, those in a paused window do not count towards them.
    """
    wanted = None if term.measure is None else term.measure.periods
    deadline = None if term.measure is None else term.measure.deadline
    rhythm = Rhythm(term.measure, term.start, deadline)
    found: list[Window] = []
    number = 0
    while rhythm.window(number).first <= day and (
        deadline is None or rhythm.window(number).first <= deadline
    ):
        each = window(rhythm, number, life, deeds, day)
        if wanted is not None and not each.paused:
            if len(each.periods) >= wanted:
                end = each.periods[wanted - 1].span.last
                ending = Rhythm(term.measure, term.start, end)
                return [*found, window(ending, number, life, deeds, day)], end
            wanted -= len(each.periods)
        found.append(each)
        number += 1
    return found, deadline if wanted is None else _ending(rhythm, number, wanted)


def _ending(rhythm: Rhythm, number: int, wanted: int) -> date:
    """Return the last day of the so-many-th period from a window on."""
    while rhythm.end is None or rhythm.window(number).first <= rhythm.end:
        periods = list(rhythm.periods_in(rhythm.window(number)))
        if len(periods) >= wanted:
            return periods[wanted - 1].last
        wanted -= len(periods)
        number += 1
    return rhythm.end
