"""When all is level again after an absence, at the minutes the reader has."""

from collections.abc import Mapping
from datetime import date, timedelta

import numpy as np

from cards.kinds.base import KindName
from cards.parts import Care
from cards.schedule import DEFAULT_WEIGHTS, aimed
from cards.sitting.columns import Columns
from cards.sitting.memory import asked, interval
from cards.sitting.worth_memory import recall

FARTHEST = 365
"""Days looked ahead."""


def level_on(
    items: Columns,
    day: date,
    seconds: Mapping[KindName, float],
    seconds_a_day: float,
    target: float,
) -> date | None:
    """Return the first day at the end of which nothing due is left over; None within no year.

    The reader is taken to sit every day from `day` on, for all the seconds they have, and to be
    asked nothing for the first time meanwhile.

    Args:
        items: all that were asked before, due or not.
        day: the reader's day.
        seconds: what each kind takes.
        seconds_a_day: of a sitting.
        target: retention the reader aims for.
    """
    if seconds_a_day <= 0:
        return None
    costs = np.array([seconds[kind] for kind in items.kinds], dtype=np.float64)
    targets = np.where(np.asarray(items.close, dtype=bool), aimed(target, Care.CLOSE), target)
    stability = np.array(items.stability, dtype=np.float64)
    difficulty = np.array(items.difficulty, dtype=np.float64)
    last = np.array([each.toordinal() for each in items.last_days], dtype=np.float64)
    due = np.array([each.toordinal() for each in items.due_on], dtype=np.float64)
    for ahead in range(FARTHEST):
        today = float(day.toordinal() + ahead)
        waiting = np.flatnonzero(due <= today)
        spent = np.cumsum(costs[waiting])
        level = not len(waiting) or spent[-1] <= seconds_a_day
        if level:
            return day + timedelta(days=ahead)
        taken = waiting[spent <= seconds_a_day]
        recalled = recall(stability[taken], np.maximum(today - last[taken], 0.0), DEFAULT_WEIGHTS)
        came_back = (taken * 0.6180339887498949 + ahead * 0.7548776662466927) % 1.0 < recalled
        stability[taken], difficulty[taken] = asked(
            stability[taken], difficulty[taken], recalled, came_back, DEFAULT_WEIGHTS
        )
        last[taken] = today
        due[taken] = today + interval(stability[taken], targets[taken], DEFAULT_WEIGHTS)
    return None
