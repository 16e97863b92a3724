"""A share of what was asked, with how sure it is, and what may be claimed of it."""

from dataclasses import dataclass
from enum import StrEnum

from cards.retention.tally import Tally
from cards.retention.wilson import wilson

ENOUGH = 50
"""Answers from which on a share may be called on target: 45 of 50 still spans .79 to .96.

Our own rule (reference, part 2)."""


class Verdict(StrEnum):
    """What a share says about a target."""

    ON_TARGET = "on target"
    TOO_FEW = "too few to say"
    BELOW = "below"
    ABOVE = "above"


@dataclass(frozen=True, slots=True)
class Share:
    """A share of what was asked that came back.

    Attributes:
        recalled, asked: answers.
    """

    recalled: int
    asked: int

    @property
    def share(self) -> float | None:
        """The share itself, 0 to 1; None where nothing was asked."""
        return self.recalled / self.asked if self.asked else None

    @property
    def bounds(self) -> tuple[float, float]:
        """The lower and the upper 95 % bound (Wilson 1927)."""
        return wilson(self.recalled, self.asked)

    @property
    def low(self) -> float:
        """The lower 95 % bound."""
        return self.bounds[0]

    @property
    def high(self) -> float:
        """The upper 95 % bound."""
        return self.bounds[1]

    def verdict(self, target: float) -> Verdict:
        """Return what may be claimed: below or above only where the bounds leave the target out.

        On target only where they hold it and `ENOUGH` was asked.
        """
        low, high = self.bounds
        if high < target:
            return Verdict.BELOW
        if low > target:
            return Verdict.ABOVE
        return Verdict.ON_TARGET if self.asked >= ENOUGH else Verdict.TOO_FEW

    def told(self, target: float) -> str:
        """Return the verdict as a sentence without its full stop."""
        match self.verdict(target):
            case Verdict.BELOW:
                return f"below the {target:.0%} aimed for"
            case Verdict.ABOVE:
                return f"above the {target:.0%} aimed for"
            case Verdict.ON_TARGET:
                return f"on target, {target:.0%}"
            case Verdict.TOO_FEW:
                return f"too few to say whether {target:.0%} is met"


def share_of(tally: Tally) -> Share:
    """Return the share of all answers of a tally."""
    return Share(tally.recalled, tally.n)
