"""Arithmetic of the calendar: weeks from Monday, months and quarters to their last day."""

from calendar import monthrange
from datetime import date, timedelta

Span = tuple[date, date]
"""First and last day, both included."""

MONTHS = (
    "january february march april may june july august september october november december".split()
)
DAYS = "monday tuesday wednesday thursday friday saturday sunday".split()
_DAY = timedelta(days=1)
_WEEK = timedelta(days=7)


def next_day(on: date, weekday: int) -> date:
    """Return the next such weekday after a day; Monday is 0."""
    return on + timedelta(days=(weekday - on.weekday() - 1) % 7 + 1)


def months_after(day: date, months: int) -> date:
    """Return the same day of a later month, or its last where it has no such day."""
    year, month = divmod(day.year * 12 + day.month - 1 + months, 12)
    return date(year, month + 1, min(day.day, monthrange(year, month + 1)[1]))


def month_of(year: int, month: int, months: int = 1) -> Span:
    """Return so many months from a month's first day."""
    first = date(year, month, 1)
    return first, months_after(first, months) - _DAY


def span_of(unit: str, on: date, later: int = 0) -> Span:
    """Return the day, week (from Monday), weekend, month, quarter or year a day is in.

    Args:
        unit: one of those words.
        on: the day.
        later: how many such spans later.
    """
    if unit == "day":
        day = on + later * _DAY
        return day, day
    if unit in {"week", "weekend"}:
        monday = on - timedelta(days=on.weekday()) + later * _WEEK
        return (monday if unit == "week" else monday + 5 * _DAY), monday + 6 * _DAY
    if unit == "month":
        first = months_after(on.replace(day=1), later)
        return month_of(first.year, first.month)
    if unit == "quarter":
        first = months_after(date(on.year, (on.month - 1) // 3 * 3 + 1, 1), 3 * later)
        return month_of(first.year, first.month, 3)
    return date(on.year + later, 1, 1), date(on.year + later, 12, 31)


def nth_weekday(year: int, month: int, weekday: int, number: int) -> date | None:
    """Return the first (1), second, ... or last (-1) such weekday of a month, None without."""
    first, last = month_of(year, month)
    if number < 0:
        return last - timedelta(days=(last.weekday() - weekday) % 7)
    day = first + timedelta(days=(weekday - first.weekday()) % 7 + 7 * (number - 1))
    return day if day <= last else None


def after(on: date, count: int, unit: str) -> date | None:
    """Return the day so many hours, days, weeks, months, quarters or years later.

    None where that is beyond the calendar, or a century away, which nobody means.
    """
    unit = unit.removesuffix("s")
    days = {"day": 1, "night": 1, "week": 7}.get(unit)
    months = {"month": 1, "quarter": 3, "year": 12}.get(unit)
    if unit == "hour":
        days, count = 1, -(-count // 24)
    try:
        if days and count * days <= 36_525:
            return on + timedelta(days=count * days)
        if months and count * months <= 1_200:
            return months_after(on, count * months)
    except (OverflowError, ValueError):
        return None
    return None
