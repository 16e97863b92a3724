"""Dates as readers write them, in the languages of the headings."""

import re
from dataclasses import dataclass, field
from datetime import date

from cards.intake.wording import folded

MAX_WRITTEN = 120
"""Characters of a line in which a date is looked for."""
_MONTHS = (
    "january jan januar janner janvier enero gennaio janeiro januari",
    "february feb februar fevrier fevr febrero febbraio fevereiro februari",
    "march mar marz maerz mars marzo marco maart",
    "april apr avril avr abril aprile",
    "may mai mayo maggio maio mei",
    "june jun juni juin junio giugno junho",
    "july jul juli juillet juil julio luglio julho",
    "august aug aout agosto augustus",
    "september sep sept septembre septiembre settembre setembro",
    "october oct oktober okt octobre octubre ottobre outubro",
    "november nov novembre noviembre novembro",
    "december dec dezember dez decembre diciembre dicembre dezembro",
)
_MONTH_OF = {name: number for number, names in enumerate(_MONTHS, 1) for name in names.split()}
_ISO = re.compile(r"(?<!\d)(\d{4})[-/.年]\s?(\d{1,2})[-/.月]\s?(\d{1,2})(?!\d)")
_NUMBERS = re.compile(r"(?<!\d)(\d{1,2})([./-])\s?(\d{1,2})\2\s?(\d{4})(?!\d)")
_YEAR = re.compile(r"(?<!\d)(\d{4})(?!\d)")
_ORDINAL = re.compile(r"(\d{1,2})(?:st|nd|rd|th|er|o|a|e)?")
_BETWEEN = frozenset({"of", "de", "the", "del", "di", "do", "den", "der", "le", "el", "il"})
_DAY_WORDS = (
    "first premier primero primo primeiro eerste ersten erster",
    "second deuxieme",
    "third",
    "fourth",
    "fifth",
    "sixth",
    "seventh",
    "eighth",
    "ninth",
    "tenth",
    "eleventh",
    "twelfth",
    "thirteenth",
    "fourteenth",
    "fifteenth",
    "sixteenth",
    "seventeenth",
    "eighteenth",
    "nineteenth",
    "twentieth",
)
_DAY_OF = {name: number for number, names in enumerate(_DAY_WORDS, 1) for name in names.split()}
_DAY_OF |= {"thirtieth": 30}
_TENS = {"twenty": 20, "thirty": 30}
_WORD = re.compile(r"[^\W_]+")
_SPAN = re.compile(r"\s*(?:[-–—]|\b(?:to|until|till|bis|au|al|tot)\b)\s*", re.IGNORECASE)
_MONTHS_A_YEAR = 12
_NEAR = 12
"""Characters, a weekday's, that may stand between the two ends of a span and its second date."""


@dataclass(frozen=True, slots=True)
class Written:
    """A date found in a text.

    Attributes:
        day: None where what is written leaves it open.
        start: where its words begin in the text.
        end: where they end.
    """

    day: date | None
    start: int = field(default=0, compare=False)
    end: int = field(default=0, compare=False)


def date_in(text: str, *, day_first: bool = False) -> Written | None:
    """Return the first date in a text, or None when it has none.

    A month or a year alone, and figures that could be read two ways (`3/4/2025`),
    leave the day open; the latter not where the text is in a language that writes the
    `day_first`.
    """
    text = text[:MAX_WRITTEN]
    if (found := _ISO.search(text)) is not None:
        return Written(_day(int(found[1]), int(found[2]), int(found[3])), *found.span())
    if (found := _NUMBERS.search(text)) is not None:
        sign = "." if day_first and int(found[3]) <= _MONTHS_A_YEAR else found[2]
        day = _from_figures(int(found[1]), int(found[3]), int(found[4]), sign)
        return Written(day, *found.span())
    return _from_words([(folded(word[0]), *word.span()) for word in _WORD.finditer(text)])


def last_day_in(text: str, *, day_first: bool = False) -> Written | None:
    """Return the first date in a text, or the second end of the span of days it opens."""
    first = date_in(text, day_first=day_first)
    span = _SPAN.match(text, first.end) if first is not None else None
    if span is None:
        return first
    second = date_in(text[span.end() :], day_first=day_first)
    if second is None or second.day is None or second.start > _NEAR:
        return first
    return Written(second.day, span.end() + second.start, span.end() + second.end)


def _from_figures(first: int, second: int, year: int, sign: str) -> date | None:
    if first > 12 or first == second or sign == ".":
        return _day(year, second, first)
    return _day(year, first, second) if second > 12 else None


def _from_words(words: list[tuple[str, int, int]]) -> Written | None:
    """Return the date in words that are given folded, each with where it stands."""
    names = [word for word, _, _ in words]
    for index, word in enumerate(names):
        if word not in _MONTH_OF:
            continue
        before = [i for i in range(max(0, index - 3), index) if names[i] not in _BETWEEN]
        after = list(range(index + 1, min(index + 5, len(names))))
        other = next((i for i in after if names[i] in _MONTH_OF), len(names))
        after = [i for i in after if i < other and names[i] not in _BETWEEN]
        year = next((i for i in after if _YEAR.fullmatch(names[i])), None)
        if year is None:
            continue
        at, day = index, _counted([names[i] for i in before])
        if day is not None:
            tens = len(before) > 1 and names[before[-2]] in _TENS and names[before[-1]] in _DAY_OF
            at = before[-2] if tens else before[-1]
        else:
            between = [names[i] for i in after if i < year]
            day = _counted(between[:2]) or _counted(between[:1])
        written = None if day is None else _day(int(names[year]), _MONTH_OF[word], day)
        return Written(written, words[at][1], words[year][2])
    year = next((i for i, word in enumerate(names) if _YEAR.fullmatch(word)), None)
    return None if year is None else Written(None, *words[year][1:])


def _counted(words: list[str]) -> int | None:
    """Return the day that the last of a few words give: `3`, `3rd`, `third`, `twenty-first`."""
    if not words:
        return None
    if (figures := _ORDINAL.fullmatch(words[-1])) is not None:
        return int(figures[1])
    day = _DAY_OF.get(words[-1])
    tens = _TENS.get(words[-2], 0) if len(words) > 1 else 0
    return day if day is None or day >= 10 else day + tens


def _day(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None
