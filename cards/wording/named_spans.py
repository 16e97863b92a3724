"""Spans told in words: "June", "this month", "the end of the quarter", "Lent".

A span that is not over yet is the present one.
"""

import re
from collections.abc import Callable
from datetime import date, timedelta

from cards.wording.feasts import FEASTS, feast
from cards.wording.spans import MONTHS, Span, month_of, span_of

Reader = tuple[str, Callable[[re.Match[str], date], Span | None]]
"""A pattern of a phrase, and what reads its match as seen from a day."""
MONTH = "|".join(MONTHS)
YEAR = r"(?:19|20|21)\d\d"
_DAY = timedelta(days=1)
_MIDDLE = 15
"""Day of the month that is its middle."""
_WEEK = timedelta(days=7)
_SEASONS = {"spring": 3, "summer": 6, "autumn": 9, "fall": 9, "winter": 12}
_THIS = r"(?:(?:the|this|that|the present|the current|our) )"
_NEXT = r"(?:(?:the )?(?:next|coming|following) )"
_SPANNED = "day|week|weekend|month|quarter|year"


def _span(found: re.Match[str], on: date) -> Span | None:
    return span_of(found["unit"], on, 1 if found["span_next"] else 0)


def _week_of_month(found: re.Match[str], on: date) -> Span | None:
    """Read "the 1th week of april": seven days from its first, or its last seven."""
    if found["weeks_month"]:
        first, last = named_month(MONTHS.index(found["weeks_month"]) + 1, None, on)
    else:
        first, last = span_of("month", on, 1 if found["weeks_next"] else 0)
    if found["week_number"] == "last":
        return last - 6 * _DAY, last
    begun = first + (int(found["week_number"][0]) - 1) * _WEEK
    return begun, min(begun + 6 * _DAY, last)


def _month_name(found: re.Match[str], on: date) -> Span | None:
    span = named_month(MONTHS.index(found["month"]) + 1, found["year"], on)
    if found["month_next"] and span[0] <= on:
        return month_of(span[0].year + 1, span[0].month)
    return span


def named_month(month: int, year: str | None, on: date) -> Span:
    """Return a month of a year, or the next that is not over where no year is told."""
    if year:
        return month_of(int(year), month)
    this = month_of(on.year, month)
    return this if this[1] >= on else month_of(on.year + 1, month)


def _feast(found: re.Match[str], on: date) -> Span | None:
    if found["feast_year"]:
        return feast(found["feast"], int(found["feast_year"]))
    return _next_feast(found["feast"], on)


def _next_feast(name: str, on: date) -> Span:
    spans = (feast(name, year) for year in (on.year, on.year + 1, on.year + 2))
    return next(span for span in spans if span[1] > on)


def _quarter(found: re.Match[str], on: date) -> Span | None:
    return _nth_quarter(int(found["quarter"][0]), on)


def _nth_quarter(number: int, on: date) -> Span:
    this = month_of(on.year, 3 * number - 2, 3)
    return this if this[1] >= on else month_of(on.year + 1, 3 * number - 2, 3)


def _season_name(found: re.Match[str], on: date) -> Span | None:
    return _season(found["season"], on)


def _season(name: str, on: date) -> Span:
    """Return a season of three whole months, as meteorologists count in the north."""
    for year in (on.year - 1, on.year, on.year + 1):
        span = month_of(year, _SEASONS[name], 3)
        if span[1] >= on:
            return span
    raise AssertionError(name)


def _year(found: re.Match[str], _on: date) -> Span | None:
    return span_of("year", date(int(found["bare_year"]), 1, 1))


def _end(found: re.Match[str], on: date) -> Span | None:
    """Give the last day of a span, with a first day after it: before the end is by the end."""
    if found["end_month"]:
        last = named_month(MONTHS.index(found["end_month"]) + 1, found["end_year"], on)[1]
    elif found["end_quarter"]:
        last = _nth_quarter(int(found["end_quarter"][0]), on)[1]
    elif found["end_season"]:
        last = _season(found["end_season"], on)[1]
    elif found["end_of_year"]:
        last = date(int(found["end_of_year"]), 12, 31)
    elif found["end_feast"]:
        last = _next_feast(found["end_feast"], on)[1]
    else:
        last = span_of(found["end_unit"] or found["out_unit"], on, 1 if found["end_next"] else 0)[1]
    return last + _DAY, last


def _start(found: re.Match[str], on: date) -> Span | None:
    if found["start_month"]:
        first = named_month(MONTHS.index(found["start_month"]) + 1, found["start_year"], on)[0]
    elif found["start_this"]:
        later = 0 if found["where"].startswith("mi") and on.day < _MIDDLE else 1
        first = span_of("month", on, later)[0]
    else:
        first = span_of(found["start_unit"], on, 1)[0]
    day = first + timedelta(days=_MIDDLE - 1 if found["where"].startswith("mi") else 0)
    return day, day


NAMED_SPANS: tuple[Reader, ...] = (
    (
        (
            r"(?:(?:the )?(?:very )?(?:end|close|last day) of (?:(?P<end_next>(?:the "
            r")?next|the following|the coming) )?"
            rf"(?:(?:this|the|that|my|our) )?(?:(?P<end_unit>{_SPANNED})|(?P<end_month>{MONTH})"
            rf"(?:,? (?P<end_year>{YEAR}))?|(?P<end_season>spring|summer|autumn|fall|winter)"
            rf"|(?P<end_quarter>[1-4]th) quarter|(?P<end_feast>{'|'.join(FEASTS)})|"
            rf"(?P<end_of_year>{YEAR}))"
            rf"|{_THIS}?(?P<out_unit>{_SPANNED}) (?:(?:is|has) (?:out|over|done|ended|up"
            r"|through)|'s end|end|ends))"
        ),
        _end,
    ),
    (
        (
            r"(?:the )?(?P<where>start|beginning|middle|mid) (?:of )?"
            rf"(?:(?P<start_month>{MONTH})(?:,? (?P<start_year>{YEAR}))?"
            r"|(?:the )?next (?P<start_unit>week|month|quarter|year)"
            r"|(?:the|this) (?P<start_this>month))"
        ),
        _start,
    ),
    (
        (
            r"(?:the )?(?P<week_number>[1-5]th|last) week (?:of|in) (?:"
            rf"(?P<weeks_month>{MONTH})|(?P<weeks_next>(?:the )?next month)|(?:the|this) month)"
        ),
        _week_of_month,
    ),
    (
        (
            rf"(?:(?P<span_next>{_NEXT})|(?:this(?: coming)?|the(?: present| current)?|my"
            r"|our) )(?P<unit>week|weekend|month|quarter|year)"
        ),
        _span,
    ),
    (
        (
            rf"(?:this |next |the )?(?P<feast>{'|'.join(FEASTS)})(?: "
            rf"(?P<feast_year>{YEAR}))?(?! (?:tree|card|cards))"
        ),
        _feast,
    ),
    (rf"(?:this |(?P<month_next>next ))?(?P<month>{MONTH})(?:,? (?P<year>{YEAR}))?", _month_name),
    (r"(?:the )?(?P<quarter>[1-4]th) quarter", _quarter),
    (r"(?:this |next |the )?(?P<season>spring|summer|autumn|winter)", _season_name),
    (rf"(?P<bare_year>{YEAR})", _year),
)
"""Patterns of spans, and what reads each; in order, the first that fits is meant."""
