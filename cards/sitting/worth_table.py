"""The price at which asking an item now and waiting are equally good, for every memory.

Each item alone is a bandit that goes on changing while it rests (Whittle 1988, "Restless
bandits: activity allocation in a changing world", J. Appl. Prob. 25A, from memory): on every
day it is asked, for a price, or left. Its reward is its recall, summed over the days to
come; asking has a chance of success and moves its stability. For each of many prices the
best waits are found by Howard's policy iteration; the price at which asking on a day is no
better than the best wait beyond it is what asking on that day is worth, in days of recall.
"""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from cards.sitting.worth_memory import BLANK, CLEAR, Floats, Weights, answered, curve, recall

HORIZON = 12_000.0
"""Days over which a day's recall loses its weight, by a factor of e: thirty-three years.

What is kept is kept for a reader's life. Shorter horizons keep less even after six years,
in simulation, because they spend the minutes on holding rather than on building up: with 2
years 6 in a hundred less at 3 minutes a day, and 3 at 5."""

TRUSTED, BETWEEN = 0.3, 8.0
"""How far difficulty is believed: as its distance from 8, times 0.3.

Our own choice, by simulation: fully believed, 6 in a hundred less are kept, and 3 where it is
not believed at all. Under scarce minutes most lapses come of asking too late, yet each raises
the model's difficulty as if the item were hard, and hardly any answer lowers it again. For
the same reason the table lets no answer change it."""

STABILITIES, WAITS, PRICES = 32, 40, 20
LEAST, MOST = 0.05, 36_500.0
"""Of the stabilities and the waits, in days."""
DIFFICULTIES = np.linspace(1, 10, 5)
ROUNDS = 50
"""Of policy iteration, at most; eight are usual."""


@dataclass(frozen=True, slots=True)
class Table:
    """What asking is worth: days of recall, by difficulty, stability and days since.

    Attributes:
        values: of shape (difficulties, stabilities, waits).
        stability, waited: logarithms of the days that the two last axes stand for, evenly
            spaced.
    """

    values: Floats
    stability: Floats
    waited: Floats

    def __call__(self, stability: Floats, difficulty: Floats, elapsed: Floats) -> Floats:
        """Return what asking is worth, between the nodes linearly, in days of recall.

        Args:
            stability: days, above 0.
            difficulty: 1 to 10.
            elapsed: days since the last answer; less than one counts as one.
        """
        one, in_one = _between(DIFFICULTIES, difficulty)
        two, in_two = _between(self.stability, np.log(stability))
        three, in_three = _between(self.waited, np.log(np.maximum(elapsed, 1.0)))
        flat = self.values.ravel()
        place = (one * STABILITIES + two) * WAITS + three

        def along(start: NDArray[np.int64]) -> Floats:
            low = flat[start]
            return low + in_three * (flat[start + 1] - low)

        def across(start: NDArray[np.int64]) -> Floats:
            low = along(start)
            return low + in_two * (along(start + WAITS) - low)

        easy = across(place)
        return easy + in_one * (across(place + STABILITIES * WAITS) - easy)


# A reader has a set for each kind at the most, a school many readers; one takes 51 kB.
@lru_cache(maxsize=128)
def table(weights: tuple[float, ...]) -> Table:
    """Return the table of a reader's weights; made once for each, in some 30 ms."""
    stability = np.linspace(np.log(LEAST), np.log(MOST), STABILITIES)
    waited = np.linspace(0.0, np.log(MOST), WAITS)
    kept, after = _waiting(np.exp(stability), np.exp(waited), weights)
    moves = _moves(stability, np.exp(waited), weights)
    prices = np.geomspace(0.25, HORIZON, PRICES)
    asked = _solved(kept, after, moves, prices)
    # The best that can still be done once a wait is over: ask at a later one, or never.
    best = np.maximum.accumulate(asked[:, :, ::-1], axis=2)[:, :, ::-1]
    gain = (asked[:, :, :-1] - best[:, :, 1:]) / after[:-1, None]
    return Table(_where_nothing_is_gained(gain, prices), stability, waited)


