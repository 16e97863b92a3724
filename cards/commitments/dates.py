"""Days and spans told in words, relative to a day: "the 30th", "next Monday", "Easter".

Every phrase names a span with a first and a last day, so that "by" reaches its last day
and "before" stops short of its first: "by Friday" includes Friday, "before June" ends with
May. A bare weekday or date is the next one, after today; a span that is not over yet
("June", "this month") is the present one.
"""

import re
from calendar import monthrange
from collections.abc import Callable
from datetime import date, timedelta

from cards.commitments.feasts import FEASTS, feast
from cards.commitments.spans import (
    DAYS,
    MONTHS,
    Span,
    after,
    month_of,
    months_after,
    next_day,
    nth_weekday,
    span_of,
)

_DAY = timedelta(days=1)
_WEEK = timedelta(days=7)
_MONTH = "|".join(MONTHS)
_WEEKDAY = "|".join(DAYS)
_SEASONS = {"spring": 3, "summer": 6, "autumn": 9, "fall": 9, "winter": 12}
_PART = r"(?: (?:morning|afternoon|evening|night|lunchtime|noon|teatime|at noon))?"
_THIS = r"(?:(?:the|this|that|the present|the current|our) )"
_NEXT = r"(?:(?:the )?(?:next|coming|following) )"
_SPANNED = "day|week|weekend|month|quarter|year"


def _iso(found: re.Match[str], _on: date) -> Span | None:
    day = date.fromisoformat(found["iso"])
    return day, day


def _relative(found: re.Match[str], on: date) -> Span | None:
    day = (
        on + {"tod": 0, "ton": 0, "now": 0, "thi": 0, "tom": 1, "the": 2}[found["near"][:3]] * _DAY
    )
    return day, day


def _end(found: re.Match[str], on: date) -> Span | None:
    """Give the last day of a span, with a first day after it: before the end is by the end."""
    if found["end_month"]:
        last = _named_month(MONTHS.index(found["end_month"]) + 1, found["end_year"], on)[1]
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
        first = _named_month(MONTHS.index(found["start_month"]) + 1, found["start_year"], on)[0]
    else:
        first = span_of(found["start_unit"], on, 1)[0]
    day = first + timedelta(days=14 if found["where"].startswith("mi") else 0)
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
            first = _named_month(MONTHS.index(found["which_month"]) + 1, None, on)[0]
            first = first.replace(year=first.year + later)
        else:
            first = months_after(on.replace(day=1), later + (1 if found["which_next"] else 0))
        day = nth_weekday(
            first.year, first.month, weekday, -1 if number == "last" else int(number[0])
        )
        if day is not None and day > on:
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


def _week_on(found: re.Match[str], on: date) -> Span | None:
    near = {"today": on, "tomorrow": on + _DAY}.get(found["week_on"])
    day = (near or next_day(on, DAYS.index(found["week_on"]))) + _WEEK
    return day, day


def _span(found: re.Match[str], on: date) -> Span | None:
    return span_of(found["unit"], on, 1 if found["span_next"] else 0)


def _week_of_month(found: re.Match[str], on: date) -> Span | None:
    """Read "the 1th week of april": seven days from its first, or its last seven."""
    if found["weeks_month"]:
        first, last = _named_month(MONTHS.index(found["weeks_month"]) + 1, None, on)
    else:
        first, last = span_of("month", on, 1 if found["weeks_next"] else 0)
    if found["week_number"] == "last":
        return last - 6 * _DAY, last
    begun = first + (int(found["week_number"][0]) - 1) * _WEEK
    return begun, min(begun + 6 * _DAY, last)


def _month_name(found: re.Match[str], on: date) -> Span | None:
    span = _named_month(MONTHS.index(found["month"]) + 1, found["year"], on)
    if found["month_next"] and span[0] <= on:
        return month_of(span[0].year + 1, span[0].month)
    return span


def _named_month(month: int, year: str | None, on: date) -> Span:
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


def _from_now(found: re.Match[str], on: date) -> Span | None:
    day = after(on, int(found["count"] or 1), found["from_unit"])
    return (day, day) if day else None


