"""The length and end of a commitment, and how many days, weeks or dates it comes to."""

from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum

from cards.wording.spans import after


class Bound(StrEnum):
    """What a date bounds: the doing of one thing, or the going on of it."""

    BY = "by"
    UNTIL = "until"
    DURING = "during"
    ON = "on"


@dataclass(slots=True)
class Term:
    """What a line says of an end.

    Attributes:
        count: so many units the commitment goes on for, or None.
        unit: `day`, `weekday`, `week`, `month`, `quarter`, `year`; `on` for weekdays.
        on: weekdays the units are ("for six Sundays").
        loose: whether the length only bounds ("in the next ten days"), so that one thing
            is done within it, unless a cadence says otherwise.
        deadline: the last day, or None.
        bound: how the deadline was told, or None.
        weekday: whether the deadline is a bare weekday or a bare day of the month.
        unknown: whether an end was told that no calendar knows ("by my birthday").
    """

    count: int | None = None
    unit: str = ""
    on: frozenset[str] = frozenset()
    loose: bool = False
    deadline: date | None = None
    bound: Bound | None = None
    weekday: bool = False
    unknown: bool = False

    @property
    def by_a_day(self) -> bool:
        """Whether it names only a day by which, and no length."""
        return self.count is None and self.bound is Bound.BY


def days_in(count: int, unit: str) -> int:
    """Return how many days so many units are, a month counted as 30 and a year as 365.

    Common practice, no published source: who promises something daily for a month means
    thirty times, whichever month it is.
    """
    if unit in {"week", "on"}:
        return 7 * count
    if unit == "month":
        return 365 * (count // 12) + 30 * (count % 12)
    if unit == "quarter":
        return days_in(3 * count, "month")
    return 365 * count if unit == "year" else count


def weeks_in(count: int, unit: str) -> int:
    """Return how many whole weeks so many units are, a year counted as 52; at least 1."""
    months = {"month": 1, "quarter": 3, "year": 12}.get(unit)
    if months is not None:
        return max(1, 52 * count * months // 12)
    if unit in {"week", "on"}:
        return count
    return max(1, count // (5 if unit == "weekday" else 7))


def end_of(term: Term, on: date) -> date | None:
    """Return the last day of a term told by its length."""
    if term.count is None:
        return None
    unit = "week" if term.unit == "on" else term.unit
    if unit == "weekday":
        weeks, days = divmod(term.count, 5)
        day = on + timedelta(weeks=weeks)
        while days:
            day += timedelta(days=1)
            days -= day.weekday() < 5
        return day
    return after(on, term.count, unit)
