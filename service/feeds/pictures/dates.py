"""Which days are written along an axis of days: as many as are read without crowding."""

from collections.abc import Callable, Iterator, Sequence
from datetime import date, timedelta
from itertools import pairwise
from typing import Final

_MONDAY: Final = 0
_QUARTERS: Final = (1, 4, 7, 10)

_CHOICES: Final[tuple[Callable[[date], bool], ...]] = (
    lambda _: True,
    lambda day: day.weekday() == _MONDAY,
    lambda day: day.day == 1,
    lambda day: day.day == 1 and day.month in _QUARTERS,
    lambda day: day.day == 1 and day.month == 1,
)
"""The days that may be written, from all of them to one a year."""
_FINEST_MONTHLY: Final = 2
"""The first choice that is written as months."""


def marked_days(
    first: date, last: date, room: float, width_of: Callable[[str], float]
) -> tuple[tuple[date, str], ...]:
    """Return the days to write from a first to a last, with their words.

    Args:
        first: the day at the left end.
        last: the day at the right end.
        room: units from day to day.
        width_of: how wide words are.
    """
    span = (last - first).days + 1
    days = [first + timedelta(n) for n in range(span)]
    marked: tuple[tuple[date, str], ...] = ()
    for n, chosen in enumerate(_CHOICES):
        named = _months if n >= _FINEST_MONTHLY else _days
        found = tuple(named([day for day in days if chosen(day)]))
        if _apart(found, room, width_of):
            marked = found
            break
    return marked or ((first, _day(first)),)


def month_words(months: Sequence[date]) -> list[str]:
    """Return months in short, the year on a line below the first of each year."""
    return [
        f"{month:%b\n%Y}" if n == 0 or month.year != months[n - 1].year else f"{month:%b}"
        for n, month in enumerate(months)
    ]


def _apart(
    found: tuple[tuple[date, str], ...], room: float, width_of: Callable[[str], float]
) -> bool:
    halves = [max(map(width_of, words.split("\n"))) / 2 for _, words in found]
    gap = width_of("0")
    return all(
        (later - day).days * room >= half + gap + next_half
        for ((day, _), half), ((later, _), next_half) in pairwise(zip(found, halves, strict=True))
    )


def _days(days: list[date]) -> Iterator[tuple[date, str]]:
    for n, day in enumerate(days):
        named = n == 0 or day.month != days[n - 1].month
        yield day, _day(day) if named else f"{day.day}"


def _months(days: list[date]) -> Iterator[tuple[date, str]]:
    yield from zip(days, month_words(days), strict=True)


def _day(day: date) -> str:
    return f"{day.day} {day:%b}"
