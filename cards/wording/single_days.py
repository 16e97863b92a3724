"""Single days told in words: "the 30th", "next Monday", "the last Friday of May".

A bare weekday or date is the next one, after today.
"""

import re
from calendar import monthrange
from datetime import date, timedelta

from cards.wording.feasts import feast
from cards.wording.named_spans import MONTH, YEAR, Reader, named_month
from cards.wording.spans import (
    DAYS,
    MONTHS,
    Span,
    after,
    months_after,
    next_day,
    nth_weekday,
    span_of,
)

_DAY = timedelta(days=1)
_WEEK = timedelta(days=7)
_FRIDAY = 4
_WEEKDAY = "|".join(DAYS)
_PART = r"(?: (?:morning|afternoon|evening|night|lunchtime|noon|teatime|at noon))?"


def _iso(found: re.Match[str], _on: date) -> Span | None:
    day = date.fromisoformat(found["iso"])
    return day, day


def _relative(found: re.Match[str], on: date) -> Span | None:
    day = (
        on + {"tod": 0, "ton": 0, "now": 0, "thi": 0, "tom": 1, "the": 2}[found["near"][:3]] * _DAY
    )
    return day, day


def _of_month(found: re.Match[str], on: date) -> Span | None:
    """Read "1 march", "march 1 2027", "the 1th of march"."""
    month = MONTHS.index(found["month_a"] or found["month_b"]) + 1
    number = int((found["day_a"] or found["day_b"]).removesuffix("th"))
    year = found["year_a"] or found["year_b"]
    for candidate in (int(year),) if year else range(on.year, on.year + 9):
        try:
            day = date(candidate, month, number)
        except ValueError:
            continue
        if year or day > on:
            return day, day
    return None


def _of_this_month(found: re.Match[str], on: date) -> Span | None:
    """Read "the 30th", "the 1th of next month"."""
    number = int(found["nth"].removesuffix("th"))
    if not 1 <= number <= 31:
        return None
    first = on.replace(day=1)
    start = 1 if found["nth_next"] else 0
    for later in range(start, start + 13):
        month = months_after(first, later)
        if number > monthrange(month.year, month.month)[1]:
            continue
        day = month.replace(day=number)
        if day > on:
            return day, day
    return None


def _weekday_of_month(found: re.Match[str], on: date) -> Span | None:
    """Read "the 1th monday in may", "the last friday of next month"."""
    weekday = DAYS.index(found["which_day"])
    number = found["which"]
    for later in range(14):
        if found["which_month"]:
            first = named_month(MONTHS.index(found["which_month"]) + 1, None, on)[0]
            first = first.replace(year=first.year + later)
        else:
            first = months_after(on.replace(day=1), later + (1 if found["which_next"] else 0))
        day = nth_weekday(
            first.year, first.month, weekday, -1 if number == "last" else int(number[0])
        )
        if day is not None and day > on:
            return day, day
    return None


def _working_day_of_month(found: re.Match[str], on: date) -> Span | None:
    """Read "the last working day of the month", "the 1th working day of may"."""
    last = found["working"] == "last"
    if found["working_month"]:
        first, end = named_month(MONTHS.index(found["working_month"]) + 1, None, on)
    else:
        first, end = span_of("month", on, 1 if found["working_next"] else 0)
    day = end if last else first
    while day.weekday() > _FRIDAY:
        day += -_DAY if last else _DAY
    return day, day


def _weekday_of_season(found: re.Match[str], on: date) -> Span | None:
    """Read "the 1th sunday of advent", "the 2th sunday in lent"."""
    weekday = DAYS.index(found["church_day"])
    number = found["church_number"]
    for year in (on.year, on.year + 1, on.year + 2):
        first, last = feast(found["church_season"], year)
        day = last if number == "last" else first
        while day.weekday() != weekday:
            day += -_DAY if number == "last" else _DAY
        if number != "last":
            day += (int(number[0]) - 1) * _WEEK
        if first <= day <= last and day > on:
            return day, day
    return None


def _weekday(found: re.Match[str], on: date) -> Span | None:
    weekday = DAYS.index(found["weekday"])
    said = found["which_week"] or ""
    if found["week_later"] or "next week" in (found["in_week"] or ""):
        later = found["week_later"]
        if later:
            day = next_day(on, weekday) + (_WEEK if "2" not in later else 2 * _WEEK)
        else:
            day = span_of("week", on, 1)[0] + weekday * _DAY
        return day, day
    day = on if "this" in said and on.weekday() == weekday else next_day(on, weekday)
    return day, day


