"""What it takes until items last, each target beside the others.

This is what a target is proposed by. Ye, Su & Cao 2022 (KDD '22, doi 10.1145/3534678.3539081)
choose when to ask so that the least is spent until a memory reaches a wanted half-life; here
the wait is always the target's, and the target is chosen by the same measure: the least
minutes until an item lasts. That a memory lasts from a stability of a year on, and that a
reader's one target is chosen so, is our own definition.

What is known for each minute a day would propose the lowest target, always: the first minutes
keep most, and every further one less. It would count an item that is soon lost again like one
that is kept for good.
"""

from dataclasses import dataclass

import numpy as np

from cards.planning.beginnings import Abreast
from cards.planning.thinning import thinned
from cards.schedule import MAX_INTERVAL
from cards.sitting.lots import lots, waited
from cards.sitting.memory import asked
from cards.sitting.worth_memory import Floats, recall
from cards.weighting import Weights

LASTS = 365.0
"""Stability, in days, from which on a memory lasts: after a year without being asked nine in
ten still come back. Three years instead move the proposal by one to three hundredths."""
MOST = 1000
"""Askings after which an item that still does not last is taken never to."""


@dataclass(frozen=True, slots=True)
class Gained:
    """What it takes until courses last; a value a target.

    Attributes:
        seconds: of all their askings until they do, or for a hundred years, or `MOST` times.
        lasting: how many do then.
    """

    seconds: Floats
    lasting: Floats


def gained(start: Abreast, weights: Weights) -> Gained:
    """Follow the courses that do not last yet until they do, each under its target.

    As in `cards.planning.courses`, every item is asked on the day it is due.
    """
    rows = len(start.targets)
    not_yet = ~start.courses.asked | (start.courses.stability < LASTS)
    row, its = start.row[not_yet], start.courses.at(not_yet)
    stability, difficulty, day, seconds = its.stability, its.difficulty, its.day, its.seconds
    times, spent, lasting = np.ones(len(row)), np.zeros(rows), np.zeros(rows)
    spent += np.bincount(row, np.where(its.asked, 0.0, seconds), rows)
    for step in range(1, MOST + 1):
        begun = stability >= LASTS
        lasting += np.bincount(row[begun], times[begun], rows)
        # By target, then difficulty, then stability: below 100, 41 and 1.
        order = np.argsort(100 * row + np.round(4 * difficulty) + stability / (2 * LASTS))
        order = order[~begun[order] & (day[order] < MAX_INTERVAL)]
        fewer = thinned(len(order), step)
        if fewer is not None:
            order, times = order[fewer], 2 * times
        row, day, seconds, times = row[order], day[order], seconds[order], times[order]
        stability, difficulty = stability[order], difficulty[order]
        if not len(row):
            break
        spread, fate = lots(len(row), step)
        then = np.maximum(day + waited(stability, start.targets[row], weights, spread), 0.0)
        recalled = recall(stability, then - day, weights)
        spent += np.bincount(row, times * seconds * (2 - recalled), rows)
        stability, difficulty = asked(stability, difficulty, recalled, fate < recalled, weights)
        day = then
    begun = stability >= LASTS
    lasting += np.bincount(row[begun], times[begun], rows)
    return Gained(spent, lasting)
