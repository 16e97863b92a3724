"""What can be measured in a commitment: how much, how often, when; told in any words."""

import re
from collections.abc import Iterable
from dataclasses import dataclass

from cards.kinds.calendar_days import Days, take_days
from cards.kinds.hours import Hour, take_hours, with_hours
from cards.wording.line import Line, words
from cards.wording.spans import DAYS

_MONEY = re.compile(r"([£$€])\s?(\d[\d,.]*)")
_PER_CENT = re.compile(r"\bper cent\b", re.IGNORECASE)
_WORKING_WEEK = re.compile(r"\bmon(?:day)?s?\s?[-–]\s?fri(?:day)?s?\b", re.IGNORECASE)
_CURRENCY = {"£": "pounds", "$": "dollars", "€": "euros"}
_TIME = {"minute": 1, "min": 1, "hour": 60, "hr": 60, "day": 1440, "night": 1440, "week": 10080}
_LONG_TIME = {"month": 1, "quarter": 3, "year": 12}
_MEASURES = frozenset(
    """page chapter line word verse paragraph section mile kilometre km metre step pound dollar
    euro penny cup glass drink cigarette percent time""".split()
)
"""Units that cannot stand for each other; other things counted may be named in other words."""
_SAME = {"kilometer": "kilometre", "km": "kilometre", "meter": "metre", "occasion": "time"}
_SPAN = r"(?:day|night|week|month|quarter|year|hour|morning|evening|afternoon|meeting|meal|session)"
_PER = words(rf"(?:a|an|per|each|every|in a|1 a|/)(?: single| calendar)? ({_SPAN})")
_STEP = words(
    rf"(?:(?:each|every) (\d+(?:th)?|other|alternate)|(alternate)) ({_SPAN}|{'|'.join(DAYS)})s?"
)
_ADVERB = words(r"(hourly|daily|nightly|weekly|monthly|quarterly|yearly)")
_PERIOD = {
    **dict.fromkeys(("daily", "nightly", "morning", "evening", "afternoon", "night"), "day"),
    "hourly": "hour",
    "weekly": "week",
    "monthly": "month",
    "quarterly": "quarter",
    "yearly": "year",
}
_HALF = words(r"half (?:an? )?(hour|year|page|day)(?: and a half)?|an? (hour) and a half")
_ORDINAL = words(
    r"(\d{1,2})th|(last)(?= (?:day|evening|morning|night|week|friday|saturday"
    r"|sunday|monday|tuesday|wednesday|thursday|of))"
)
_FILLERS = r"(?:whole |full |entire |good |solid |more |consecutive |of |or more |x |different )*"
_NUMBER = re.compile(
    rf"(?<!\S)(\d+(?:[.,]\d+)*)(?: (thousand|million))? {_FILLERS}(?=(\D\S*)(?: (\D\S*))?)"
)
_BARE = re.compile(r"(?<!\S)(\d+(?:[.,]\d+)*)(?!\S)")
_FOR_ONE = words(rf"(?:for|within|during|in|over|inside) an? (?:whole |full |entire )?({_SPAN})")
_AN_HOUR = re.compile(r"(?<!\S)(?<!times )(?<!once )(?<! x )an (hour)(?! and a half)(?!\S)")
_THOUSANDS = re.compile(r"\d{1,3}(?:,\d{3})+(?:\.\d+)?")
_TIMES_OVER = {"thousand": 1_000, "million": 1_000_000}
_NO_THING = frozenset(
    """of a an the in on at by to for from with and or but who whom that which i we my our your
    is was are will each every per until when after before not another . , ; : ~ ( ) ! ?""".split()
)


@dataclass(frozen=True, slots=True)
class Amount:
    """So many of something.

    Attributes:
        number: how many; of a span of time how many minutes, or months.
        unit: "minutes", "months", a unit of measure, or "" for things.
        things: the words that follow the number, whatever they name.
    """

    number: float
    unit: str = ""
    things: tuple[str, ...] = ()

    def same(self, other: "Amount") -> bool:
        """Tell whether another amount is this one; things may be named in other words."""
        if self.number != other.number:
            return False
        return self.unit == other.unit or "" in (self.unit, other.unit)


@dataclass(frozen=True, slots=True)
class Measurable:
    """All of a text that can be measured.

    Attributes:
        amounts: numbers of things, spans of time; 1 where "one" or a span is told.
        periods: in which something recurs: "day", "week", "2 weeks".
        ordinals: "the first Monday" is 1, "the last evening" -1.
        hours: times of the clock.
        days: of the calendar.
        line: the plain words of the text.
        left: what of them is left once all of it is taken.
    """

    amounts: tuple[Amount, ...]
    periods: frozenset[str]
    ordinals: frozenset[int]
    hours: frozenset[Hour]
    days: Days
    line: str
    left: str


def measurable(text: str) -> Measurable:
    """Read what can be measured in a text, in its first 2,000 characters."""
    line = Line(with_hours(_spelt_out(text)))
    hours = take_hours(line)
    days = take_days(line)
    spans = tuple(_spans(line))
    periods = frozenset(_periods(line))
    ordinals = set[int]()
    while found := line.take(_ORDINAL):
        ordinals.add(int(found[1]) if found[1] else -1)
    amounts = (*spans, *_counted(line))
    return Measurable(amounts, periods, frozenset(ordinals), hours, days, line.whole, line.left)


def _spelt_out(text: str) -> str:
    """Write signs as the words a line keeps: "£40", "ten per cent", "Mon-Fri"."""
    priced = _MONEY.sub(lambda found: f"{found[2]} {_CURRENCY[found[1]]}", text)
    return _WORKING_WEEK.sub("weekdays", _PER_CENT.sub("percent", priced))


def _periods(line: Line) -> Iterable[str]:
    while found := line.take(_STEP):
        said = found[1] or found[2]
        step = "2" if said in ("other", "alternate") else said.removesuffix("th")
        yield f"{step} {'week' if found[3] in DAYS else found[3]}s"
    for shape in (_PER, _ADVERB):
        while found := line.take(shape):
            yield _PERIOD.get(found[1], found[1])


def _spans(line: Line) -> Iterable[Amount]:
    while found := line.take(_HALF):
        yield _amount(0.5 if found[1] else 1.5, found[1] or found[2])
    for shape in (_FOR_ONE, _AN_HOUR):
        while found := line.take(shape):
            yield _amount(1, found[1])


def _counted(line: Line) -> Iterable[Amount]:
    left = line.left
    for found in _NUMBER.finditer(left):
        number = _value(found[1]) * _TIMES_OVER.get(found[2] or "", 1)
        yield _amount(number, *(each for each in found.groups()[2:] if each))
    line.left = _BARE.sub("~", left)


def _amount(number: float, *following: str) -> Amount:
    things = tuple(singular(word) for word in following if word not in _NO_THING)
    if not things or following[0] in _NO_THING:
        return Amount(number)
    for thing in things:
        if thing in _TIME:
            return Amount(number * _TIME[thing], "minutes")
        if thing in _LONG_TIME:
            return Amount(number * _LONG_TIME[thing], "months")
        if thing in _MEASURES or thing in _SAME:
            return Amount(number, _SAME.get(thing, thing), things)
    return Amount(number, "", things)


def singular(word: str) -> str:
    """Return a word without the ending of a plural."""
    if word.endswith("ies"):
        return f"{word[:-3]}y"
    return word[:-1] if word.endswith("s") and not word.endswith("ss") else word


def _value(number: str) -> float:
    return float(number.replace(",", "" if _THOUSANDS.fullmatch(number) else "."))
