"""A cadence: how often, before terms and counts; and the weekdays it names."""

import re
from dataclasses import dataclass

from cards.commitments.measure import WEEKDAYS, Period
from cards.wording.spans import DAYS


@dataclass(frozen=True, slots=True)
class Cadence:
    """How often something is to be done, before terms and counts.

    Attributes:
        period: the span it is told in.
        every: how many spans make a period.
        on: BYDAY values, not yet in order.
        times: deeds in a period when the words say so ("twice", "three evenings"), or None.
        implied: whether nothing but a habit of the day (waking, dinner) says it.
    """

    period: Period
    every: int = 1
    on: frozenset[str] = frozenset()
    times: int | None = None
    implied: bool = False


WEEKDAY = "(?:" + "|".join(DAYS) + ")"
"""Pattern of the name of a weekday."""
PART = r"(?:morning|evening|night|afternoon|lunchtime|lunch time|noon|teatime|bedtime|midday)"
"""Pattern of a part of the day that is told with a weekday."""
_JOIN = r"(?: ,)?(?: and| or| &)?(?: on)?(?: (?:every|each|the|a))?"
WEEKDAY_LIST = rf"{WEEKDAY}s?(?: {PART}s?)?(?:{_JOIN} {WEEKDAY}s?(?: {PART}s?)?)*"
"""Pattern of weekdays side by side: "monday and thursday nights"."""
_WEEKDAY = re.compile(rf"(?<!\S)({'|'.join(DAYS)})s?(?!\S)")


def byday(name: str) -> str:
    """Return a weekday as RFC 5545 writes it."""
    return WEEKDAYS[DAYS.index(name)]


def named_days(text: str) -> frozenset[str]:
    """Return the weekdays a stretch of a line names, as RFC 5545 writes them."""
    return frozenset(byday(name) for name in _WEEKDAY.findall(text))


def step_of(found: re.Match[str]) -> int:
    """Return 2 for "other", 3 for "third" or "3"; 1 where no step is told."""
    step = found.groupdict().get("step")
    if step is None:
        return 1
    if step in {"other", "alternate", "couple of"}:
        return 2
    return max(1, int(step.removesuffix("th")))
