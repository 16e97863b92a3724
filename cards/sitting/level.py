"""When all is level again after an absence, at the minutes the reader has."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from math import ceil

import numpy as np

from cards.kinds.base import KindName
from cards.parts import Care
from cards.schedule import aimed
from cards.sitting.columns import Columns
from cards.sitting.memory import asked, interval
from cards.sitting.ranking import worth_after
from cards.sitting.weights import at, weights_of
from cards.sitting.worth_memory import Floats, recall
from cards.weighting import PUBLISHED, Weighting

FARTHEST = 365
"""Days looked ahead: further off a day means nothing to a reader."""
_MINUTE = 60
_FEWER = 10
"""Whole minutes fewer that are tried too. Asked sooner, an item can fall due again just before
all is level; that was seen to cost a day, a minute apart, in one of some thousand libraries."""
_GOLDEN, _PLASTIC = 0.6180339887498949, 0.7548776662466927
"""Steps that lay lots evenly between 0 and 1, over the items and over an item's askings."""


def level_on(
    items: Columns,
    day: date,
    seconds: Mapping[KindName, float],
    seconds_a_day: float,
    target: float,
    weighting: Weighting = PUBLISHED,
) -> date | None:
    """Return the first day at the end of which nothing due is left over; None within no year.

    A simple model of the days to come: the reader sits every day from `day` on, and is asked
    what is worth most for its seconds (as it stands when it falls due) until they are filled;
    an item comes back or not by a lot of its own, in the share of cases predicted, and is
    asked a second time when not. Nothing is asked for the first time meanwhile, and nothing
    given away or left out.

    Who has more minutes may stop sooner, so what fewer whole minutes reach, more reach too:
    more minutes do not make it later.

    Args:
        items: all that were asked before, due or not.
        day: the reader's day.
        seconds: what each kind takes.
        seconds_a_day: of a sitting, above 0; one item is asked however long it takes.
        target: retention the reader aims for.
        weighting: the reader's weights.
    """
    ahead = _Ahead.of(items, day, seconds, target, weighting)
    found = FARTHEST
    fewer = ceil(seconds_a_day / _MINUTE) - 1
    whole = range(fewer, max(0, fewer - _FEWER), -1)
    for room in (seconds_a_day, *(float(_MINUTE * each) for each in whole)):
        if not ahead.may_be_level(room, found):
            break
        found = ahead.level_after(room, found)
    return None if found == FARTHEST else day + timedelta(days=found)


@dataclass(frozen=True, slots=True)
class _Ahead:
    """The items, what is worth most first, with days counted from the first one looked at."""

    stability: Floats
    difficulty: Floats
    last: Floats
    due: Floats
    costs: Floats
    targets: Floats
    weights: Floats

    @classmethod
    def of(
        cls,
        items: Columns,
        day: date,
        seconds: Mapping[KindName, float],
        target: float,
        weighting: Weighting,
    ) -> "_Ahead":
        first = day.toordinal()
        last = np.array([each.toordinal() for each in items.last_days], dtype=np.float64) - first
        due = np.array([each.toordinal() for each in items.due_on], dtype=np.float64) - first
        elapsed = np.maximum(np.maximum(due, 0.0) - last, 0.0)
        order = np.argsort(-worth_after(elapsed, items, seconds, weighting), kind="stable")
        close = np.asarray(items.close, dtype=bool)
        return cls(
            np.asarray(items.stability, dtype=np.float64)[order],
            np.asarray(items.difficulty, dtype=np.float64)[order],
            last[order],
            due[order],
            np.array([seconds[kind] for kind in items.kinds], dtype=np.float64)[order],
            np.where(close, aimed(target, Care.CLOSE), target)[order],
            at(weights_of(items.kinds, weighting), order),
        )

    def may_be_level(self, room: float, within: int) -> bool:
        """Tell whether all that falls due could be asked once, on any of so many days."""
        days = np.arange(within)
        asked_once = np.bincount(
            np.clip(self.due, 0, within).astype(np.int64), self.costs, within + 1
        )[:-1]
        return bool((np.cumsum(asked_once) <= max(room, self._longest) * (days + 1)).any())

    @property
    def _longest(self) -> float:
        """Seconds of the longest item: it is asked, and again, however short the day is."""
        return 2 * float(self.costs.max(initial=0.0))

    def level_after(self, room: float, within: int) -> int:
        """Return after how many days nothing due is left over, `within` when not before."""
        stability, difficulty = self.stability.copy(), self.difficulty.copy()
        last, due = self.last.copy(), self.due.copy()
        times = np.zeros(len(due))
        longest = max(room, self._longest)
        for today in range(within):
            waiting = np.flatnonzero(due <= today)
            spent = np.cumsum(self.costs[waiting])
            if len(waiting) and spent[-1] > longest * (within - today):
                return within
            # Asked once they take as much at the least, so no more than these are taken.
            taken = waiting[: 1 + int(np.searchsorted(spent, room, "right"))]
            recalled = recall(
                stability[taken], np.maximum(today - last[taken], 0.0), at(self.weights, taken)
            )
            spent = np.cumsum(self.costs[taken] * (2 - recalled))
            most = max(1, int(np.searchsorted(spent, room, "right")))
            if most >= len(waiting):
                return today
            taken, recalled = taken[:most], recalled[:most]
            weights = at(self.weights, taken)
            times[taken] += 1
            came_back = (taken * _GOLDEN + times[taken] * _PLASTIC) % 1 < recalled
            stability[taken], difficulty[taken] = asked(
                stability[taken], difficulty[taken], recalled, came_back, weights
            )
            last[taken] = today
            due[taken] = today + interval(stability[taken], self.targets[taken], weights)
        return within
