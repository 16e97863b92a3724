"""The pace of a commitment on a day: on course, slipping, stalled; paused; how it ended.

Our own definition (design, "Stalled, precisely"), built on what research says of missed days
(Lally et al. 2010: one missed opportunity did not materially matter) and of monitoring (Harkin
et al. 2016: failing to monitor is a failure of its own).
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum

from cards.commitments.check_ins import CheckIn, Outcome
from cards.commitments.decisions import Decision
from cards.commitments.periods import Rhythm, Span
from cards.commitments.terms import Commitment, Life, Term, life_of
from cards.commitments.windows import (
    CLOSING,
    NOTHING_DONE,
    Deeds,
    Kept,
    Window,
    windows_back,
    windows_of,
)

_DAY = timedelta(days=1)
OVERDUE_DAYS = 7
"""Days a one-off is overdue before it stalls, or a tenth of its span where that is more."""
MOST_MOVES = 3
"""Times the date of a one-off is moved before it stalls."""
SHOWN = 13
"""Windows told of at the most: a quarter of a year of weeks."""


class Pace(StrEnum):
    """How a commitment stands."""

    ON_COURSE = "on course"
    SLIPPING = "slipping"
    STALLED = "stalled"
    PAUSED = "paused"
    UNJUDGED = "unjudged"
    DONE = "done"
    ENDED = "ended"
    RELEASED = "released"


LIVE = frozenset({Pace.ON_COURSE, Pace.SLIPPING, Pace.STALLED, Pace.PAUSED})
"""The paces of what is still asked."""


class Rule(StrEnum):
    """The rule a pace follows from."""

    NOT_CLOSED = "not closed"
    LAST_KEPT = "last kept"
    LAST_NOT_KEPT = "last not kept"
    TWO_WITHOUT = "two without"
    NOTHING_AT_ALL = "nothing at all"
    BY_DATE = "by date"
    FINISHED = "finished"
    OVERDUE = "overdue"
    LONG_OVERDUE = "long overdue"
    MOVED_OFTEN = "moved often"
    PAUSED = "paused"
    PAST_ON_ARRIVAL = "past on arrival"
    ALL_KEPT = "all kept"
    SOME_KEPT = "some kept"
    CLOSED = "closed"
    RELEASED = "released"


@dataclass(frozen=True, slots=True)
class Stand:
    """How a commitment stands on a day, with the rule and the figures.

    Attributes:
        day: the reader's day asked about.
        pace: how it stands.
        rule: what that follows from.
        life: what the decisions known then make of it.
        windows: the windows it was judged by and those before them, the latest first; the first
            may still be open. Of a one-off by a date, none.
        now: the period that runs, with what is due and done in it; None where none does.
        due, done: what was due and kept over a term that is over: periods, or deeds of a
            one-off; of one that runs, 0 and 0 but for a one-off.
        ends_on: the last day of the term, or None while it is open.
        settled: of one that is over: whether the reader has said what next.
        nothing_said: of stalled and slipping: whether the last judged window was `silent`.
    """

    day: date
    pace: Pace
    rule: Rule
    life: Life
    windows: tuple[Window, ...] = ()
    now: Window | None = None
    due: int = 0
    done: int = 0
    ends_on: date | None = None
    settled: bool = False
    nothing_said: bool = False

    @property
    def asked(self) -> bool:
        """Whether it is still asked of the reader on ordinary days."""
        return self.pace in LIVE


def pace_of(
    commitment: Commitment,
    decisions: Iterable[Decision],
    check_ins: Iterable[CheckIn],
    day: date,
) -> Stand:
    """Return how a commitment stands on a day, as known on that day.

    Args:
        commitment: as it came in.
        decisions: about it, in any order.
        check_ins: on it, in any order: at least all about `needed_from` and later days.
        day: the reader's day asked about; facts recorded later are not known yet.
    """
    life = life_of(commitment, decisions, day)
    if life.released is not None:
        return Stand(day, Pace.RELEASED, Rule.RELEASED, life, settled=True)
    term = life.term
    # What was done before a term began belongs to the one before it.
    deeds = Deeds((each for each in check_ins if each.day >= term.start), day)
    if _arrived_past(commitment, life) and not len(deeds):
        return _closed(life, day) or Stand(
            day, Pace.UNJUDGED, Rule.PAST_ON_ARRIVAL, life, ends_on=term.last_day()
        )
    if term.finishing:
        finished = _finished(life, deeds, day)
        if finished is not None:
            return finished
    if term.once:
        return _one_off(life, deeds, day)
    if term.last_day() is not None:
        ended = _ended(life, deeds, day)
        if ended is not None:
            return ended
    return _closed(life, day) or _running(life, deeds, day)


def _arrived_past(commitment: Commitment, life: Life) -> bool:
    last = life.term.last_day()
    return len(life.terms) == 1 and last is not None and last < commitment.entered_on


def _closed(life: Life, day: date) -> Stand | None:
    """Return how one stands that the reader closed by saying what came of it."""
    if life.closed is None:
        return None
    kept = life.closed.outcome is Outcome.KEPT
    pace = Pace.DONE if kept else Pace.ENDED
    return Stand(day, pace, Rule.CLOSED, life, ends_on=life.term.last_day(), settled=True)


def _finished(life: Life, deeds: Deeds, day: date) -> Stand | None:
    measure = life.term.measure
    times = 1 if measure is None else measure.times
    done = deeds.count(Span(life.term.start, day))
    if done < times:
        return None
    settled = life.closed is not None
    return Stand(day, Pace.DONE, Rule.FINISHED, life, due=times, done=times, settled=settled)


def _one_off(life: Life, deeds: Deeds, day: date) -> Stand:
    term = life.term
    measure = term.measure
    deadline = term.last_day() or term.start
    due = _shifted(deadline, term, life)
    times = 1 if measure is None else measure.times
    done = deeds.count(Span(term.start, day))
    if life.closed is not None:
        kept = life.closed.outcome is Outcome.KEPT
        return Stand(
            day,
            Pace.DONE if kept else Pace.ENDED,
            Rule.CLOSED,
            life,
            due=times,
            done=done,
            ends_on=due,
            settled=True,
        )
    if life.paused_on(day):
        pace, rule = Pace.PAUSED, Rule.PAUSED
    elif term.moves >= MOST_MOVES:
        pace, rule = Pace.STALLED, Rule.MOVED_OFTEN
    elif day <= due:
        pace, rule = Pace.ON_COURSE, Rule.BY_DATE
    elif day > due + timedelta(days=_patience(term, deadline)):
        pace, rule = Pace.STALLED, Rule.LONG_OVERDUE
    else:
        pace, rule = Pace.SLIPPING, Rule.OVERDUE
    said = bool(deeds.within(Span(due, day))) if day > due else True
    return Stand(
        day,
        pace,
        rule,
        life,
        due=times,
        done=done,
        ends_on=due,
        nothing_said=day > due and not said,
    )


def _patience(term: Term, deadline: date) -> int:
    """Return the days a one-off may be overdue: a week, or a tenth of its span if longer."""
    return max(OVERDUE_DAYS, -(-(deadline - term.start).days // 10))


def _shifted(deadline: date, term: Term, life: Life) -> date:
    """Return the last day of a one-off with the days it was paused added."""
    due = deadline
    for pause in sorted(life.pauses, key=lambda each: each.first):
        first = max(pause.first, term.start)
        if first <= due and pause.last >= first:
            days = min((pause.last - first).days + 1, (date.max - due).days)
            due += timedelta(days=days)
    return due


def _ended(life: Life, deeds: Deeds, day: date) -> Stand | None:
    """Return how a term with an end stands once that is over, or None while it runs."""
    windows, end = windows_of(life.term, life, deeds, day)
    if end is None or day <= end + CLOSING:
        return None
    judged = [each for each in windows if each.periods and not each.paused]
    due = sum(len(each.periods) for each in judged)
    done = sum(each.kept_periods for each in judged)
    shown = tuple(reversed(windows))[:SHOWN]
    settled = life.closed is not None
    if life.closed is not None and life.closed.outcome is Outcome.KEPT:
        pace, rule = Pace.DONE, Rule.CLOSED
    elif due and done == due:
        pace, rule = Pace.DONE, Rule.ALL_KEPT
    elif settled or not due or any(deeds.done_in(each.span) for each in windows):
        pace, rule = Pace.ENDED, Rule.SOME_KEPT
    else:
        pace, rule = Pace.STALLED, Rule.NOTHING_AT_ALL
    silent = bool(judged) and judged[-1].came_to is Kept.SILENT
    return Stand(
        day,
        pace,
        rule,
        life,
        windows=shown,
        due=due,
        done=done,
        ends_on=end,
        settled=settled,
        nothing_said=silent,
    )


def _running(life: Life, deeds: Deeds, day: date) -> Stand:
    term = life.term
    end = None if term.measure is None else term.measure.deadline
    rhythm = Rhythm(term.measure, term.start, end)
    seen: list[Window] = []
    judged: list[Window] = []
    for each in windows_back(rhythm, life, deeds, day):
        seen.append(each)
        if each.counts:
            judged.append(each)
        if len(judged) == 2:
            break
    pace, rule = _judged(judged, deeds)
    if life.paused_on(day):
        pace, rule = Pace.PAUSED, Rule.PAUSED
    return Stand(
        day,
        pace,
        rule,
        life,
        windows=tuple(seen),
        now=seen[0] if seen else None,
        ends_on=term.last_day(),
        nothing_said=bool(judged) and judged[0].came_to is Kept.SILENT,
    )


def _judged(judged: list[Window], deeds: Deeds) -> tuple[Pace, Rule]:
    """Return the pace by the last counted windows, the latest first, and the rule."""
    if not judged:
        return Pace.ON_COURSE, Rule.NOT_CLOSED
    if judged[0].came_to is Kept.KEPT:
        return Pace.ON_COURSE, Rule.LAST_KEPT
    if (
        len(judged) == 2
        and all(each.came_to in NOTHING_DONE for each in judged)
        and not deeds.done_since(judged[1].began)
    ):
        return Pace.STALLED, Rule.TWO_WITHOUT
    return Pace.SLIPPING, Rule.LAST_NOT_KEPT
