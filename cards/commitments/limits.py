"""What a measure can ask, and how far ahead: whatever is told past these is refused.

The limits are our own, far past what a life holds; the core reckons with any measure all the
same, and stops at the last day a date can name.
"""

from datetime import date

from cards.commitments.measure import WEEKDAYS, Measure, Period
from cards.errors import Invalid

MOST_TIMES = 1_000
"""Deeds due in one period."""
MOST_EVERY = {Period.ONCE: 1, Period.DAY: 366, Period.WEEK: 104, Period.MONTH: 24, Period.YEAR: 10}
"""Days, weeks, months or years in one period."""
MOST_PERIODS = 3_660
"""Periods in one term: every day for ten years."""
MOST_MINUTES = 1_440
"""Minutes of one deed: a day."""
MOST_YEARS = 100
"""Years from the start to a deadline."""
_NUMBERS = {Period.MONTH: 5, Period.YEAR: 53}


def hold_measure(measure: Measure, start: date) -> None:
    """Hold a measure told by a reader or a program to what can be kept from a day on.

    Raises:
        Invalid: a number is out of its range, days and period contradict each other, or it
            ends before it starts.
    """
    period = measure.period
    _hold("times", measure.times, MOST_TIMES, "deeds in a period")
    span = "spans" if period is Period.ONCE else f"{period}s"
    _hold("every", measure.every, MOST_EVERY[period], f"{span} in a period")
    if measure.periods is not None:
        _hold("periods", measure.periods, MOST_PERIODS, "periods")
    if measure.minutes is not None:
        _hold("minutes", measure.minutes, MOST_MINUTES, "minutes")
    if period is Period.ONCE and (measure.on or measure.periods is not None):
        raise Invalid(
            "What is done once has no weekdays and no number of periods; give it a deadline, or "
            "say how often.",
            where="period",
        )
    for named in measure.on:
        _hold_day(named, period)
    if measure.deadline is not None:
        _hold_deadline(measure.deadline, start)


def _hold(field: str, number: int, most: int, what: str) -> None:
    if not 1 <= number <= most:
        raise Invalid(f"{number} {what} is out of range; give 1 to {most}.", where=field)


def _hold_day(named: str, period: Period) -> None:
    number, day = named[:-2], named[-2:]
    if day not in WEEKDAYS:
        raise Invalid(f"“{named[:10]}” is no weekday; say it as in MO or 1SA.", where="on")
    if not number:
        return
    most = _NUMBERS.get(period)
    if most is None:
        raise Invalid(
            f"“{named[:10]}” has a number: only months and years have a first or a last weekday.",
            where="on",
        )
    digits = number.removeprefix("-")
    if not (
        digits.isascii() and digits.isdigit() and len(digits) <= 2 and 1 <= int(digits) <= most
    ):
        raise Invalid(
            f"“{named[:10]}” is out of range: a {period} has at most {most} of a weekday.",
            where="on",
        )


def _hold_deadline(deadline: date, start: date) -> None:
    if deadline < start:
        raise Invalid(
            f"Its last day, {deadline}, is before its first, {start}; give a later one.",
            where="deadline",
        )
    if deadline.year > start.year + MOST_YEARS:
        raise Invalid(
            f"Its last day, {deadline}, is more than {MOST_YEARS} years off; give a nearer one, "
            "or none.",
            where="deadline",
        )
