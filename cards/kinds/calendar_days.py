"""Days a line of plain words names: dates, months, years, feasts, weekdays."""

import re
from calendar import monthrange
from dataclasses import dataclass

from cards.commitments.measure import WEEKEND, WORKING_DAYS
from cards.wording.cadence import named_days
from cards.wording.feasts import FEASTS, FIXED
from cards.wording.line import Line, words
from cards.wording.spans import MONTHS

_NAME = f"(?P<name>{'|'.join(MONTHS)})"
_YEAR_OF_IT = r"(?:(?: ,)? (?P<year>\d{4}))?"
_DATES = (
    words(r"=(?P<year>\d{4})(?P<month>\d{2})(?P<day>\d{2})="),
    words(rf"(?:the )?(?P<end>end|last day|close) of {_NAME}{_YEAR_OF_IT}"),
    words(rf"(?:the )?(?P<day>\d{{1,2}})(?:th)?(?: of)? {_NAME}{_YEAR_OF_IT}"),
    words(rf"{_NAME} (?:the )?(?P<day>\d{{1,2}})(?:th)?{_YEAR_OF_IT}"),
    words(rf"{_NAME}{_YEAR_OF_IT}"),
    re.compile(r"(?<!\S)(?P<day>\d{1,2})\.(?P<month>\d{1,2}) \.", re.ASCII),
)
"""Ways to write a date, the longer ones first; the last is read in figures, day before month."""
_MAY_BE = re.compile(r"(?<!\S)(i|we|you|it|he|she|they|who|what|which|that) may(?!\S)")
_SAT = re.compile(r"(?<!\S)sat(?: \.)?(?= (?:morning|afternoon|evening|night|lunch))")
_YEAR = words(r"((?:19|20|21)\d{2})")
_FEAST = words("|".join(FEASTS))
_WORKING = words(r"weekdays?|mondays? (?:to|through|until) fridays?")
_WEEKEND = words(r"weekends?")
_RELATIVE = words(r"(this|next) (day|week|month|year|quarter|spring|summer|autumn|winter)")
_ANY_YEAR = 2001


@dataclass(frozen=True, slots=True)
class Days:
    """What a line names of the calendar.

    Attributes:
        dates: month and day, the day 0 where the month alone is named; those of feasts that
            fall on the same day every year among them.
        years: those named.
        feasts: movable feasts and seasons by name, and "this year", "next week".
        weekdays: as RFC 5545 writes them.
    """

    dates: frozenset[tuple[int, int]]
    years: frozenset[int]
    feasts: frozenset[str]
    weekdays: frozenset[str]


def take_days(line: Line) -> Days:
    """Take the days of the calendar from a line."""
    line.left = _SAT.sub("saturday", _MAY_BE.sub(r"\1 might", line.left))
    dates, years = set[tuple[int, int]](), set[int]()
    for shape in _DATES:
        while found := line.take(shape):
            dates.add(_date(found))
            if year := found.groupdict().get("year"):
                years.add(int(year))
    while found := line.take(_YEAR):
        years.add(int(found[1]))
    feasts = set[str]()
    for shape in (_FEAST, _RELATIVE):
        while found := line.take(shape):
            if found[0] in FIXED:
                dates.add(FIXED[found[0]])
            else:
                feasts.add(found[0])
    return Days(frozenset(dates), frozenset(years), frozenset(feasts), _weekdays(line))


def _date(found: re.Match[str]) -> tuple[int, int]:
    said = found.groupdict()
    month = MONTHS.index(said["name"]) + 1 if said.get("name") else int(said["month"])
    if said.get("end"):
        return month, monthrange(_ANY_YEAR, month)[1]
    return month, int(said.get("day") or 0)


def _weekdays(line: Line) -> frozenset[str]:
    named = set[str]()
    for shape, days in (
        (_WORKING, WORKING_DAYS),
        (_WEEKEND, WEEKEND),
    ):
        while line.take(shape):
            named.update(days)
    return frozenset(named) | named_days(line.left)
