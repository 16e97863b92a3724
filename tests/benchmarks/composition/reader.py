"""A reader whose memory is not the scheduler's model of it.

How it differs from FSRS-6 with the published weights, which all the scheduler's side uses:

- **Forgetting curve.** A sum of three exponentials, of 35, 40 and 25 parts in a hundred, the
  second six and the third forty times as slow as the first, scaled so that recall is 0.9
  after one stability, as the model says too. Ten stabilities after an answer the model
  expects 0.69 and this reader recalls 0.52; after a hundred, 0.49 and 0.13. Two other curves
  can be had: a power of -0.5, and a stretched exponential.
- **Weights and form.** A success multiplies stability by
  1 + 26 ease S^-0.2 (e^(1 - R) - 1), and a lapse leaves 1.2 rest (S + 1)^0.25 e^(0.8 (1 - R))
  days at the most. There is no difficulty that moves with the grades.
- **Spread between items.** What reading left (2 days of stability in the middle), ease and
  rest are drawn for each item, log-normal with sigma 0.7, 0.5 and 0.4; the scheduler never
  sees them.
- **Noise.** Each gain is multiplied by a log-normal of sigma 0.3. Three recalled answers in
  a hundred are graded blank, six blank ones hazy; whether a recalled one is hazy, clear or
  vivid depends on recall, with a normal error of 0.2.
- **What was never asked** was read and digested: it starts with a memory on the day it is
  added, and forgets by the same curve. The scheduler has no memory of it before the first
  answer.

All chance is drawn beforehand by item and by the number of the answer, so that every policy
meets the same reader, item for item.
"""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from tests.benchmarks.composition.library import ADDED, ITEMS

Floats = NDArray[np.float64]
Rows = NDArray[np.int64]

LUCK = 96
"""Answers to one item whose chance is drawn; after so many it comes round again."""


def mixture(spans: Floats) -> Floats:
    """Return recall after so many stabilities: three stores that fade at their own rates."""
    faded = 0.2649 * spans
    return 0.35 * np.exp(-faded) + 0.40 * np.exp(-faded / 6) + 0.25 * np.exp(-faded / 40)


def power(spans: Floats) -> Floats:
    """Return recall after so many stabilities, falling by a power of -0.5."""
    return (1 + (0.9**-2 - 1) * spans) ** -0.5


def stretched(spans: Floats) -> Floats:
    """Return recall after so many stabilities: an exponential of their power of 0.6."""
    return 0.9 ** (spans**0.6)


CURVES = {"mixture": mixture, "power": power, "stretched": stretched}


@dataclass(frozen=True)
class Nature:
    """How readers differ: the curve, and the spread of what was read, of ease and of rest."""

    curve: str = "mixture"
    spread: tuple[float, float, float] = (0.7, 0.5, 0.4)


READERS = {
    "mixture": Nature(),
    "power": Nature("power"),
    "stretched": Nature("stretched"),
    "uneven": replace(Nature(), spread=(1.0, 0.9, 0.6)),
}


class Reader:
    """One reader: the true stability of every item, and when it was last met."""

    def __init__(self, nature: Nature, seed: int) -> None:
        chance = np.random.default_rng(seed)
        left, ease, rest = (np.exp(each * chance.standard_normal(ITEMS)) for each in nature.spread)
        self._curve = CURVES[nature.curve]
        self._ease, self._rest = ease, rest
        self._drawn = chance.random((ITEMS, LUCK, 2))
        self._error = chance.standard_normal((ITEMS, LUCK, 2))
        self._stability = 2.0 * left
        self._met = ADDED.astype(np.float64)
        self._answers = np.zeros(ITEMS, dtype=np.int64)

    def known(self, day: int) -> float:
        """Return how many of the items added by a day are known: true recall, summed."""
        rows = np.nonzero(day >= ADDED)[0]
        return float(self._recall(rows, day).sum())

    def ask(self, rows: Rows, day: int) -> NDArray[np.int64]:
        """Ask items on a day, each once, and return the grades: 0 blank to 3 vivid."""
        recalled, before = self._recall(rows, day), self._stability[rows]
        turn = self._answers[rows] % LUCK
        lot, slip = self._drawn[rows, turn].T
        error, luck = self._error[rows, turn].T
        came_back = lot < recalled
        gain = 26 * self._ease[rows] * before**-0.2 * (np.exp(1 - recalled) - 1)
        lapsed = 1.2 * self._rest[rows] * (before + 1) ** 0.25 * np.exp(0.8 * (1 - recalled))
        self._stability[rows] = np.where(
            came_back,
            before * (1 + gain * np.exp(0.3 * luck)),
            np.maximum(np.minimum(before, lapsed), 0.1),
        )
        self._met[rows] = day
        self._answers[rows] += 1
        strength = recalled + 0.2 * error
        held = np.where(strength < 0.6, 1, np.where(strength > 1.02, 3, 2))
        return np.where(came_back, np.where(slip < 0.03, 0, held), np.where(slip < 0.06, 1, 0))

    def _recall(self, rows: Rows, day: int) -> Floats:
        return self._curve((day - self._met[rows]) / self._stability[rows])
