"""What keeping a book costs: minutes a day, over the coming years."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from cards.kinds.base import KindName
from cards.schedule import DEFAULT_WEIGHTS
from cards.sitting.lots import lots, waited
from cards.sitting.memory import asked
from cards.sitting.worth_memory import CLEAR, Floats, first, recall
from cards.weighting import PUBLISHED, Weighting, Weights

YEARS = 5
"""How far ahead a price is told."""
A_YEAR = 365
_MINUTE = 60

_COURSES = 8192
"""Courses one item could take, followed side by side. The mean of so many is within some 5 in
a hundred of the expectation in any of the years; a memory is not foreseen so exactly."""


@dataclass(frozen=True, slots=True)
class Price:
    """What keeping a book costs.

    Attributes:
        minutes_a_day: of each coming year, the mean over its days.
    """

    minutes_a_day: tuple[float, ...]

    @property
    def first_year(self) -> float:
        """Minutes on the average day of the first year."""
        return self.minutes_a_day[0]

    @property
    def last_year(self) -> float:
        """Minutes on the average day of the last year told."""
        return self.minutes_a_day[-1]


def price(
    kinds: Mapping[KindName, int],
    seconds: Mapping[KindName, float],
    target: float,
    weighting: Weighting = PUBLISHED,
) -> Price:
    """Return what keeping a book costs in minutes a day, in each of the coming years.

    An expectation under the weights in force: every item is asked on the first day
    and comes back clear, then whenever it is due, and comes back with the chance predicted:
    clear when it does, blank when not, and then once more the same day.

    Args:
        kinds: how many items of each kind the book has.
        seconds: what each kind takes.
        target: retention aimed for, from 0.7 to 0.97.
        weighting: the reader's weights.
    """
    once: dict[Weights, float] = {}
    for kind, count in kinds.items():
        weights = weighting.of(kind)
        once[weights] = once.get(weights, 0.0) + count * seconds[kind]
    years = [0.0] * YEARS
    for weights, spent in once.items():
        for year, a_day in enumerate(_askings_a_day(target, weights)):
            years[year] += spent * a_day / _MINUTE
    return Price(tuple(years))


@lru_cache(maxsize=256)
def _askings_a_day(target: float, weights: Weights) -> tuple[float, ...]:
    """Return how often one item is asked on the average day of each year."""
    due, again = askings(target, YEARS * A_YEAR, weights)
    years = (due + again).reshape(YEARS, A_YEAR)
    return tuple(float(mean) for mean in years.mean(axis=1))


def askings(target: float, days: int, weights: Weights = DEFAULT_WEIGHTS) -> tuple[Floats, Floats]:
    """Return how often one item is asked on each coming day, because due, and once more.

    The first day holds its first asking. The courses are drawn without chance: they stand in
    the order of their memory at every step, and lots lie evenly (`cards.sitting.lots`).

    Args:
        target: retention aimed for, from 0.7 to 0.97.
        days: how many are looked ahead.
        weights: the 21 weights of FSRS-6.
    """
    due, again = np.zeros(days), np.zeros(days)
    due[0] = 1.0
    stability, difficulty = (np.full(_COURSES, each[CLEAR]) for each in first(weights))
    day = np.zeros(_COURSES, dtype=np.int64)
    step = 0
    while len(day):
        step += 1
        spread, fate = lots(len(day), step)
        wait = waited(stability, target, weights, spread)
        recalled = recall(stability, wait, weights)
        came_back = fate < recalled
        stability, difficulty = asked(stability, difficulty, recalled, came_back, weights)
        day = day + wait.astype(np.int64)
        within = day < days
        due += np.bincount(day[within], minlength=days) / _COURSES
        again += np.bincount(day[within], 1 - recalled[within], days) / _COURSES
        day, stability, difficulty = day[within], stability[within], difficulty[within]
        order = np.lexsort((day + stability, np.round(4 * difficulty)))
        day, stability, difficulty = day[order], stability[order], difficulty[order]
    return due, again
