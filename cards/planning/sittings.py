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
    """

    due: float
    unasked: float


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
        self._minute = _MINUTE * copies
        self._today = 0

    def sit(self) -> Spent:
        """Sit once more, first on the first day, and tell what the sitting takes."""
        allowed = self._queue[: self._a_day]
        owed, others = allowed[: self._copies], allowed[self._copies :]
        waiting = np.concatenate(
            [owed, np.sort(np.concatenate([np.flatnonzero(self._due <= self._today), others]))]
        )
        # Asked once they take as much at the least, so no more than these are taken.
        waiting = waiting[: self._fit(self._seconds(waiting))]
        is_due = self._due[waiting] <= self._today
        recalled = np.where(is_due, self._recall(waiting, self._today), 1.0)
        costs = self._seconds(waiting) * (2 - recalled)
        most = self._fit(costs)
        waiting, is_due = waiting[:most], is_due[:most]
        recalled, costs = recalled[:most], costs[:most]
        self._ask(waiting[is_due], recalled[is_due])
        self._begin(waiting[~is_due])
        self._today += 1
        return Spent(
            due=float(costs[is_due].sum()) / self._minute,
            unasked=float(costs[~is_due].sum()) / self._minute,
        )

    def left_over(self) -> float:
        """Return the minutes for what was due at the last sitting and did not fit."""
        last = self._today - 1
        places = np.flatnonzero(self._due <= last)
        costs = self._seconds(places) * (2 - self._recall(places, last))
        return float(costs.sum()) / self._minute

    def known(self) -> Floats:
        """Return of each item the chance that it comes back on the next day, before it is asked.

        None of what was not asked yet.
        """
        every = np.arange(len(self._due))
        recalled = np.where(self._due < NEVER, self._recall(every, self._today), 0.0)
        known: Floats = recalled.reshape(-1, self._copies).mean(axis=1)
        return known

    def _fit(self, costs: Floats) -> int:
        """Return how many of the first fit into the minutes; one whole item always does."""
        fit = int(np.searchsorted(np.cumsum(costs), self._room, "right"))
        return max(fit, self._copies)

    def _seconds(self, places: NDArray[np.int64]) -> Floats:
        seconds: Floats = self._library.seconds[places // self._copies]
        return seconds

    def _recall(self, places: NDArray[np.int64], day: int) -> Floats:
        elapsed = np.maximum(day - self._last[places], 0.0)
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
