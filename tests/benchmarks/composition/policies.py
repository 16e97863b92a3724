"""The policies a sitting is held against: which items they would ask today, best first."""

from typing import Protocol

import numpy as np

from cards.schedule import DEFAULT_WEIGHTS
from cards.sitting.worth_memory import CLEAR, first, recall
from tests.benchmarks.composition.library import ADDED, ITEMS
from tests.benchmarks.composition.scheduler import Rows, Scheduler

ENOUGH = 80
"""Items that fill the longest sitting many times over: no more are put in order."""


class Policy(Protocol):
    """Puts what could be asked today in order."""

    def order(self, known: Scheduler) -> Rows:
        """Return items to ask today, the first first."""
        ...

    def told(self, known: Scheduler, rows: Rows) -> None:
        """Take note of what was asked today, in the order it was."""
        ...


def best(rows: Rows, keys: np.ndarray) -> Rows:
    """Return the rows of the least keys in order, as many as can matter."""
    if len(rows) > ENOUGH:
        few = np.argpartition(keys, ENOUGH)[:ENOUGH]
        rows, keys = rows[few], keys[few]
    return rows[np.argsort(keys, kind="stable")]


class Due:
    """What is due under a target: by due day, or what the model expects least recall of.

    Items of the same due day come in an order drawn once. New ones come before all of it, or
    after all of it, the earliest added first.
    """

    def __init__(self, target: float, *, new_first: bool, by_recall: bool) -> None:
        self._target, self._new_first, self._by_recall = target, new_first, by_recall
        self._due = np.full(ITEMS, np.inf)
        self._tie = np.random.default_rng(2019).random(ITEMS)

    def order(self, known: Scheduler) -> Rows:
        """Return what is due, with the new items before or after."""
        due = np.nonzero(self._due <= known.day)[0]
        if self._by_recall:
            # Recall falls with days over stability alone.
            keys = -known.waited(due) / known.stability[due]
        else:
            keys = self._due[due] + self._tie[due]
        old, new = best(due, keys), known.unasked()[:ENOUGH]
        return np.concatenate([new, old] if self._new_first else [old, new])

    def told(self, known: Scheduler, rows: Rows) -> None:
        """Note when they are due again."""
        self._due[rows] = known.due(rows, self._target)


class Leitner:
    """A box of five partitions, of 1, 2, 5, 8 and 14 cm (Leitner 1972, from memory).

    A partition that is full is worked at, the fullest first, from its front, until it is not;
    then new cards are put in (or before all else); what time is left goes to the first
    partition. A success moves a card to the back of the next, a failure to the back of the
    first; past the fifth it has been learnt and leaves the box. A new card is asked as it
    enters the first. How many cards make a centimetre is not said: it is a parameter.
    """

    SPANS = np.array([1, 2, 5, 8, 14])

    def __init__(self, to_the_centimetre: int, *, new_first: bool) -> None:
        self._room = self.SPANS * to_the_centimetre
        self._new_first = new_first
        self._partition = np.full(ITEMS, -1)
        self._arrived = np.zeros(ITEMS, dtype=np.int64)
        self._arrivals = 0

    def order(self, known: Scheduler) -> Rows:
        """Return the cards of full partitions, new ones and those of the first partition."""
        inside = np.nonzero(self._partition >= 0)[0]
        held = np.bincount(self._partition[inside], minlength=6)[:5]
        full = [each for each in np.argsort(-held / self._room) if held[each] >= self._room[each]]
        worked = [self._front(known, int(each)) for each in full]
        new = known.unasked()[:ENOUGH]
        parts = [new, *worked] if self._new_first else [*worked, new]
        if 0 not in full:
            parts.append(self._front(known, 0))
        return np.concatenate(parts)

    def told(self, known: Scheduler, rows: Rows) -> None:
        """Move the cards."""
        moved = np.minimum(self._partition[rows] + 1, 5)
        self._partition[rows] = np.where(known.grade[rows] == 0, 0, moved)
        self._arrived[rows] = self._arrivals + np.arange(len(rows))
        self._arrivals += len(rows)

    def _front(self, known: Scheduler, partition: int) -> Rows:
        cards = np.nonzero((self._partition == partition) & (known.last < known.day))[0]
        return best(cards, self._arrived[cards])


class Tabibian:
    """Review at a rate u = q^(-1/2) (1 - m), m the recall (Tabibian et al. 2019).

    The price q is the one at which the minutes of the day are used: items are drawn, each at a
    rate in proportion to 1 - m, until they are. A new item's m is that of one answered clear on
    the day it was added, so that it is drawn at a rate like the others.
    """

    def __init__(self) -> None:
        self._chance = np.random.default_rng(2019)

    def order(self, known: Scheduler) -> Rows:
        """Return the items in the order in which their clocks ring."""
        new, old = known.unasked(), known.asked()
        stability = first(DEFAULT_WEIGHTS)[0][CLEAR : CLEAR + 1]
        left = recall(stability, (known.day - ADDED[new]).astype(np.float64), DEFAULT_WEIGHTS)
        rates = 1 - np.concatenate([left, known.recall(old)])
        rings = self._chance.exponential(size=len(rates)) / np.maximum(rates, 1e-9)
        return best(np.concatenate([new, old]), rings)

    def told(self, known: Scheduler, rows: Rows) -> None:
        """Nothing has to be noted: the rate depends on the recall alone."""


def baselines() -> dict[str, Policy]:
    """Return every policy a sitting is held against, by name."""
    named: dict[str, Policy] = {
        f"{'lowest recall' if by_recall else 'due date'}, target {target}, "
        f"new {'first' if new_first else 'last'}": Due(
            target, new_first=new_first, by_recall=by_recall
        )
        for by_recall in (False, True)
        for target in (0.7, 0.8, 0.9)
        for new_first in (True, False)
    }
    for cards in (40, 100):
        for new_first in (True, False):
            name = f"Leitner, {cards} cards to the cm, new {'first' if new_first else 'last'}"
            named[name] = Leitner(cards, new_first=new_first)
    return {**named, "Tabibian et al.": Tabibian()}