def _this_time(found: re.Match[str], on: date) -> Span | None:
    """Read "this time next week", "this day next month"."""
    day = after(on, 1, found["time_later"] or "day")
    return (day, day) if day else None


def _week_on(found: re.Match[str], on: date) -> Span | None:
    near = {"today": on, "tomorrow": on + _DAY}.get(found["week_on"])
    day = (near or next_day(on, DAYS.index(found["week_on"]))) + _WEEK
    return day, day


def _from_now(found: re.Match[str], on: date) -> Span | None:
    day = after(on, int(found["count"] or 1), found["from_unit"])
    return (day, day) if day else None


SINGLE_DAYS: tuple[Reader, ...] = (
    (r"=(?P<iso>\d{8})=", _iso),
    (
        r"(?P<near>today|tonight|now|this (?:very )?(?:day|morning|afternoon|evening|night)"
        r"|the day after tomorrow|tomorrow)" + _PART,
        _relative,
    ),
    (r"this (?:time|day) (?:tomorrow|next (?P<time_later>week|month|year))", _this_time),
    (
        (
            rf"(?:the )?(?:(?:{_WEEKDAY}),? )?(?:the )?(?:(?P<day_a>\d{{1,2}}(?:th)?)(?: "
            rf"of)? (?P<month_a>{MONTH})(?:,? (?P<year_a>{YEAR}))?"
            rf"|(?P<month_b>{MONTH}) (?:the )?(?P<day_b>\d{{1,2}}(?:th)?)(?! (?:{MONTH}"
            rf"|minutes|times))(?: ?,? (?P<year_b>{YEAR}))?)"
        ),
        _of_month,
    ),
    (
        (
            rf"(?:the )?(?P<which>[1-5]th|last) (?P<which_day>{_WEEKDAY})(?: (?:of|in) "
            rf"(?:(?P<which_month>{MONTH})|(?P<which_next>(?:the )?(?:next|coming"
            r"|following) month)|(?:this|the) month))"
        ),
        _weekday_of_month,
    ),
    (
        (
            r"(?:the )?(?P<church_number>[1-6]th|last) "
            rf"(?P<church_day>{_WEEKDAY}) (?:of|in) (?P<church_season>advent|lent)"
        ),
        _weekday_of_season,
    ),
    (
        (
            r"(?:the )?(?P<working>1th|last) weekday (?:of|in) "
            rf"(?:(?P<working_month>{MONTH})|(?P<working_next>(?:the )?next month)"
            r"|(?:this|the) month)"
        ),
        _working_day_of_month,
    ),
    (
        (
            rf"(?:(?:{_WEEKDAY}) ,? ?)?(?:(?<!\bbe )(?<!\bam )the |(?<=day ))"
            r"(?P<nth>\d{1,2}th)(?: (?:day )?of (?:(?:this|the) month|(?P<nth_next>next month)))?"
            r"(?=$| (?:[.,;:!?()~]|i|we|at|in the|and|or|each|every|to|by|for|on|~)(?:$| ))"
        ),
        _of_this_month,
    ),
    (rf"(?:a|1) week (?:on|from|this|next) (?P<week_on>{_WEEKDAY}|tomorrow|today)", _week_on),
    (
        (
            r"(?P<which_week>(?:(?:the )?(?:next|coming|following)|this(?: coming)?|the) )?"
            rf"(?P<weekday>{_WEEKDAY}){_PART}(?! (?:meetings?|group|class|classes"
            r"|lessons?|papers?|market|service|edition|school|club|seminar|circle"
            r"|newspapers?|dinner|lunch|supper|mass|rehearsals?|choir|team|post|call"
            r"|report|review|roast|walk|best)(?!\S))"
            r"(?P<week_later> week| 2 weeks| 2weeks)?(?P<in_week>(?: of)? next week| of "
            r"this week| this week)?"
        ),
        _weekday,
    ),
    (
        (
            r"(?:a|1|(?P<count>\d{1,4})) (?P<from_unit>days?|weeks?|months?|years?) "
            r"(?:from (?:now|today)|from this day|hence)"
        ),
        _from_now,
    ),
)
"""Patterns of single days, and what reads each; in order, the first that fits is meant."""
