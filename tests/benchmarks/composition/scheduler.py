"""What every policy may know: the grades, and the memory that FSRS-6 folds from them."""

import numpy as np
from numpy.typing import NDArray

from cards.schedule import DEFAULT_WEIGHTS
from cards.sitting.worth_memory import answered, curve, first, recall
from tests.benchmarks.composition.library import ADDED, ITEMS

Rows = NDArray[np.int64]
Floats = NDArray[np.float64]


class Scheduler:
    """The memories, under the published weights, of the items added so far.

    Attributes:
        day: the reader's day.
        seconds: what asking each item takes.
        stability, difficulty: by item; not a number before the first answer.
        last: the day of the last answer, -1 before the first.
        grade: the last one, -1 before the first.
    """

    def __init__(self, seconds: Floats) -> None:
        self.day = 0
        self.seconds = seconds
        self.stability = np.full(ITEMS, np.nan)
        self.difficulty = np.full(ITEMS, np.nan)
        self.last = np.full(ITEMS, -1)
        self.grade = np.full(ITEMS, -1)

    def unasked(self) -> Rows:
        """Return the items not asked yet, the earliest added first."""
        return np.nonzero(self.last[: self._added()] < 0)[0]

    def asked(self) -> Rows:
        """Return the items asked before today."""
        last = self.last[: self._added()]
        return np.nonzero((last >= 0) & (last < self.day))[0]

    def waited(self, rows: Rows) -> Floats:
        """Return the days since the last answer."""
        return (self.day - self.last[rows]).astype(np.float64)

    def recall(self, rows: Rows) -> Floats:
        """Return the recall that the model expects today."""
        return recall(self.stability[rows], self.waited(rows), DEFAULT_WEIGHTS)

    def due(self, rows: Rows, target: float) -> Floats:
        """Return the day on which each is due: its interval in whole days, one at the least."""
        decay, factor = curve(DEFAULT_WEIGHTS)
        exact = self.stability[rows] / factor * (target ** (1 / decay) - 1)
        return self.last[rows] + np.maximum(np.rint(exact), 1)

    def record(self, rows: Rows, grades: NDArray[np.int64]) -> None:
        """Fold answers given today into the memories."""
        stability, difficulty = first(DEFAULT_WEIGHTS)
        recalled = self.recall(rows)
        for grade in range(4):
            alike = grades == grade
            new, old = (rows[alike & each] for each in (self.last[rows] < 0, self.last[rows] >= 0))
            after = answered(
                self.stability[old],
                self.difficulty[old],
                recalled[alike & (self.last[rows] >= 0)],
                grade,
                DEFAULT_WEIGHTS,
            )
            self.stability[new], self.difficulty[new] = stability[grade], difficulty[grade]
            self.stability[old], self.difficulty[old] = after
        self.last[rows] = self.day
        self.grade[rows] = grades

    def _added(self) -> int:
        return int(np.searchsorted(ADDED, self.day, side="right"))
