"""The sitting as it is composed: what is due and a few new items, by worth."""

import numpy as np

from cards.schedule import DEFAULT_WEIGHTS, TARGET
from cards.sitting.worth import worth, worth_unasked
from tests.benchmarks.composition.library import ITEMS
from tests.benchmarks.composition.policies import best
from tests.benchmarks.composition.scheduler import Rows, Scheduler

UNASKED_A_DAY = 3


class Composed:
    """What is worth most for its seconds, of what is due and of a few items not asked yet.

    At most so many new ones a day, and one at the least while any waits; of one kind the
    latest added first. `ahead` takes in what is not due yet.
    """

    def __init__(
        self, target: float = TARGET, a_day: int = UNASKED_A_DAY, *, ahead: bool = False
    ) -> None:
        self._target, self._a_day, self._ahead = target, a_day, ahead
        self._due = np.full(ITEMS, np.inf)

    def order(self, known: Scheduler) -> Rows:
        """Return one new item, then all by worth."""
        old = known.asked() if self._ahead else np.nonzero(self._due <= known.day)[0]
        of_old = worth(
            known.stability[old],
            known.difficulty[old],
            known.waited(old),
            known.seconds[old],
            DEFAULT_WEIGHTS,
        )
        new = known.unasked()[::-1]
        new = best(new, known.seconds[new])[: self._a_day]
        of_new = worth_unasked(known.seconds[new], DEFAULT_WEIGHTS)
        of_new[:1] = np.inf
        return best(np.concatenate([new, old]), -np.concatenate([of_new, of_old]))

    def told(self, known: Scheduler, rows: Rows) -> None:
        """Note when they are due again."""
        self._due[rows] = known.due(rows, self._target)
