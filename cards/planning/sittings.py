"""The sittings to come, day by day, at the minutes the reader has."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from cards.planning.library import Habits
from cards.planning.ranked import NEVER, Ranked
from cards.sitting.lots import lots, waited
from cards.sitting.memory import asked
from cards.sitting.weights import at
from cards.sitting.worth_memory import Floats, recall

_MINUTE = 60.0
_COURSES = 16_384
"""Courses followed at the least: the items of a small library each several times, so that what
is told of a day is what it asks on the average, not on one of its ways."""
_MOST_COPIES = 256


@dataclass(frozen=True, slots=True)
class Spent:
    """What one day takes, in minutes.

    Attributes:
        due: for what was due.
        unasked: for what was asked for the first time.
        left_over: for what was due and did not fit.
    """

    due: float
    unasked: float
    left_over: float


class Sittings:
    """The items of a library on their way through the days to come.

    A simple model of these: the reader sits every day and is asked one unasked item first,
    however little time there is, as in any sitting; then what is worth most for its seconds, as
    it stood when it fell due, until the minutes are filled. One item is asked however long it
    takes. It comes back or not by a lot of its own, in the share of cases predicted, and is
    asked a second time when not. Neither the commitment that is asked daily, due or not, is
    counted nor what fills minutes that are left before it is due.
    """

    def __init__(self, library: Ranked, habits: Habits) -> None:
        count = len(library.books)
        copies = min(_MOST_COPIES, -(-_COURSES // max(1, count)))
        self._library, self._copies = library, copies
        self._room = habits.minutes * _MINUTE * copies
        self._a_day = habits.unasked_a_day * copies
        self._stability = np.repeat(library.stability, copies)
        self._difficulty = np.repeat(library.difficulty, copies)
        self._last, self._due = np.repeat(library.last, copies), np.repeat(library.due, copies)
        self._queue = (library.queue[:, None] * copies + np.arange(copies)).ravel()
        self._today = 0

    def sit(self) -> Spent:
        """Sit once more, first on the first day, and tell what the sitting takes."""
        allowed = self._queue[: self._a_day]
        owed, others = allowed[: self._copies], allowed[self._copies :]
        waiting = np.concatenate(
            [owed, np.sort(np.concatenate([np.flatnonzero(self._due <= self._today), others]))]
        )
        is_due = self._due[waiting] <= self._today
        recalled = np.where(is_due, self._recall(waiting), 1.0)
        costs = self._library.seconds[waiting // self._copies] * (2 - recalled)
        fit = int(np.searchsorted(np.cumsum(costs), self._room, "right"))
        taken = np.arange(len(waiting)) < max(fit, self._copies)
        self._ask(waiting[taken & is_due], recalled[taken & is_due])
        self._begin(waiting[taken & ~is_due])
        self._today += 1
        minute = _MINUTE * self._copies
        return Spent(
            due=float(costs[taken & is_due].sum()) / minute,
            unasked=float(costs[taken & ~is_due].sum()) / minute,
            left_over=float(costs[~taken & is_due].sum()) / minute,
        )

    def known(self) -> Floats:
        """Return of each item the chance that it comes back on the next day, before it is asked.

        None of what was not asked yet.
        """
        every = np.arange(len(self._due))
        recalled = np.where(self._due < NEVER, self._recall(every), 0.0)
        known: Floats = recalled.reshape(-1, self._copies).mean(axis=1)
        return known

    def _recall(self, places: NDArray[np.int64]) -> Floats:
        elapsed = np.maximum(self._today - self._last[places], 0.0)
        return recall(self._stability[places], elapsed, self._weights(places))

    def _ask(self, places: NDArray[np.int64], recalled: Floats) -> None:
        """Ask what is due; those alike in memory one after the other, so that lots are even."""
        order = np.lexsort((self._stability[places], np.round(4 * self._difficulty[places])))
        places, recalled = places[order], recalled[order]
        _, fate = lots(len(places), self._today)
        self._stability[places], self._difficulty[places] = asked(
            self._stability[places],
            self._difficulty[places],
            recalled,
            fate < recalled,
            self._weights(places),
        )
        self._wait(places)

    def _begin(self, places: NDArray[np.int64]) -> None:
        """Ask for the first time."""
        self._wait(places)
        self._queue = self._queue[self._due[self._queue] == NEVER]

    def _wait(self, places: NDArray[np.int64]) -> None:
        spread, _ = lots(len(places), self._today)
        targets = self._library.targets[places // self._copies]
        wait = waited(self._stability[places], targets, self._weights(places), spread)
        self._last[places] = self._today
        self._due[places] = self._today + wait

    def _weights(self, places: NDArray[np.int64]) -> Floats:
        return at(self._library.weights, places // self._copies)
