"""The measure of a commitment: how often, on which days, for how long, until or by when."""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

WEEKDAYS = ("MO", "TU", "WE", "TH", "FR", "SA", "SU")
"""Days of the week as RFC 5545 (3.3.10, BYDAY) writes them, in its order from Monday."""
WORKING_DAYS = WEEKDAYS[:5]
WEEKEND = WEEKDAYS[5:]


class Period(StrEnum):
    """The span in which the deeds are counted; `once` for what is done and over."""

    ONCE = "once"
    DAY = "day"
    WEEK = "week"
    MONTH = "month"
    YEAR = "year"


@dataclass(frozen=True, slots=True)
class Measure:
    """What a commitment asks, in a form deeds can be counted against.

    `times` deeds are due in each period; a period is `every` days, weeks, calendar
    months or years. Some examples:

    | words | times, period, every, on, periods, deadline |
    |---|---|
    | every other day for two weeks | 1, day, 2, (), 7, None |
    | on Monday and Thursday nights | 2, week, 1, (MO, TH), None, None |
    | for the next ten working days | 1, day, 1, (MO to FR), 10, None |
    | once a quarter | 1, month, 3, (), None, None |
    | on the first Saturday of each month | 1, month, 1, (1SA), None, None |
    | pay two invoices by the 30th | 2, once, 1, (), None, the 30th |

    Attributes:
        times: deeds in one period, from 1; all of them together when the period is `once`.
        period: the span they are counted in. With `day` and days named in `on`, only
            those days are periods.
        every: how many such spans make one period, from 1; always 1 for `once`.
        on: weekdays on which they can be done, as RFC 5545 writes BYDAY, in the order of
            the week; with a number before them (`1SA`, `-1FR`) the first or last of the
            month or year. Empty when none is named, and for `once`.
        periods: how many periods there are, from 1; None when it is open or ends on a date,
            and for `once`.
        deadline: the last day that counts, or None.
        minutes: how long one deed lasts, from 1, or None.
    """

    times: int = 1
    period: Period = Period.ONCE
    every: int = 1
    on: tuple[str, ...] = ()
    periods: int | None = None
    deadline: date | None = None
    minutes: int | None = None


def in_week_order(days: set[str]) -> tuple[str, ...]:
    """Return BYDAY values by weekday from Monday, then by their number."""
    return tuple(sorted(days, key=lambda day: (WEEKDAYS.index(day[-2:]), int(day[:-2] or 0))))
