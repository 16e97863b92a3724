"""The answers of all items laid step by step: first every item's first, then every second.

The memory model goes from one answer to the next, so a pass over arrays takes the k-th
answers of all items at once. Longer histories stand first: those that go on to step k+1
are always the head of those at step k.
"""

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from cards.fitting.reviews import Floats, Reviews

Places = NDArray[np.intp]


@dataclass(frozen=True, slots=True, eq=False)
class Step:
    """The k-th answers of all items that have so many, from the second answers on.

    Attributes:
        rows: the slice of the laid rows they fill.
        grades: 0 to 3.
        off: the same, counted from clear: -2 to 1.
        elapsed: days since the answer before.
        recalled, lapsed: places within the step of what came back, and what came back blank,
            after a day or more: these are scored.
        same_day: places of further answers of a day.
    """

    rows: slice
    grades: NDArray[np.int8]
    off: Floats
    elapsed: Floats
    recalled: Places
    lapsed: Places
    same_day: Places


@dataclass(frozen=True, slots=True, eq=False)
class Laid:
    """Reviews laid step by step.

    Attributes:
        order: the row of the reviews that each laid row came from.
        first: the grades of the first answers.
        later: the steps after it.
    """

    order: Places
    first: NDArray[np.int8]
    later: tuple[Step, ...]


def lay(reviews: Reviews, longest: int | None = None) -> Laid:
    """Lay reviews step by step; with a longest, only so many answers of each item."""
    starts = np.flatnonzero(reviews.first)
    lengths = np.diff(starts, append=len(reviews))
    longest_first = np.argsort(-lengths, kind="stable")
    rank = np.empty_like(longest_first)
    rank[longest_first] = np.arange(len(starts))
    number = np.arange(len(reviews)) - np.repeat(starts, lengths)
    order = np.lexsort((np.repeat(rank, lengths), number))
    bounds = np.cumsum(np.bincount(number))
    elapsed = reviews.elapsed.astype(np.float64)[order]
    grades = reviews.grades[order]
    later = tuple(
        _step(slice(int(begin), int(end)), grades[begin:end], elapsed[begin:end])
        for begin, end in pairwise(bounds[:longest])
    )
    return Laid(order, grades[: len(starts)], later)


def _step(rows: slice, grades: NDArray[np.int8], elapsed: Floats) -> Step:
    later = elapsed >= 1
    return Step(
        rows,
        grades,
        grades.astype(np.float64) - 2,
        elapsed,
        np.flatnonzero(later & (grades > 0)),
        np.flatnonzero(later & (grades == 0)),
        np.flatnonzero(~later),
    )
