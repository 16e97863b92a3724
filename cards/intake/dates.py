"""Dates as readers write them, in the languages of the headings."""

import re
from dataclasses import dataclass
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
_ISO = re.compile(r"(?<!\d)(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?!\d)")
_NUMBERS = re.compile(r"(?<!\d)(\d{1,2})([./-])\s?(\d{1,2})\2\s?(\d{4})(?!\d)")
_YEAR = re.compile(r"(?<!\d)(\d{4})(?!\d)")
_ORDINAL = re.compile(r"(\d{1,2})(?:st|nd|rd|th|er|o|a|e)?")
_BETWEEN = frozenset({"of", "de", "the", "del", "di", "do"})


@dataclass(frozen=True, slots=True)
class Written:
    """A date found in a text; `day` is None where what is written leaves it open."""

    day: date | None


def date_in(text: str) -> Written | None:
    """Return the first date in a text, or None when it has none.

    A month or a year alone, and figures that could be read two ways (`3/4/2025`),
    leave the day open.
    """
    text = text[:MAX_WRITTEN]
    if (found := _ISO.search(text)) is not None:
        return Written(_day(int(found[1]), int(found[2]), int(found[3])))
    if (found := _NUMBERS.search(text)) is not None:
        return Written(_from_figures(int(found[1]), int(found[3]), int(found[4]), found[2]))
    return _from_words(folded(text).split())


def _from_figures(first: int, second: int, year: int, sign: str) -> date | None:
    if first > 12 or first == second or sign == ".":
        return _day(year, second, first)
    return _day(year, first, second) if second > 12 else None


def _from_words(words: list[str]) -> Written | None:
    for index, word in enumerate(words):
        if word not in _MONTH_OF:
            continue
        before = [w for w in words[max(0, index - 2) : index] if w not in _BETWEEN]
        after = [w for w in words[index + 1 : index + 4] if w not in _BETWEEN]
        year = next((int(w) for w in after if _YEAR.fullmatch(w)), None)
        if year is None:
            continue
        day = _ORDINAL.fullmatch(before[-1]) if before else None
        if day is None and after and not _YEAR.fullmatch(after[0]):
            day = _ORDINAL.fullmatch(after[0])
        return Written(None if day is None else _day(year, _MONTH_OF[word], int(day[1])))
    return Written(None) if any(_YEAR.fullmatch(word) for word in words) else None


def _day(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None
