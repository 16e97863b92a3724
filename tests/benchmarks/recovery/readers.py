"""Readers whose memory is known, to see whether a fit finds it out.

One remembers exactly as the published default weights say, one as FSRS-6 with other weights
says, drawn anew for every seed, and one by another model altogether: forgetting is
exponential, each item has a hardness of its own, and what an answer adds follows another
rule. The formulas of FSRS-6 are those of `cards.sitting`, not of the fit that is judged here.
"""

from dataclasses import dataclass
from typing import Protocol

import numpy as np
from numpy.random import Generator
from numpy.typing import NDArray

from cards.schedule import DEFAULT_WEIGHTS
from cards.sitting.memory import LEAST_STABILITY
from cards.sitting.worth_memory import answered, first, recall

Floats = NDArray[np.float64]
Grades = NDArray[np.int8]


class Remembering(Protocol):
    """How the memory of many items goes on, all at once; each keeps its own state."""

    def begin(self, grades: Grades) -> None:
        """Take the first answers to all items."""

    def recall(self, at: NDArray[np.intp], elapsed: Floats) -> Floats:
        """Return the chance that items come back so many days after their last answers."""

    def answer(self, at: NDArray[np.intp], elapsed: Floats, grades: Grades) -> None:
        """Take one more answer to some items, each so many days after its last."""


@dataclass
class ByWeights:
    """As FSRS-6 with weights of its own has it."""

    weights: tuple[float, ...]

    def begin(self, grades: Grades) -> None:
        """Take the first answers to all items."""
        stability, difficulty = first(self.weights)
        self.stability, self.difficulty = stability[grades], difficulty[grades]

    def recall(self, at: NDArray[np.intp], elapsed: Floats) -> Floats:
        """Return the chance that items come back so many days after their last answers."""
        return recall(self.stability[at], elapsed, self.weights)

    def answer(self, at: NDArray[np.intp], elapsed: Floats, grades: Grades) -> None:
        """Take one more answer to some items, each so many days after its last."""
        w, s, d = self.weights, self.stability[at], self.difficulty[at]
        by_grade = [answered(s, d, self.recall(at, elapsed), grade, w) for grade in range(4)]
        after = np.choose(grades, [stability for stability, _ in by_grade])
        again = np.exp(w[17] * (grades - 2 + w[18])) * s ** -w[19]
        again = np.where(grades > 0, np.maximum(again, 1), again)
        self.stability[at] = np.maximum(np.where(elapsed >= 1, after, s * again), LEAST_STABILITY)
        self.difficulty[at] = np.choose(grades, [difficulty for _, difficulty in by_grade])


@dataclass
class Exponential:
    """Another memory: recall is exp(-t/life), and an answer shortly before forgetting adds most.

    Attributes:
        hardness: of each item, around 1.
        growth: by how much a life grows at most.
    """

    hardness: Floats
    growth: float

    def begin(self, grades: Grades) -> None:
        """Take the first answers to all items."""
        self.life = np.array([2.0, 8.0, 20.0, 60.0])[grades] / self.hardness

    def recall(self, at: NDArray[np.intp], elapsed: Floats) -> Floats:
        """Return the chance that items come back so many days after their last answers."""
        return np.exp(-elapsed / self.life[at])

    def answer(self, at: NDArray[np.intp], elapsed: Floats, grades: Grades) -> None:
        """Take one more answer to some items, each so many days after its last."""
        life = self.life[at]
        gained = 1 - self.recall(at, elapsed)
        effort = np.array([0.0, 0.7, 1.0, 1.5])[grades]
        longer = life * (1 + self.growth * effort * np.sqrt(gained) / self.hardness[at])
        shorter = np.minimum(life, 1.5 + 0.5 * np.sqrt(life))
        again = np.where(grades > 0, life * 1.1, life)
        self.life[at] = np.where(elapsed >= 1, np.where(grades > 0, longer, shorter), again)


def as_published(_: Generator, __: int) -> Remembering:
    """Return a reader exactly like the published defaults."""
    return ByWeights(DEFAULT_WEIGHTS)


def other_weights(chance: Generator, _: int) -> Remembering:
    """Return a reader of FSRS-6 with other weights: each some half more or less than published."""
    factors = np.exp(chance.normal(0, 0.4, 21))
    factors[:4] *= np.exp(chance.normal(0, 0.5))
    w = np.array(DEFAULT_WEIGHTS) * factors
    w[4] = np.clip(DEFAULT_WEIGHTS[4] + chance.normal(), 2, 9)
    w[7] = chance.uniform(0.001, 0.1)
    w[8] = DEFAULT_WEIGHTS[8] + chance.normal(0, 0.4)
    w[:4] = np.sort(w[:4])
    highest = np.array(
        [100] * 4 + [10, 4, 4, 0.75, 4.5, 0.8, 3.5, 5, 0.25, 0.9, 4, 1, 6, 2, 2, 0.8, 0.8]
    )
    w = np.minimum(w, highest)
    w[16], w[20] = max(w[16], 1), max(w[20], 0.1)
    return ByWeights(tuple(map(float, w)))


def other_memory(chance: Generator, items: int) -> Remembering:
    """Return a reader by another model altogether."""
    return Exponential(np.exp(chance.normal(0, 0.3, items)), chance.uniform(2.0, 6.0))


READERS = {
    "as published": as_published,
    "other weights": other_weights,
    "other memory": other_memory,
}
