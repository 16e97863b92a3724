"""What became of the commitments of a library, month by month."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date

from cards.commitments.check_ins import CheckIn, Outcome
from cards.commitments.cutting import Span
from cards.commitments.decisions import Act, Decision
from cards.commitments.deeds import Deeds
from cards.commitments.pace import arrived_past, asked_back
from cards.commitments.periods import Rhythm
from cards.commitments.terms import Commitment, Life, life_of
from cards.commitments.windows import Kept, end_of, is_closed, window
from cards.retention.shares import Share

_OVER = frozenset({Act.RELEASE, Act.CLOSE})


@dataclass(frozen=True, slots=True)
class MonthKept:
    """The windows of all commitments that ended in a month.

    Attributes:
        month: `2026-03`.
        kept, partly, missed, silent: how many came to what (`cards.commitments.windows`).
    """

    month: str
    kept: int
    partly: int
    missed: int
    silent: int

    @property
    def share(self) -> Share:
        """The share kept of all that were judged."""
        return Share(self.kept, self.kept + self.partly + self.missed + self.silent)


def months_kept(windows: Iterable[tuple[date, Kept]]) -> tuple[MonthKept, ...]:
    """Return how many windows came to what, by the month of their last day, in order.

    Args:
        windows: of all commitments, as `judged_windows` gives them.
    """
    counts = Counter((f"{last.year:04}-{last.month:02}", came_to) for last, came_to in windows)
    return tuple(
        MonthKept(month, *(counts[month, came_to] for came_to in Kept))
        for month in sorted({month for month, _ in counts})
    )


def judged_windows(
    commitment: Commitment,
    decisions: Iterable[Decision],
    check_ins: Sequence[CheckIn],
    day: date,
    since: date,
) -> Iterator[tuple[date, Kept]]:
    """Yield the last day and the outcome of each window of a commitment that was judged.

    A window counts as its pace counts it: closed, with a period in it, and not paused. One
    that was broken off, because the commitment was begun anew, closed or released, does
    not. What is to be done once by a date has one window, up to that date.

    Args:
        commitment: as it came in.
        decisions: about it, in any order.
        check_ins: on it, in any order: at least all about later days than the longest window
            before `since`; of what is done once, or has so many periods, all.
        day: the reader's day; what was recorded later is not known yet.
        since: the first last day that is wanted.
    """
    known = [each for each in decisions if each.known_on(day)]
    life = life_of(commitment, known, day)
    for number, term in enumerate(life.terms):
        ends_before = _ends_before(life, number, known)
        deeds = Deeds((each for each in check_ins if term.start <= each.day < ends_before), day)
        so_far = replace(life, terms=life.terms[: number + 1])
        past = arrived_past(commitment, so_far, term.last_day())
        if past and deeds.first is None:
            continue
        for last, came_to in _windows(asked_back(so_far, deeds, past), deeds, day, since):
            if since <= last < ends_before:
                yield last, came_to


def _ends_before(life: Life, number: int, decisions: Iterable[Decision]) -> date:
    """Return the day from which a term ran no longer, the last day there is while it runs."""
    following = [each.start for each in life.terms[number + 1 : number + 2]]
    if not following:
        over = [each.day for each in (life.released, life.closed) if each is not None]
        return min([*over, date.max])
    start = life.terms[number].start
    # Begun anew, a life no longer says that it was over before.
    over = [
        each.day for each in decisions if each.act in _OVER and start <= each.day < following[0]
    ]
    return min([*following, *over])


def _windows(life: Life, deeds: Deeds, day: date, since: date) -> Iterator[tuple[date, Kept]]:
    term = life.term
    last = term.last_day()
    if term.once and last is not None:
        span = Span(term.start, last)
        if is_closed(last, day) and (deeds.done_in(span) or not life.paused_on(last)):
            yield last, _came_to(span, 1 if term.measure is None else term.measure.times, deeds)
        return
    end = end_of(life, deeds, day)
    rhythm = Rhythm(term.measure, term.start, end)
    latest = day if end is None else min(day, end)
    if term.finishing:
        latest = _finished_on(life, deeds, latest)
    first = max(0, rhythm.window_at(max(term.start, life.asked_from, since)))
    for number in range(first, rhythm.window_at(latest) + 1):
        found = window(rhythm, number, life, deeds, day)
        if found.counts:
            yield found.span.last, found.came_to


def _finished_on(life: Life, deeds: Deeds, day: date) -> date:
    """Return the day on which what is done once, whenever, was done, or a day until it is."""
    term = life.term
    due = 1 if term.measure is None else term.measure.times
    for each in deeds.within(Span(term.start, day)):
        due -= each.deeds
        if due <= 0:
            return each.day
    return day


def _came_to(span: Span, due: int, deeds: Deeds) -> Kept:
    if deeds.count(span) >= due:
        return Kept.KEPT
    if deeds.done_in(span):
        return Kept.PARTLY
    said = any(each.outcome is Outcome.MISSED for each in deeds.within(span))
    return Kept.MISSED if said else Kept.SILENT
