"""The pace of a commitment on a day: on course, slipping, stalled; paused; how it ended.

Our own definition (design, "Stalled, precisely"), built on what research says of missed days
(Lally et al. 2010: one missed opportunity did not materially matter) and of monitoring (Harkin
et al. 2016: failing to monitor is a failure of its own).
"""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date, timedelta

from cards.commitments.check_ins import CheckIn, Outcome
from cards.commitments.cutting import Span
from cards.commitments.decisions import Decision
from cards.commitments.deeds import Deeds
from cards.commitments.once import figures, finished, one_off
from cards.commitments.periods import Rhythm
from cards.commitments.stand import Pace, Rule, Stand
from cards.commitments.terms import Commitment, Life, life_of
from cards.commitments.windows import (
    NOTHING_DONE,
    Kept,
    PeriodDone,
    Window,
    end_of,
    is_closed,
    windows_back,
    windows_of,
)

JUDGED = 2
"""Windows a running commitment is judged by: one miss is harmless (Lally et al. 2010)."""
LONG_AGO = timedelta(days=3_660)
"""How far back what was over on arrival is reckoned with: ten years."""
SHOWN = 13
"""Windows told of what is over, at the most: a quarter of a year of weeks."""


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
    last = term.last_day()
    past = arrived_past(commitment, life, last)
    if past and deeds.first is None:
        return _closed(life, day) or Stand(
            day, Pace.UNJUDGED, Rule.PAST_ON_ARRIVAL, life, ends_on=last
        )
    if term.finishing:
        over = finished(life, deeds, day)
        if over is not None:
            return over
    if term.once and last is not None:
        return one_off(life, deeds, last, day)
    life = asked_back(life, deeds, past)
    end = end_of(life, deeds, day)
    if end is not None and is_closed(end, day):
        return _ended(life, deeds, end, day)
    return _closed(life, day) or _running(life, deeds, end, day)


def arrived_past(commitment: Commitment, life: Life, last: date | None) -> bool:
    """Tell whether the last day of a commitment, still in its first term, was over on arrival."""
    return len(life.terms) == 1 and last is not None and last < commitment.entered_on


def asked_back(life: Life, deeds: Deeds, past: bool) -> Life:
    """Return a life as the reader's reports have it asked about.

    Who reports on days before it came in is asked about them; of what was over on arrival
    (`past`), about all of them that are not too long ago.
    """
    if deeds.first is None or deeds.first >= life.asked_from:
        return life
    if not past:
        return replace(life, asked_from=deeds.first)
    first = max(life.term.start, life.asked_from - min(LONG_AGO, life.asked_from - date.min))
    return replace(life, asked_from=min(first, deeds.first))


def _closed(life: Life, day: date) -> Stand | None:
    """Return how one stands that the reader closed by saying what came of it."""
    if life.closed is None:
        return None
    kept = life.closed.outcome is Outcome.KEPT
    pace = Pace.DONE if kept else Pace.ENDED
    return Stand(day, pace, Rule.CLOSED, life, ends_on=life.term.last_day(), settled=True)


def _ended(life: Life, deeds: Deeds, end: date, day: date) -> Stand:
    """Return how a term stands that is over."""
    windows = windows_of(life.term, life, deeds, end, day)
    judged = [each for each in windows if each.counts]
    due = sum(len(each.periods) for each in judged)
    done = sum(each.kept_periods for each in judged)
    settled = life.closed is not None
    if life.closed is not None and life.closed.outcome is Outcome.KEPT:
        pace, rule = Pace.DONE, Rule.CLOSED
    elif due and done == due:
        pace, rule = Pace.DONE, Rule.ALL_KEPT
    elif settled or not due or deeds.done_in(Span(life.term.start, end)):
        pace, rule = Pace.ENDED, Rule.SOME_KEPT
    else:
        pace, rule = Pace.STALLED, Rule.NOTHING_AT_ALL
    return Stand(
        day,
        pace,
        rule,
        life,
        windows=tuple(windows[: -SHOWN - 1 : -1]),
        due=due,
        done=done,
        ends_on=end,
        settled=settled,
        nothing_said=bool(judged) and judged[-1].came_to is Kept.SILENT,
    )


def _running(life: Life, deeds: Deeds, end: date | None, day: date) -> Stand:
    rhythm = Rhythm(life.term.measure, life.term.start, end)
    seen: list[Window] = []
    judged: list[Window] = []
    for each in windows_back(rhythm, life, deeds, day):
        seen.append(each)
        if each.counts:
            judged.append(each)
        if len(judged) == JUDGED:
            break
    pace, rule = _judged(judged, deeds)
    if life.paused_on(day):
        pace, rule = Pace.PAUSED, Rule.PAUSED
    now = rhythm.period_at(day)
    due, done = figures(life.term, deeds, day) if life.term.finishing else (0, 0)
    return Stand(
        day,
        pace,
        rule,
        life,
        windows=tuple(seen),
        now=None if now is None else PeriodDone(now, rhythm.times, deeds.count(now)),
        due=due,
        done=done,
        ends_on=end,
        nothing_said=bool(judged) and judged[0].came_to is Kept.SILENT,
    )


def _judged(judged: list[Window], deeds: Deeds) -> tuple[Pace, Rule]:
    """Return the pace by the last counted windows, the latest first, and the rule."""
    if not judged:
        return Pace.ON_COURSE, Rule.NOT_CLOSED
    if judged[0].came_to is Kept.KEPT:
        return Pace.ON_COURSE, Rule.LAST_KEPT
    if (
        len(judged) == JUDGED
        and all(each.came_to in NOTHING_DONE for each in judged)
        and not deeds.done_since(judged[-1].began)
    ):
        return Pace.STALLED, Rule.TWO_WITHOUT
    return Pace.SLIPPING, Rule.LAST_NOT_KEPT
