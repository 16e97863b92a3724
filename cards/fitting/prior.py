"""What is thought of a reader's weights before any answer of theirs, and where weights may lie.

Each weight is taken to lie around a centre as a Gaussian does, on a scale of its own: those
that multiply or are raised to, by their logarithm; the others as they are. A step of 1 in
what the fit searches is one spread of that weight, so that all directions are alike to it.
"""

from dataclasses import dataclass

import numpy as np

from cards.fitting.reviews import Floats
from cards.schedule import DEFAULT_WEIGHTS

LOWEST = np.array(
    [0.001] * 4
    + [1.0, 0.001, 0.001, 0.001, 0.0, 0.0, 0.001, 0.001, 0.001, 0.001]
    + [0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 0.1]
)
HIGHEST = np.array(
    [100.0] * 4
    + [10.0, 4.0, 4.0, 0.75, 4.5, 0.8, 3.5, 5.0, 0.25, 0.9]
    + [4.0, 1.0, 6.0, 2.0, 2.0, 0.8, 0.8]
)
"""Least and greatest of each weight: those the package `fsrs` 6.3 accepts."""

LOGARITHMIC = np.array([n not in {4, 7, 8, 17, 18} for n in range(21)])
"""Whether a weight is held by its logarithm."""

SPREAD = np.concatenate(
    (
        [1.0, 1.0, 1.0, 1.0],  # the stability after a first answer, by grade: a factor of e
        [1.0, 0.5, 0.5, 0.05],  # difficulty: its height, its fall, its steps, its drawing back
        [0.5, 0.4, 0.4],  # what a success adds
        [0.5, 0.5, 0.3, 0.3],  # what a blank leaves
        [0.3, 0.3],  # hazy and vivid
        [0.3, 0.1, 0.5],  # further answers of a day
        [0.4],  # how flat the forgetting curve is
    )
)
"""Spread of each weight around its centre, on its own scale: our own, no published source."""

LEAST_LOGARITHM = 1e-3
"""A weight held by its logarithm, and allowed to be 0, is let fall this low."""


@dataclass(frozen=True, slots=True, eq=False)
class Prior:
    """Weights as the fit searches them: in spreads from a centre.

    Attributes:
        centre: the 21 weights thought likeliest.
        strength: how much the prior counts; 1 takes the spreads at their word.
    """

    centre: Floats
    strength: float

    @classmethod
    def around(cls, centre: tuple[float, ...] = DEFAULT_WEIGHTS, strength: float = 1.0) -> "Prior":
        """Return the prior around weights; they are held to the published ranges."""
        return cls(np.clip(np.array(centre, np.float64), _least(), HIGHEST), strength)

    @property
    def bounds(self) -> tuple[Floats, Floats]:
        """Least and greatest of each, in spreads from the centre."""
        middle = _scaled(self.centre)
        return (_scaled(_least()) - middle) / SPREAD, (_scaled(HIGHEST) - middle) / SPREAD

    def weights(self, spreads: Floats) -> Floats:
        """Return the weights that lie so many spreads from the centre."""
        moved = _scaled(self.centre) + spreads * SPREAD
        weights = np.where(LOGARITHMIC, np.exp(np.where(LOGARITHMIC, moved, 0.0)), moved)
        return np.clip(weights, LOWEST, HIGHEST)

    def slopes(self, weights: Floats) -> Floats:
        """Return how each weight changes with its spreads."""
        return np.where(LOGARITHMIC, weights, 1.0) * SPREAD

    def penalty(self, spreads: Floats) -> tuple[float, Floats]:
        """Return the negative logarithm of the prior, up to a constant, and its derivative."""
        return self.strength * float(spreads @ spreads) / 2, self.strength * spreads


def _least() -> Floats:
    return np.where(LOGARITHMIC, np.maximum(LOWEST, LEAST_LOGARITHM), LOWEST)


def _scaled(weights: Floats) -> Floats:
    return np.where(LOGARITHMIC, np.log(np.where(LOGARITHMIC, weights, 1.0)), weights)
