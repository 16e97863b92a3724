"""What a measure must hold to that a reader gives: bounds, and no contradiction within it.

The bounds are our own, wide of anything a person would take on; no published source.
"""

import re
from datetime import date

from cards.commitments.check_ins import MOST_DEEDS
from cards.commitments.cutting import Span
from cards.commitments.measure import Measure, Period, in_week_order
from cards.commitments.periods import Rhythm
from cards.errors import Invalid

MOST_TIMES = MOST_DEEDS
"""Deeds in one period."""
MOST_EVERY = {
    Period.ONCE: 1,
    Period.DAY: 366,
    Period.WEEK: 104,
    Period.MONTH: 60,
    Period.YEAR: 10,
}
"""Spans that make one period: a year of days, two of weeks, five of months, ten of years."""
MOST_PERIODS = 4_000
"""Periods in all: ten years of days."""
MOST_MINUTES = 24 * 60
"""Minutes of one deed: a whole day."""
MOST_YEARS = 100
"""Years from the start to its last day."""
BYDAY = r"^([1-5]|-[1-5])?(MO|TU|WE|TH|FR|SA|SU)$"
"""How a day is written in `on`: RFC 5545 (3.3.10, BYDAY), within one month."""

_DAYS = {Period.DAY: 1, Period.WEEK: 7, Period.MONTH: 31, Period.YEAR: 366}
_NUMBERED = frozenset({Period.MONTH, Period.YEAR})


def held(measure: Measure, start: date) -> Measure:
    """Return a measure given for a term that begins on a day, its days in the order of the week.

    Raises:
        Invalid: it is out of bounds, or asks what cannot be.
    """
    _hold_bounds(measure)
    if measure.period is Period.ONCE:
        _hold_once(measure)
    else:
        _hold_time(measure)
    on = _held_days(measure)
    if measure.deadline is not None:
        if measure.deadline < start:
            raise _amiss(
                f"Its last day, {measure.deadline.isoformat()}, is before its first, "
                f"{start.isoformat()}."
            )
        if measure.deadline.year > start.year + MOST_YEARS:
            raise _amiss(
                f"Its last day, {measure.deadline.isoformat()}, is more than {MOST_YEARS} years "
                "off; give a nearer one, or none."
            )
        _hold_end(measure, start, measure.deadline)
    return Measure(
        measure.times,
        measure.period,
        measure.every,
        on,
        measure.periods,
        measure.deadline,
        measure.minutes,
    )


def _hold_bounds(measure: Measure) -> None:
    for name, value, most in (
        ("times", measure.times, MOST_TIMES),
        ("every", measure.every, MOST_EVERY[measure.period]),
        ("periods", measure.periods, MOST_PERIODS),
        ("minutes", measure.minutes, MOST_MINUTES),
    ):
        if value is not None and not 1 <= value <= most:
            bounds = "always 1" if most == 1 else f"from 1 to {most}"
            raise _amiss(
                f"“{name}” is {value}; of what is counted by “{measure.period}” it is {bounds}."
            )


def _hold_once(measure: Measure) -> None:
    if measure.on:
        raise _amiss("What is done once names no weekdays; give its last day instead.")
    if measure.periods is not None:
        raise _amiss("What is done once has no number of periods; give its last day instead.")


def _hold_time(measure: Measure) -> None:
    if measure.minutes is None:
        return
    asked = measure.times * measure.minutes
    there_are = MOST_MINUTES * _DAYS[measure.period] * measure.every
    if asked > there_are:
        raise _amiss(f"It asks {asked} minutes of a period that has {there_are}.")


def _held_days(measure: Measure) -> tuple[str, ...]:
    for day in measure.on:
        found = re.fullmatch(BYDAY, day)
        if found is None:
            raise _amiss(
                f"“{day[:20]}” is no day of the week. Write MO, TU, WE, TH, FR, SA or SU, of a "
                "month also 1SA or -1FR."
            )
        if found[1] and measure.period not in _NUMBERED:
            raise _amiss(f"“{day}” is a day of a month; what it asks is counted by another span.")
    if len(set(measure.on)) < len(measure.on):
        raise _amiss("It names a day twice.")
    return in_week_order(set(measure.on))


def _hold_end(measure: Measure, start: date, deadline: date) -> None:
    if measure.period is Period.ONCE:
        return
    if measure.periods is not None:
        over = Rhythm(measure, start).nth_period(measure.periods).last
        if over > deadline:
            raise _amiss(
                f"{measure.periods} periods are over on {over.isoformat()}, after its last day, "
                f"{deadline.isoformat()}. Give the one or the other."
            )
    if next(Rhythm(measure, start, deadline).periods_in(Span(start, deadline)), None) is None:
        raise _amiss(
            f"No day it names lies between {start.isoformat()} and {deadline.isoformat()}."
        )


def _amiss(said: str) -> Invalid:
    return Invalid(said, where="measure")
