"""What a situation says of its own coming: "when I lock the shop every evening"."""

from datetime import date

from cards.wording.bare_days import take_days
from cards.wording.cadence import WEEKDAY, Cadence
from cards.wording.cadences import take_cadence
from cards.wording.dates import DATE
from cards.wording.line import GAP, Line, words

_PART = r"(?:morning|evening|night|afternoon)"
_CONDITION = ("if ", "in case ")
_RECURS = words(
    rf"(?P<last>(?:(?:on )?(?:each|every) (?!time|1(?: |$))[^,;:]{{2,60}}"
    rf"|on {WEEKDAY}s(?: {_PART}s?)?|on {WEEKDAY} {_PART}s))"
)
_FALLS = words(
    r"(?P<last>(?:(?:on|at|in) (?!(?:the |this |next )?(?:spring|summer|autumn|winter)(?!\S))"
    rf"|(?=this |next |tomorrow|tonight))(?P<date>{DATE}))"
)


def cadence_of_clause(
    words_of_cue: str, on: date
) -> tuple[Cadence | None, list[tuple[date, date, bool]]]:
    """Return the cadence or the day a "when ..." clause ends with.

    What may never come ("if it rains on Friday") has neither, nor has a clause that only
    begins with one.
    """
    line = Line(words_of_cue)
    if line.whole.startswith(_CONDITION):
        return None, []
    for found in _RECURS.finditer(line.whole):
        last = Line(found["last"])
        cadence = take_cadence(last)
        if cadence is not None and found.end() == len(line.whole) and last.left.strip() == GAP:
            return cadence, []
    for found in _FALLS.finditer(line.whole):
        if found.end() == len(line.whole):
            return None, take_days(Line(found["last"]), on)
    return None, []