_YEAR = r"(?:19|20|21)\d\d"
_READERS: tuple[tuple[str, Callable[[re.Match[str], date], Span | None]], ...] = (
    (r"=(?P<iso>\d{8})=", _iso),
    (
        r"(?P<near>today|tonight|now|this (?:very )?(?:day|morning|afternoon|evening|night)"
        r"|the day after tomorrow|tomorrow)" + _PART,
        _relative,
    ),
    (
        (
            r"(?:(?:the )?(?:very )?(?:end|close|last day) of (?:(?P<end_next>(?:the "
            r")?next|the following|the coming) )?"
            rf"(?:(?:this|the|that|my|our) )?(?:(?P<end_unit>{_SPANNED})|(?P<end_month>{_MONTH})"
            rf"(?:,? (?P<end_year>{_YEAR}))?|(?P<end_season>spring|summer|autumn|fall|winter)"
            rf"|(?P<end_quarter>[1-4]th) quarter|(?P<end_feast>{'|'.join(FEASTS)})|"
            rf"(?P<end_of_year>{_YEAR}))"
            rf"|{_THIS}?(?P<out_unit>{_SPANNED}) (?:(?:is|has) (?:out|over|done|ended|up"
            r"|through)|'s end|end|ends))"
        ),
        _end,
    ),
    (
        (
            r"(?:the )?(?P<where>start|beginning|middle|mid) (?:of )?"
            rf"(?:(?P<start_month>{_MONTH})(?:,? (?P<start_year>{_YEAR}))?"
            r"|(?:the )?next (?P<start_unit>week|month|quarter|year))"
        ),
        _start,
    ),
    (
        (
            rf"(?:the )?(?:(?:{_WEEKDAY}),? )?(?:the )?(?:(?P<day_a>\d{{1,2}}(?:th)?)(?: "
            rf"of)? (?P<month_a>{_MONTH})(?:,? (?P<year_a>{_YEAR}))?"
            rf"|(?P<month_b>{_MONTH}) (?:the )?(?P<day_b>\d{{1,2}}(?:th)?)(?! (?:{_MONTH}"
            rf"|minutes|times))(?: ?,? (?P<year_b>{_YEAR}))?)"
        ),
        _of_month,
    ),
    (
        (
            rf"(?:the )?(?P<which>[1-5]th|last) (?P<which_day>{_WEEKDAY})(?: (?:of|in) "
            rf"(?:(?P<which_month>{_MONTH})|(?P<which_next>(?:the )?(?:next|coming"
            r"|following) month)|(?:this|the) month))"
        ),
        _weekday_of_month,
    ),
    (
        (
            r"(?:the )?(?P<week_number>[1-5]th|last) week (?:of|in) (?:"
            rf"(?P<weeks_month>{_MONTH})|(?P<weeks_next>(?:the )?next month)|(?:the|this) month)"
        ),
        _week_of_month,
    ),
    (
        (
            r"the (?P<nth>\d{1,2}th)(?: (?:day )?of (?:(?:this|the) month|"
            r"(?P<nth_next>next month)))?"
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
            rf"(?:(?P<span_next>{_NEXT})|(?:this(?: coming)?|the(?: present| current)?|my"
            r"|our) )(?P<unit>week|weekend|month|quarter|year)"
        ),
        _span,
    ),
    (
        (
            r"(?:a|1|(?P<count>\d{1,4})) (?P<from_unit>days?|weeks?|months?|years?) "
            r"(?:from (?:now|today)|from this day|hence)"
        ),
        _from_now,
    ),
    (rf"(?:this |(?P<month_next>next ))?(?P<month>{_MONTH})(?:,? (?P<year>{_YEAR}))?", _month_name),
    (
        (
            rf"(?:this |next |the )?(?P<feast>{'|'.join(FEASTS)})(?: "
            rf"(?P<feast_year>{_YEAR}))?(?! (?:tree|card|cards))"
        ),
        _feast,
    ),
    (r"(?:the )?(?P<quarter>[1-4]th) quarter", _quarter),
    (r"(?:this |next |the )?(?P<season>spring|summer|autumn|winter)", _season_name),
    (rf"(?P<bare_year>{_YEAR})", _year),
)
DATE = "(?:" + re.sub(r"\?P<\w+>", "?:", "|".join(pattern for pattern, _ in _READERS)) + ")"
"""Pattern of every phrase `day_or_span` reads, to be put into a larger one of `line.words`."""
_COMPILED = tuple((re.compile(pattern), reader) for pattern, reader in _READERS)


def day_or_span(phrase: str, on: date) -> Span | None:
    """Return the span a phrase of a line names, seen from a day; None for none."""
    for pattern, reader in _COMPILED:
        found = pattern.fullmatch(phrase)
        if found is not None:
            try:
                return reader(found, on)
            except (OverflowError, ValueError):
                return None
    return None
