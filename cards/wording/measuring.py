"""From what the words say to the measure, or none."""

from datetime import date

from cards.commitments.measure import WEEKDAYS, WORKING_DAYS, Measure, Period, in_week_order
from cards.wording.cadence import Cadence
from cards.wording.cues import Cue
from cards.wording.lengths import Bound, Term, days_in, end_of, weeks_in
from cards.wording.reading import Said, read

_LONGEST_DEED = {Period.DAY: 1, Period.WEEK: 7, Period.MONTH: 28, Period.YEAR: 365}
"""Days in the shortest of each period: no term is shorter than one."""


def measure_of(text: str, on: date, cue: Cue | None, *, act: bool = True) -> Measure | None:
    """Return the measure a commitment's words give, or None when they give none.

    What is to be done no times at all asks for no deed that could be counted.

    Args:
        text: the commitment.
        on: the day it is made.
        cue: the situation it is tied to, as `find_cue` found it.
        act: whether it is an act at all; leaving a state of mind is not done daily.
    """
    found = _measure(read(text, on, cue, act=act), on)
    return None if found is None or found.times < 1 else found


def _measure(said: Said, on: date) -> Measure | None:
    cadence = said.cadence or _implied(said)
    if cadence is None and said.open_ended:
        return _open_ended(said)
    if cadence is None and said.habit and not said.days and not said.term.by_a_day:
        cadence = Cadence(Period.DAY)
    return _once(said, on) if cadence is None else _recurring(cadence, said)


def _open_ended(said: Said) -> Measure | None:
    """Return the measure of what names no cadence, no day and no length, or None."""
    count = said.count or 1
    if said.occasions:
        return Measure(times=said.occasions * count, minutes=said.minutes)
    if said.term.unknown:
        return Measure(times=said.times or count, minutes=said.minutes)
    if said.times is not None and not said.event:
        return Measure(times=said.times, minutes=said.minutes)
    if said.habit or said.clock or (said.negative and not said.event):
        daily = Cadence(Period.DAY)
        return _recurring(daily, said)
    if said.count is not None and not said.event:
        return Measure(times=said.count, minutes=said.minutes)
    return None


def _once(said: Said, on: date) -> Measure:
    """Return the measure of what is done and over, by a day where one is named."""
    each = said.times or said.occasions or 1
    if len(said.days) > 1 and each == 1 and all(weekday for _, _, weekday in said.days):
        each = len(said.days)
    last_named = max((last for _, last, _ in said.days), default=None)
    deadline = said.term.deadline or end_of(said.term, on) or last_named
    return Measure(times=each * (said.count or 1), deadline=deadline, minutes=said.minutes)


def _implied(said: Said) -> Cadence | None:
    """Return the cadence a term implies: what goes on for two weeks goes on daily."""
    if said.times is not None:
        return None
    term = said.term
    if term.count is not None and not term.loose:
        return _implied_by_length(term, said.days)
    if term.bound is Bound.UNTIL or (term.bound is Bound.DURING and said.negative):
        return Cadence(Period.DAY)
    if said.ending and term.by_a_day:
        return None
    spanned = any(first != last for first, last, _ in said.days)
    if said.negative and (term.deadline is not None or term.count is not None or spanned):
        return Cadence(Period.DAY)
    return None


def _implied_by_length(term: Term, days: list[tuple[date, date, bool]]) -> Cadence:
    if term.unit == "on":
        return Cadence(Period.WEEK, on=term.on)
    if term.unit == "weekday":
        return Cadence(Period.DAY, on=frozenset(WORKING_DAYS))
    named = {
        WEEKDAYS[first.weekday()] for first, last, weekday in days if weekday and first == last
    }
    if named and term.unit in {"week", "month", "year"}:
        return Cadence(Period.WEEK, on=frozenset(named))
    return Cadence(Period.DAY)


def _deeds(cadence: Cadence, times: int | None, count: int | None) -> int:
    """Return how many deeds a period asks: on each of its days, to each of so many."""
    if times is None:
        times = cadence.times
    if times is not None:
        return times * (count or 1) if times == 1 else times
    days = len(cadence.on) if cadence.period is not Period.DAY else 1
    return max(1, days) * (count or 1)


def _at_hours(cadence: Cadence, said: Said) -> int | None:
    """Return at how many hours of each day something is done, None where it is not told."""
    daily = cadence.period is Period.DAY and cadence.times is None
    return said.hours if daily and said.hours > 1 else None


def _recurring(cadence: Cadence, said: Said) -> Measure:
    term = said.term
    deadline = term.deadline
    if term.bound is Bound.BY and term.weekday and cadence.period is not Period.DAY:
        deadline = None  # "every week, by Friday" says when in the week, not when it ends
    if deadline is None and cadence.period is not Period.YEAR:
        deadline = max((last for first, last, _ in said.days if first != last), default=None)
    on = cadence.on
    if cadence.period is Period.DAY and term.unit == "weekday" and term.count is not None:
        on = on or frozenset(WORKING_DAYS)
    if term.unit == "on" and cadence.period is Period.WEEK:
        on = on or term.on
    return Measure(
        times=_deeds(cadence, said.times or _at_hours(cadence, said), said.count),
        period=cadence.period,
        every=cadence.every,
        on=in_week_order(set(on)),
        periods=None if deadline is not None else _periods(cadence, term),
        deadline=deadline,
        minutes=said.minutes,
    )


def _periods(cadence: Cadence, term: Term) -> int | None:
    """Return how many periods of a cadence fill a term told by its length."""
    if term.count is None:
        return None
    count, unit = term.count, term.unit
    if days_in(count, unit) < _LONGEST_DEED[cadence.period] * cadence.every:
        return None  # "once a quarter, fast for a day": the length of a deed, not of the term
    if cadence.period is Period.DAY:
        spans = _daily_periods(cadence, count, unit)
    elif cadence.period is Period.WEEK:
        spans = weeks_in(count, unit)
    else:
        months = {"month": 1, "quarter": 3, "year": 12}.get(unit)
        spans = count * months if months else max(1, days_in(count, unit) // 30)
        if cadence.period is Period.YEAR:
            spans = max(1, spans // 12)
    return max(1, -(-spans // cadence.every))


def _daily_periods(cadence: Cadence, count: int, unit: str) -> int:
    named = len(cadence.on)
    if not named or unit in {"weekday", "day"}:
        return days_in(count, unit)
    return weeks_in(count, unit) * named
