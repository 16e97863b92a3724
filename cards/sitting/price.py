"""What keeping a book costs: minutes a day, over the coming years."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from cards.kinds.base import KindName
from cards.schedule import DEFAULT_WEIGHTS
from cards.sitting.memory import came_back, came_back_later, interval
from cards.sitting.worth_memory import CLEAR, first, recall

YEARS = 5
"""How far ahead a price is told."""
_DAYS_A_YEAR = 365.25
_PATHS = 2048
"""Lives of one item followed to its expectation."""
_SEED = 1972


@dataclass(frozen=True, slots=True)
class Price:
    """What keeping a book costs.

    Attributes:
        minutes_a_day: of each coming year, the mean over its days.
    """

    minutes_a_day: tuple[float, ...]

    @property
    def first_year(self) -> float:
        """Minutes a day in the first year."""
        return self.minutes_a_day[0]

    @property
    def last_year(self) -> float:
        """Minutes a day in the last of the years told."""
        return self.minutes_a_day[-1]


def price(kinds: Mapping[KindName, int], seconds: Mapping[KindName, float], target: float) -> Price:
    """Return what keeping a book costs in minutes a day over the coming years.

    An expectation under the published default weights: every item is asked first on the first
    day, then whenever it is due, and comes back with the chance predicted: clear when it does,
    blank when not, and then once more the same day.

    Args:
        kinds: how many items of each kind the book has.
        seconds: what each kind takes.
        target: retention aimed for, from 0.7 to 0.97.
    """
    once = sum(count * seconds[kind] for kind, count in kinds.items())
    return Price(tuple(once * asked / _DAYS_A_YEAR / 60 for asked in askings(target, YEARS)))


@lru_cache(maxsize=64)
def askings(target: float, years: int) -> tuple[float, ...]:
    """Return how often one item is asked in each of the coming years, in expectation.

    Args:
        target: retention aimed for, from 0.7 to 0.97.
        years: how many; the first asking falls in the first.
    """
    chance = np.random.default_rng(_SEED)
    stabilities, difficulties = first(DEFAULT_WEIGHTS)
    stability = np.full(_PATHS, stabilities[CLEAR])
    difficulty = np.full(_PATHS, difficulties[CLEAR])
    day = np.zeros(_PATHS)
    asked = np.zeros(years)
    asked[0] = 1.0
    while True:
        waited = interval(stability, target, DEFAULT_WEIGHTS)
        day = day + waited
        going = day < years * _DAYS_A_YEAR
        if not going.any():
            return tuple(float(each) for each in asked)
        stability, difficulty, day, waited = (
            each[going] for each in (stability, difficulty, day, waited)
        )
        recalled = recall(stability, waited, DEFAULT_WEIGHTS)
        year = (day // _DAYS_A_YEAR).astype(np.int64)
        asked += np.bincount(year, 2 - recalled, years) / _PATHS
        # One draw from each of as many equal parts, in an order of chance: the paths forget
        # in their right shares at every step.
        parts = (chance.permutation(len(day)) + chance.random(len(day))) / len(day)
        kept = came_back(stability, difficulty, recalled, DEFAULT_WEIGHTS)
        lost = came_back_later(stability, difficulty, recalled, DEFAULT_WEIGHTS)
        stability, difficulty = (
            np.where(parts < recalled, clear, blank)
            for clear, blank in zip(kept, lost, strict=True)
        )
