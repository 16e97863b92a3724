"""Times of the clock in a line of plain words: "at 7", "noon", "half past six"."""

import re
from dataclasses import dataclass

from cards.wording.line import Line, words

_WRITTEN = re.compile(
    r"(?<![\w:.,])(?:at )?(\d{1,2})(?:[:.](\d{2}))?\s?([ap])\.?m\b\.?"
    r"|(?<![\w:.,])(\d{1,2}):(\d{2})(?!\d)",
    re.ASCII | re.IGNORECASE,
)
_POINTED = re.compile(
    r"\b((?:at|by|before|after|from|until|till|around|about) )(\d{1,2})\.(00|1[3-9]|[2-5]\d)"
    r"(?=\s*(?:[,;:!?)]|\.(?!\d)|$|\b(?:on|every|each|in|and|until|for|from|to|the|sharp)\b))",
    re.ASCII | re.IGNORECASE,
)
"""An hour written with a point, "by 7.30"; minutes that may be a month are left to the dates."""
_AT = r"(?:at|by|before|after|from|until|around|about)"
_STANDS_ALONE = (
    r"(?= (?:[.,;:!?()~]|in|on|every|each|sharp|i|we|daily|of|and|the|until|for|from|to|with|at"
    r"|when|this|that|before|after|go|tomorrow|tonight|today|precisely|exactly|\S+day|\S+days)"
    r"(?!\S)|$)"
)
_PAST = words(r"(?:at )?(half|quarter|a quarter|\d{1,2} minutes|\d{1,2}) (past|to) (\d{1,2})")
_TOLD = words(
    rf"(?:{_AT} )?(\d{{1,2}}) oclock(?: (\d{{2}})(?! \w+s))?( (?:fore|after)midday)?"
    rf"|{_AT} (\d{{1,2}})(?!\S){_STANDS_ALONE}"
)
_NAMED = words(r"(noon|midday|midnight|12 noon)")
_HALVES = {"a": "foremidday", "p": "aftermidday"}
"""Words a line keeps, where it would take "7 a.m." for one time of the clock like any other."""
_HALF_A_DAY = 12 * 60
_OF_AN_HOUR = {"half": 30, "quarter": 15, "a quarter": 15}


@dataclass(frozen=True, slots=True)
class Hour:
    """A time of the clock.

    Attributes:
        minutes: from noon or midnight: 7:30 is 450.
        late: whether it is after noon; None where that is not said.
    """

    minutes: int
    late: bool | None = None

    def same(self, other: "Hour") -> bool:
        """Tell whether two may be one; which half of the day need be said by one alone."""
        return self.minutes == other.minutes and (
            None in (self.late, other.late) or self.late == other.late
        )


def with_hours(text: str) -> str:
    """Write "7 a.m." and "7:30" as hours of the clock that a line of plain words keeps."""
    return _WRITTEN.sub(_as_told, _POINTED.sub(r"\1\2:\3", text))


def _as_told(found: re.Match[str]) -> str:
    hour, minute = found[1] or found[4], found[2] or found[5]
    half = _HALVES[found[3].lower()] if found[3] else ""
    return f" {hour} oclock {minute or ''} {half} "


def take_hours(line: Line) -> frozenset[Hour]:
    """Take the times of the clock from a line."""
    hours: set[Hour] = set()
    while found := line.take(_PAST):
        off = _OF_AN_HOUR.get(found[1]) or int(found[1].split()[0])
        hours.add(_hour(int(found[3]) * 60 + (off if found[2] == "past" else -off), ""))
    while found := line.take(_NAMED):
        hours.add(Hour(0, late=found[1] != "midnight"))
    while found := line.take(_TOLD):
        hours.add(_hour(int(found[1] or found[4]) * 60 + int(found[2] or 0), found[3] or ""))
    return frozenset(hours)


def _hour(minutes: int, half: str) -> Hour:
    late = True if minutes > _HALF_A_DAY else None
    if half:
        late = half.strip() == _HALVES["p"]
    return Hour(minutes % _HALF_A_DAY, late)
