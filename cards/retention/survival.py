"""How long items last until they first come back blank (Kaplan & Meier 1958)."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import exp, log, sqrt

from cards.retention.wilson import Z


@dataclass(frozen=True, slots=True)
class Step:
    """A day on which items first came back blank.

    Attributes:
        day: days from their first answer; 0 where that, or another on its day, was blank.
        at_risk: items that had not come back blank before and were answered then or later.
        blanks: how many of them did.
        lasting: the share of all items estimated to last beyond the day.
        low, high: its 95 % bounds, on the scale of ln(-ln) with Greenwood's variance (1926;
            Kalbfleisch & Prentice 1980, from memory), as lifelines has them by default.
    """

    day: int
    at_risk: int
    blanks: int
    lasting: float
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Survival:
    """The time to the first blank.

    Attributes:
        items: answered at least once.
        blanks: how many came back blank at least once.
        steps: the days on which any first did, in order; to 199 days exact, then to 1 %.
        until: the longest that any item has been followed, in days.
    """

    items: int
    blanks: int
    steps: tuple[Step, ...]
    until: int

    @property
    def median(self) -> int | None:
        """The first day beyond which at most half last, or None while more do."""
        return next((each.day for each in self.steps if each.lasting <= 0.5), None)

    @property
    def median_bounds(self) -> tuple[int | None, int | None]:
        """The 95 % bounds of the median (Brookmeyer & Crowley 1982, from memory); None: later."""
        early = next((each.day for each in self.steps if each.low <= 0.5), None)
        return early, next((each.day for each in self.steps if each.high <= 0.5), None)

    def lasting(self, day: int) -> float:
        """Return the share that lasts beyond a day."""
        return next((each.lasting for each in reversed(self.steps) if each.day <= day), 1.0)


def survival_of(lasted: Mapping[tuple[int, bool], int]) -> Survival:
    """Return the time to the first blank of items.

    Args:
        lasted: how many items lasted so many days, by those and whether a blank ended them.
            What was last answered on the very day another came back blank was at risk on it.
    """
    days = sorted({day for day, _ in lasted})
    items = at_risk = sum(lasted.values())
    lasting, variance = 1.0, 0.0
    steps: list[Step] = []
    for day in days:
        blanks = lasted.get((day, True), 0)
        if blanks:
            left = at_risk - blanks
            lasting *= left / at_risk
            if left:
                variance += blanks / (at_risk * left)
            steps.append(Step(day, at_risk, blanks, lasting, *_bounds(lasting, variance)))
        at_risk -= blanks + lasted.get((day, False), 0)
    gone = sum(each.blanks for each in steps)
    return Survival(items, gone, tuple(steps), days[-1] if days else 0)


def _bounds(lasting: float, variance: float) -> tuple[float, float]:
    """Return the bounds of a share that lasts; where nothing does, it has none."""
    if not lasting:
        return 0.0, 0.0
    reach = Z * sqrt(variance) / log(lasting)
    return exp(log(lasting) * exp(-reach)), exp(log(lasting) * exp(reach))
