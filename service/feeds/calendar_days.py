"""The days a check-in is expected, said as RFC 5545 says recurrences (3.8.5)."""

from dataclasses import dataclass
from datetime import date, timedelta

from cards.commitments import Life, Measure, Period, Rhythm, Span
from cards.commitments.measure import in_week_order

AHEAD = 731
"""Days ahead that are listed one by one where no rule says them: two years, with a leap day."""
PAUSED = 3_660
"""Days ahead up to which a pause is told from an open one: ten years."""
_DAY = timedelta(days=1)
_MONTHLY = {Period.MONTH: "MONTHLY", Period.YEAR: "YEARLY"}

Rule = dict[str, str | int | list[str]]


@dataclass(frozen=True, slots=True)
class Days:
    """A first day, the rule it is repeated by (or None), days besides, and days left out."""

    first: date
    rule: Rule | None
    besides: tuple[date, ...] = ()
    without: tuple[date, ...] = ()


def days_of(life: Life, end: date | None, today: date) -> Days | None:
    """Return the days on which check-ins of the running term are expected, or None for none.

    `end` is its last day, or None while it is open.

    Days in a pause are left out; after one that ends more than ten years ahead none is shown
    yet. What no rule can say (every second of three days of the week, two of several days named
    in a month) is listed for two years ahead of `today`.
    """
    term = life.term
    rhythm = Rhythm(term.measure, term.start, end)
    begin = max(term.start, life.asked_from)
    # A pause of so many years is taken for an open one: its days are left out one by one.
    far = _later(max(begin, today), PAUSED)
    open_pauses = [pause.first for pause in life.pauses if pause.last > far]
    stop = min([end or date.max, *(first - _DAY for first in open_pauses)])
    pauses = [pause for pause in life.pauses if pause.last <= far]
    first = next(rhythm.expected(begin, stop), None) if begin <= stop else None
    if first is None:
        return None
    rule = _rule(rhythm.measure)
    if rule is None:
        return _listed(rhythm, Span(begin, min(stop, _later(max(begin, today), AHEAD))), pauses)
    # The last period may be cut short by the end: its day is not one the rule gives.
    besides: tuple[date, ...] = ()
    last = rhythm.period_at(end) if end is not None else None
    if last is not None and begin <= stop:
        besides = tuple(
            day for day in rhythm.expected(max(last.first, begin), stop) if _asked(day, pauses)
        )
    without = tuple(
        day
        for pause in pauses
        if pause.first <= stop
        for day in rhythm.expected(max(begin, pause.first), min(stop, pause.last))
    )
    if stop < date.max:
        rule = rule | {"UNTIL": stop.strftime("%Y%m%d")}
    return Days(first, rule, besides, without)


def _asked(day: date, pauses: list[Span]) -> bool:
    return not any(pause.first <= day <= pause.last for pause in pauses)


def _later(day: date, days: int) -> date:
    return date.fromordinal(min(day.toordinal() + days, date.max.toordinal()))


def _listed(rhythm: Rhythm, span: Span, pauses: list[Span]) -> Days | None:
    days = [day for day in rhythm.expected(span.first, span.last) if _asked(day, pauses)]
    # The first day is listed too: some readers leave it out beside others that are listed, and
    # what is said twice counts once (RFC 5545, 3.8.5.3).
    return Days(days[0], None, tuple(days)) if days else None


def _rule(measure: Measure | None) -> Rule | None:
    """Return the rule that gives the expected days from the first of them, if there is one."""
    if measure is None:
        return {"FREQ": "DAILY", "INTERVAL": 28}
    every, on = measure.every, in_week_order(set(measure.on))
    if measure.period in _MONTHLY:
        return _of_months(measure, on)
    if not on:
        days = every * (7 if measure.period is Period.WEEK else 1)
        return {"FREQ": "DAILY", "INTERVAL": days}
    weekdays = in_week_order({day[-2:] for day in on})
    if measure.period is Period.WEEK:
        if measure.times < every * len(weekdays):
            # The last named day of each period, which is as long as any other.
            return {"FREQ": "DAILY", "INTERVAL": every * 7}
    elif measure.times < every:
        cycles, rest = divmod(every, len(weekdays))
        return {"FREQ": "DAILY", "INTERVAL": cycles * 7} if not rest else None
    return {"FREQ": "WEEKLY", "BYDAY": list(weekdays)}


def _of_months(measure: Measure, on: tuple[str, ...]) -> Rule | None:
    named: Rule = {"FREQ": _MONTHLY[measure.period], "INTERVAL": measure.every}
    if not on:
        return named | ({"BYMONTHDAY": -1} if measure.period is Period.MONTH else {})
    weekdays = [day for day in on if len(day) == 2]
    # Numbered days are those of a period's first month or year, the last weekday of its last one:
    # either stands in every one that INTERVAL comes to from the first of them.
    if not weekdays and measure.times >= len(on):
        return named | {"BYDAY": list(on)}
    if measure.times > 1:
        # Of a period cut short by the start more days can be asked than of others.
        return None
    last = weekdays if weekdays and measure.every > 1 else list(on)
    return named | {"BYDAY": last, "BYSETPOS": -1}
