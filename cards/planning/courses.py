"""The courses items take over the coming years, each target beside the others."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from cards.planning.beginnings import Abreast, Places
from cards.planning.forgetting import recalled_days
from cards.planning.records import YEARS
from cards.planning.thinning import thinned
from cards.sitting.lots import lots, waited
from cards.sitting.memory import asked
from cards.sitting.worth_memory import Floats, recall
from cards.weighting import Weights

A_YEAR = 365
DAYS = YEARS[-1] * A_YEAR
QUARTER = 91
"""Days at the end of a year over which what is known is averaged: what was begun together
comes round together, so that a single day tells of its place in the round."""


@dataclass(frozen=True, slots=True)
class Followed:
    """What the courses come to; a row a target.

    Attributes:
        seconds: of asking, in each of the ten years.
        known: how many are expected to come back in the last quarter of each of `YEARS`.
    """

    seconds: Floats
    known: Floats


def followed(start: Abreast, weights: Weights) -> Followed:
    """Follow every course under its target, asked on the very day it is due.

    What comes back is clear; what does not is blank, and clear when asked once more the same
    day. What is overdue as the plan begins is asked on its first day.
    """
    return _Courses(start, weights).followed()


class _Courses:
    """Courses under way: the columns of all that are asked again within the years."""

    def __init__(self, start: Abreast, weights: Weights) -> None:
        rows, its = len(start.targets), start.courses
        self._weights, self._targets = weights, start.targets
        self._row, self._day, self._seconds = start.row, its.day, its.seconds
        self._times = np.ones(len(self._row))
        self._stability, self._difficulty = its.stability, its.difficulty
        self._spent = np.zeros((rows, YEARS[-1]))
        self._known = np.zeros((rows, len(YEARS)))
        self._ask(~its.asked, np.ones(len(self._row)))

    def followed(self) -> Followed:
        step = 0
        while len(self._row):
            step += 1
            self._on(step)
            fewer = thinned(len(self._row), step)
            if fewer is not None:
                self._only(fewer)
                self._times = 2 * self._times
        return Followed(self._spent, self._known)

    def _on(self, step: int) -> None:
        """Let every course come to its next asking."""
        spread, fate = lots(len(self._row), step)
        wait = waited(self._stability, self._targets[self._row], self._weights, spread)
        then = np.maximum(self._day + wait, 0.0)
        self._keep(then)
        within = then < DAYS
        elapsed, then, fate = (then - self._day)[within], then[within], fate[within]
        self._only(within)
        recalled = recall(self._stability, elapsed, self._weights)
        self._stability, self._difficulty = asked(
            self._stability, self._difficulty, recalled, fate < recalled, self._weights
        )
        self._day = then
        self._ask(np.ones(len(then), dtype=np.bool_), 2 - recalled)
        # By target, then difficulty, then how long it will be known: below 100, 41 and 1.
        memory = np.minimum(self._day + self._stability, 8 * DAYS) / (8 * DAYS + 1)
        self._only(np.argsort(100 * self._row + np.round(4 * self._difficulty) + memory))

    def _ask(self, these: NDArray[np.bool_], times: Floats) -> None:
        """Count the seconds of asking some courses on the days they stand at."""
        years = self._spent.shape[1]
        cell = self._row[these] * years + (self._day[these] // A_YEAR).astype(np.int64)
        spent = np.bincount(cell, (self._times * self._seconds * times)[these], self._spent.size)
        self._spent += spent.reshape(self._spent.shape)

    def _keep(self, then: Floats) -> None:
        """Add up what is known until the next asking, in the quarters that count."""
        for place, year in enumerate(YEARS):
            begin, end = year * A_YEAR - QUARTER, year * A_YEAR
            here = np.flatnonzero((self._day < end) & (then > begin))
            day = self._day[here]
            kept = recalled_days(
                self._stability[here],
                np.maximum(day, begin) - day,
                np.minimum(then[here], end) - day,
                self._weights,
            )
            self._known[:, place] += np.bincount(
                self._row[here], self._times[here] * kept / QUARTER, len(self._targets)
            )

    def _only(self, places: Places | slice) -> None:
        """Go on with the courses at some places, in that order."""
        self._row, self._day = self._row[places], self._day[places]
        self._stability, self._difficulty = self._stability[places], self._difficulty[places]
        self._seconds, self._times = self._seconds[places], self._times[places]
