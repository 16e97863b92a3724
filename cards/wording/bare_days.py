"""Days named without more ado: "on Friday", "3 May", "the next time"."""

import re
from datetime import date

from cards.wording.cadence import WEEKDAY
from cards.wording.dates import DATE, day_or_span
from cards.wording.line import GAP, Line, words

_BARE = words(
    r"(?P<lead>on|in|at|come|over|some ?time|some day|any day|late|early)?"
    rf"(?P<sp> )?(?P<late>late |early |any time |some time )?(?P<date>{DATE})"
)
_NEXT_TIME = words(r"(?:on )?(?:the )?next (?:(?P<n>\d{1,3}) times|time)")
BARE_DAY = re.compile(
    rf"(?:(?:the |this |next |coming |following )*{WEEKDAY}(?: \w+)?|the \d{{1,2}}th)"
)
"""Pattern of a bare weekday or day of the month, the next one."""


def take_days(line: Line, on: date) -> list[tuple[date, date, bool]]:
    """Take the bare dates of a line: first and last day of each, and whether it is a weekday."""
    spans: list[tuple[date, date, bool]] = []
    for _ in range(6):
        taken = None
        for found in _BARE.finditer(line.left):
            phrase = found["date"]
            if not found["lead"] and re.fullmatch(
                r"may|march|spring|now|fall|\d{4}|the (?:week|day|month|year|quarter|weekend"
                r"|spring|winter|summer|autumn)|(?:my|our) \w+",
                phrase,
            ):
                continue
            if phrase == "now" or (found["lead"] == "at" and re.fullmatch(r"\d{4}", phrase)):
                continue
            span = day_or_span(phrase, on)
            if span is not None:
                taken = found
                spans.append((*span, bool(BARE_DAY.fullmatch(phrase))))
                break
        if taken is None:
            return spans
        line.left = f"{line.left[: taken.start()]}{GAP}{line.left[taken.end() :]}"
    return spans


def take_next_times(line: Line) -> int | None:
    """Take "the next time", "the next three times" from a line; None without."""
    found = line.take(_NEXT_TIME)
    return None if found is None else int(found["n"] or 1)
