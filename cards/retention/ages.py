"""The age of a memory: days since the item's answer before, in fine bins and readable classes."""

from bisect import bisect_right
from dataclasses import dataclass

OLDEST = 36_500
"""Days from which ages are told apart no longer: the schedule's longest interval."""


@dataclass(frozen=True, slots=True)
class AgeClass:
    """A readable class of ages.

    Attributes:
        first, last: the days it reaches from and to; `last` is None where it is open.
        words: as a reader would say it.
    """

    first: int
    last: int | None
    words: str


CLASSES = (
    AgeClass(1, 1, "1 day"),
    AgeClass(2, 3, "2 to 3 days"),
    AgeClass(4, 7, "4 to 7 days"),
    AgeClass(8, 14, "8 to 14 days"),
    AgeClass(15, 30, "15 to 30 days"),
    AgeClass(31, 90, "31 to 90 days"),
    AgeClass(91, 180, "91 to 180 days"),
    AgeClass(181, 365, "181 days to a year"),
    AgeClass(366, 730, "over a year"),
    AgeClass(731, None, "over two years"),
)
"""Each about twice as old as the one before, since forgetting slows (Ebbinghaus 1885)."""


def _bounds(one_in: int, edges: tuple[int, ...]) -> tuple[int, ...]:
    """Return where bins begin that are no wider than one in so many of their days."""
    bounds = [0]
    while bounds[-1] < OLDEST:
        last = bounds[-1]
        wide = last + max(1, last // one_in)
        bounds.append(min([wide, *(edge for edge in edges if last < edge < wide)]))
    return tuple(bounds)


_FINE = _bounds(20, (*(each.first for each in CLASSES), OLDEST))
_FINER = _bounds(100, (OLDEST,))


def age_bin(days: int) -> int:
    """Return the first day of the bin of an age.

    Exact to 39 days, then to 5 %, so that a reader of many years has some 180 bins; every class
    begins where a bin does.
    """
    return days if days < 40 else _FINE[bisect_right(_FINE, days) - 1]


def age_within(first: int) -> float:
    """Return the age that stands for a bin, in days: its middle."""
    place = bisect_right(_FINE, first)
    return (first + _FINE[place] - 1) / 2 if place < len(_FINE) else float(first)


def survival_bin(days: int) -> int:
    """Return the first day of the bin of a time to the first blank: exact to 199, then to 1 %."""
    return days if days < 200 else _FINER[bisect_right(_FINER, days) - 1]


def class_of(days: int) -> AgeClass:
    """Return the readable class of an age of a day or more."""
    return next(each for each in reversed(CLASSES) if each.first <= days)
