"""Windows: what was due in each, what was done, and whether it counts."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum

from cards.commitments.check_ins import Outcome
from cards.commitments.cutting import LAST, Span
from cards.commitments.deeds import Deeds
from cards.commitments.periods import Rhythm
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
        return min([self.span.first, *(each.span.first for each in self.periods[:1])])

    @property
    def kept_periods(self) -> int:
        """How many of its periods have all their deeds."""
        return sum(each.done >= each.due for each in self.periods)


def last_to_report(last: date) -> date:
    """Return the day until which what ended on a last day is open to be reported."""
    return date.fromordinal(min(last.toordinal() + CLOSING.days, LAST))


def is_closed(last: date, day: date) -> bool:
    """Tell whether what ended on a last day is closed: it may still be reported for two days."""
    return (day - last).days > CLOSING.days


def window(rhythm: Rhythm, number: int, life: Life, deeds: Deeds, day: date) -> Window:
    """Return a window as it stands on a day."""
    span = rhythm.window(number)
    spans = list(rhythm.periods_in(span))
    reach = _reach(rhythm, span, spans)
    done = deeds.done_in(reach)
    asked = Span(min(span.first, reach.first), max(span.last, reach.last))
    periods: tuple[PeriodDone, ...] = ()
    # What began before one could be asked counts only where something was done: the window, and
    # of its periods those that were kept.
    if done or asked.first >= life.asked_from:
        counted = (
            PeriodDone(each, rhythm.times, deeds.count(each) if done else 0) for each in spans
        )
        periods = tuple(
            each for each in counted if each.span.first >= life.asked_from or each.done >= each.due
        )
    if periods and done and all(each.done >= each.due for each in periods):
        came_to = Kept.KEPT
    elif done:
        came_to = Kept.PARTLY
    elif any(each.outcome is Outcome.MISSED for each in deeds.within(reach)):
        came_to = Kept.MISSED
    else:
        came_to = Kept.SILENT
    paused = not done and any(asked.meets(pause) for pause in life.pauses)
    return Window(span, periods, came_to, paused, is_closed(span.last, day))


def _reach(rhythm: Rhythm, span: Span, spans: list[Span]) -> Span:
    """Return the days whose deeds belong to a window: those of its periods.

    Where single days are periods, what is done on a day between them belongs to its window.
    """
    if not spans:
        return span
    reach = Span(spans[0].first, spans[-1].last)
    if rhythm.listed:
        return Span(min(span.first, reach.first), max(span.last, reach.last))
    return reach


def windows_back(rhythm: Rhythm, life: Life, deeds: Deeds, day: date) -> Iterator[Window]:
    """Yield the windows from the one a day stands in back to the first that can count."""
    for number in range(rhythm.window_at(day), -1, -1):
        found = window(rhythm, number, life, deeds, day)
        last = found.span.last
        if last < life.asked_from and not deeds.done_by(last):
            return
        yield found


def windows_of(term: Term, life: Life, deeds: Deeds, end: date, day: date) -> list[Window]:
    """Return the windows of a term with its end that can count, in order."""
    rhythm = Rhythm(term.measure, term.start, end)
    first = rhythm.window_at(min(max(term.start, life.asked_from), end))
    return [
        window(rhythm, number, life, deeds, day)
        for number in range(first, rhythm.window_at(end) + 1)
    ]


def end_of(life: Life, deeds: Deeds, day: date) -> date | None:
    """Return the last day of the term as known on a day, or None while it is open.

    Of a term of so many periods, those in a window that is paused do not count towards them.
    """
    term = life.term
    last = term.last_day()
    measure = term.measure
    if last is None or measure is None or measure.periods is None or not life.pauses:
        return last
    rhythm = Rhythm(measure, term.start, measure.deadline)
    wanted = measure.periods
    passed = 0
    for number in range(rhythm.window_at(min(day, measure.deadline or day)) + 1):
        span = rhythm.window(number)
        spans = list(rhythm.periods_in(span))
        within = spans[wanted - 1].last if len(spans) >= wanted else span.last
        if not _put_off(Span(span.first, within), spans, rhythm, life, deeds):
            if len(spans) >= wanted:
                return within
            wanted -= len(spans)
        passed += len(spans)
    end = rhythm.nth_period(passed + wanted).last
    return end if measure.deadline is None else min(end, max(measure.deadline, term.start))


def _put_off(span: Span, spans: list[Span], rhythm: Rhythm, life: Life, deeds: Deeds) -> bool:
    reach = _reach(rhythm, span, spans)
    asked = Span(min(span.first, reach.first), span.last)
    return any(asked.meets(pause) for pause in life.pauses) and not deeds.done_in(reach)
