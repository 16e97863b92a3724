"""The sitting as it is composed: what is due and a few new items, by worth."""

import numpy as np

from cards.schedule import DEFAULT_WEIGHTS, TARGET
from cards.sitting.worth import worth, worth_unasked
from cards.sitting.worth_memory import BLANK, CLEAR, answered, curve, first
from tests.benchmarks.composition.library import ITEMS
from tests.benchmarks.composition.policies import best
from tests.benchmarks.composition.scheduler import Floats, Rows, Scheduler

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
        of_old = self._worth(known, old)
        new = known.unasked()[::-1]
        new = best(new, known.seconds[new])[: self._a_day]
        of_new = self._worth_unasked(known.seconds[new])
        of_new[:1] = np.inf
        return best(np.concatenate([new, old]), -np.concatenate([of_new, of_old]))

    def told(self, known: Scheduler, rows: Rows) -> None:
        """Note when they are due again."""
        self._due[rows] = known.due(rows, self._target)

    def _worth(self, known: Scheduler, rows: Rows) -> Floats:
        return worth(
            known.stability[rows],
            known.difficulty[rows],
            known.waited(rows),
            known.seconds[rows],
            DEFAULT_WEIGHTS,
        )

    def _worth_unasked(self, seconds: Floats) -> Floats:
        return worth_unasked(seconds, DEFAULT_WEIGHTS)


class Greedy(Composed):
    """The same, by the recall that one asking alone adds over the coming two years.

    It tells what looking further brings. A new item adds what a clear first answer leaves.
    """

    AHEAD = 730.0

    def _worth(self, known: Scheduler, rows: Rows) -> Floats:
        stability, difficulty = known.stability[rows], known.difficulty[rows]
        recalled = known.recall(rows)
        blank, clear = (
            self._kept(answered(stability, difficulty, recalled, grade, DEFAULT_WEIGHTS)[0])
            for grade in (BLANK, CLEAR)
        )
        asked = (1 - recalled) * blank + recalled * clear
        return (asked - self._kept(stability, known.waited(rows))) / known.seconds[rows]

    def _worth_unasked(self, seconds: Floats) -> Floats:
        return self._kept(first(DEFAULT_WEIGHTS)[0][CLEAR : CLEAR + 1]) / seconds

    def _kept(self, stability: Floats, waited: Floats | float = 0.0) -> Floats:
        """Return recall summed over the days ahead: the integral of the forgetting curve."""
        decay, factor = curve(DEFAULT_WEIGHTS)
        to_end, to_now = (
            (1 + factor * days / stability) ** (1 + decay) for days in (waited + self.AHEAD, waited)
        )
        return stability / (factor * (1 + decay)) * (to_end - to_now)