def _waiting(stability: Floats, waits: Floats, weights: Weights) -> tuple[Floats, Floats]:
    """Return the recall summed until each wait is over, and what a day then still weighs.

    Shapes (stabilities, waits + 1) and (waits + 1): the last wait never ends.
    """
    decay, factor = curve(weights)
    days = np.concatenate([[0.0], waits])
    scale = (stability / (factor * (1 + decay)))[:, None]
    summed = scale * (1 + factor * days / stability[:, None]) ** (1 + decay)
    weight = np.exp(-days / HORIZON)
    between = -np.diff(weight) * HORIZON / np.diff(days)
    kept = np.cumsum(np.diff(summed) * between, axis=1)
    rest = recall(stability, waits[-1:], weights) * weight[-1] * HORIZON
    return np.column_stack([kept, kept[:, -1] + rest]), np.append(weight[1:], 0.0)


def _moves(stability: Floats, waits: Floats, weights: Weights) -> Floats:
    """Return where an asking after each wait leads, as shares of the stabilities.

    Shape (difficulties, stabilities, waits, stabilities). Every success counts as clear.
    """
    days = np.exp(stability)[:, None]
    believed = (BETWEEN + TRUSTED * (DIFFICULTIES - BETWEEN))[:, None, None]
    recalled = recall(days, waits, weights)
    shape = (len(DIFFICULTIES), STABILITIES, WAITS)
    rows = np.arange(np.prod(shape)).reshape(shape) * STABILITIES
    moves = np.zeros(rows.size * STABILITIES)
    for grade, chance in ((BLANK, 1 - recalled), (CLEAR, recalled)):
        reached, _ = answered(days, believed, recalled, grade, weights)
        low, share = _between(stability, np.log(reached))
        for place, part in ((low, 1 - share), (low + 1, share)):
            moves += np.bincount(
                (rows + place).ravel(), weights=(chance * part).ravel(), minlength=moves.size
            )
    return moves.reshape(*shape, STABILITIES)


def _solved(kept: Floats, after: Floats, moves: Floats, prices: Floats) -> Floats:
    """Return what asking after each wait is worth to an item just answered, at each price.

    Shape (difficulties, stabilities, waits + 1, prices); the last wait is never to ask.
    """
    levels, count = len(DIFFICULTIES), STABILITIES
    flat = moves.reshape(levels, count * WAITS, count)
    level, row = np.ogrid[:levels, :count]
    value = np.broadcast_to(kept[:, -1:], (levels, count, PRICES))
    chosen = None
    for _ in range(ROUNDS):
        then = (flat @ value).reshape(levels, count, WAITS, PRICES) - prices
        asked = np.empty((levels, count, WAITS + 1, PRICES))
        asked[:, :, :-1] = kept[:, :-1, None] + after[:-1, None] * then
        asked[:, :, -1] = kept[:, -1:]
        best = asked.argmax(axis=2)
        if chosen is not None and np.array_equal(best, chosen):
            break
        chosen = best
        wait = np.minimum(best, WAITS - 1)
        weight = after[best]
        onward = moves[level[..., None], row[..., None], wait] * weight[..., None]
        reward = kept[row[..., None], best] - weight * prices
        system = np.eye(count) - onward.transpose(0, 2, 1, 3)
        value = np.linalg.solve(system, reward.transpose(0, 2, 1)[..., None])[..., 0]
        value = value.transpose(0, 2, 1)
    return asked


def _where_nothing_is_gained(gain: Floats, prices: Floats) -> Floats:
    """Return the price at which the gain of asking falls to nothing; 0 where there is none."""
    positive = gain > 0
    last = PRICES - 1 - positive[..., ::-1].argmax(axis=-1)
    low = np.minimum(last, PRICES - 2)[..., None]
    above, below = (np.take_along_axis(gain, at, axis=-1)[..., 0] for at in (low, low + 1))
    low = low[..., 0]
    share = np.clip(above / np.maximum(above - below, 1e-12), 0, 1)
    found = prices[low] + share * (prices[low + 1] - prices[low])
    return np.where(positive.any(axis=-1), found, 0.0)


def _between(nodes: Floats, values: Floats) -> tuple[NDArray[np.int64], Floats]:
    """Return the node below each value, of evenly spaced ones, and how far it is to the next."""
    place = np.clip((values - nodes[0]) / (nodes[1] - nodes[0]), 0, len(nodes) - 1 - 1e-9)
    low = place.astype(np.int64)
    return low, place - low
