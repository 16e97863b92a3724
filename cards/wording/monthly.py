"""Weekdays of the month: "on the first Saturday of each month"."""

import re

from cards.commitments.measure import Period
from cards.wording.cadence import PART, WEEKDAY, Cadence, byday, step_of
from cards.wording.line import Line, words
from cards.wording.spans import MONTHS

_NTH = r"(?:[1-5]th|last)"
_EACH = r"(?:each|every|a|per|the|any|that|this)"
_MONTHLY = words(
    rf"(?:on )?(?:(?P<lead>each|every) )?(?:the )?(?P<which>{_NTH}(?: {WEEKDAY})?(?:"
    rf"(?: ,)?(?: and| or) (?:the )?{_NTH}(?: {WEEKDAY})?)*)"
    rf"(?: (?P<day>{WEEKDAY})s?)?(?: {PART}s?)?(?: (?:of|in) (?P<of>{_EACH}|my|our)(?: calendar)?"
    rf"(?: (?P<step>other|[2-9]th|\d+))?(?: calendar)? (?P<unit>month|quarter|year)s?)?"
)
_WORKING_DAY = words(
    r"(?:on )?the (?:1th|last) weekday (?:of|in) (?:each|every|a) month"
    r"|on the (?:1th|last) weekday (?:of|in) the month"
)
"""A working day of the month; no weekday of it, which RFC 5545 could tell, is meant."""
_NAMED_DAY = re.compile(rf"(?P<which>{_NTH})(?: (?P<day>{WEEKDAY}))?")


def take_monthly(line: Line) -> Cadence | None:
    """Take weekdays of the month, quarter or year from a line; None without."""
    if line.take(_WORKING_DAY) is not None:
        return Cadence(Period.MONTH)
    for found in _MONTHLY.finditer(line.left):
        days = list(_NAMED_DAY.finditer(found["which"]))
        named = [each["day"] for each in days if each["day"]]
        common = found["day"] or (named[-1] if named else None)
        following = line.left[found.end() :].split()[:2]
        dated = (
            following[:1] in (["of"], ["in"])
            and following[1:2]
            and following[1] in {*MONTHS, "next", "the", "this", "lent", "advent"}
        )
        stepped = found["lead"] and not found["unit"] and re.match(r"[2-9]th", found["which"])
        if stepped and _LARGER.search(line.left) is None:
            continue
        if common is None or dated or found["of"] in {"this", "that"}:
            continue
        if (
            found["of"] == "the"
            and not found["lead"]
            and not _HABIT.search(line.left)
            and not found["unit"]
        ):
            continue
        left = f"{line.left[: found.start()]}~{line.left[found.end() :]}"
        unit, every = found["unit"], step_of(found)
        line.left = left
        other = _take_larger(line)
        if unit is None:
            unit, every = other or ("month", 1)
        on = frozenset(
            ("-1" if each["which"] == "last" else each["which"][0]) + byday(each["day"] or common)
            for each in days
        )
        months = 3 if unit == "quarter" else 1
        period = Period.YEAR if unit == "year" else Period.MONTH
        return Cadence(period, every * months, on)
    return None


_HABIT = words(r"each|every|monthly")
_LARGER = words(
    r"(?:once )?(?:(?:each|every|a|per)(?: (?P<step>other|[2-9]th|\d+))? "
    r"(?P<unit>month|quarter|year)s?|(?P<adverb>monthly|yearly))"
)


def _take_larger(line: Line) -> tuple[str, int] | None:
    found = line.take(_LARGER)
    if found is None:
        return None
    if found["adverb"]:
        return found["adverb"].removesuffix("ly"), 1
    return found["unit"], step_of(found)
