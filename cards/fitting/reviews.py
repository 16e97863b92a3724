"""Answers as columns: what a fit is told."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from cards.kinds.base import KindName

KINDS = tuple(KindName)
"""The kinds in the order that `Reviews.kinds` counts them by."""

Floats = NDArray[np.float64]
Whole = NDArray[np.int64]


@dataclass(frozen=True, slots=True, eq=False)
class Reviews:
    """Answers as columns, a row an answer: the items one after another, each as it happened.

    Attributes:
        items: a number for the item of each row; the rows of one item stand together.
        kinds: the number of the item's kind in `KINDS`.
        days: the ordinal of the reader's day; never falls within an item.
        grades: 0 to 3, from blank to vivid.

    Raises:
        ValueError: the columns differ in length, the rows of an item stand apart, its days
            fall, its kind changes, or a grade or a kind is outside its range.
    """

    items: Whole
    kinds: NDArray[np.int8]
    days: Whole
    grades: NDArray[np.int8]

    def __post_init__(self) -> None:
        columns = (self.items, self.kinds, self.days, self.grades)
        if any(column.shape != (len(self.items),) for column in columns):
            raise ValueError("every column of the reviews has one value an answer")
        if not _within(self.grades, 4) or not _within(self.kinds, len(KINDS)):
            raise ValueError("a grade or a kind of the reviews is outside its range")
        same = self.items[1:] == self.items[:-1]
        if len(np.unique(self.items)) != np.count_nonzero(~same) + bool(len(self.items)):
            raise ValueError("the rows of one item stand together")
        if np.any(same & (self.days[1:] < self.days[:-1])):
            raise ValueError("the days of one item never fall")
        if np.any(same & (self.kinds[1:] != self.kinds[:-1])):
            raise ValueError("an item has one kind")

    @classmethod
    def of(
        cls,
        items: Sequence[int],
        kinds: Sequence[int],
        days: Sequence[int],
        grades: Sequence[int],
    ) -> "Reviews":
        """Return the reviews of plain columns; they are checked as the class says."""
        return cls(
            np.asarray(items, dtype=np.int64),
            np.asarray(kinds, dtype=np.int8),
            np.asarray(days, dtype=np.int64),
            np.asarray(grades, dtype=np.int8),
        )

    def __len__(self) -> int:
        return len(self.items)

    @property
    def first(self) -> NDArray[np.bool_]:
        """Whether each row is the first answer to its item."""
        return np.concatenate(([True], self.items[1:] != self.items[:-1]))[: len(self)]

    @property
    def elapsed(self) -> Whole:
        """Whole reader's days since the item's previous answer; 0 for its first."""
        since = np.diff(self.days, prepend=self.days[:1])
        return np.where(self.first, 0, since)

    @property
    def scored(self) -> NDArray[np.bool_]:
        """Whether each row tells of forgetting: a day or more after the one before."""
        return self.elapsed >= 1

    @property
    def came_back(self) -> NDArray[np.bool_]:
        """Whether each answer came back: its grade is not blank."""
        return self.grades > 0

    def only(self, rows: NDArray[np.bool_]) -> "Reviews":
        """Return some of the rows: whole items, or of each the answers up to some day."""
        return Reviews(self.items[rows], self.kinds[rows], self.days[rows], self.grades[rows])


def _within(column: NDArray[np.int8], count: int) -> bool:
    return not len(column) or bool(column.min() >= 0 and column.max() < count)
