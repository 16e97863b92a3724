"""Which of many due items are worth asking now."""

from collections.abc import Mapping
from datetime import date

import numpy as np

from cards.kinds.base import KindName
from cards.sitting.columns import Columns, Memories
from cards.sitting.weights import apart
from cards.sitting.worth import worth, worth_unasked
from cards.sitting.worth_memory import Floats
from cards.weighting import PUBLISHED, Weighting

COUNTS: dict[KindName, float] = {KindName.THEME: 2.0}
"""How much an item counts beside others, 1 unless it stands here.

A theme counts double, as a main idea does among ideas (reference, part 4): it holds the whole
book, and since it takes longest it would else always be asked last. Our own convention."""

CLOSE = 2.0
"""How much an item of a book kept close counts beside one kept steadily: our own convention,
as `cards.schedule.aimed` lets it be forgotten half as often."""


def best_due(
    items: Columns,
    day: date,
    seconds: Mapping[KindName, float],
    most: int,
    weighting: Weighting = PUBLISHED,
) -> list[tuple[int, float]]:
    """Return the places of the items worth most a second, the best first, each with its worth.

    Args:
        items: those that are due.
        day: the reader's day.
        seconds: what each kind takes.
        most: how many are returned at the most.
        weighting: the reader's weights.
    """
    count = len(items.kinds)
    few = min(most, count)
    if few <= 0:
        return []
    last = np.array([each.toordinal() for each in items.last_days], dtype=np.float64)
    values = worth_after(np.maximum(day.toordinal() - last, 0.0), items, seconds, weighting)
    best = np.argpartition(-values, few - 1)[:few]
    best = best[np.lexsort((best, -values[best]))]
    return [(int(place), float(values[place])) for place in best]


def worth_after(
    elapsed: Floats, items: Memories, seconds: Mapping[KindName, float], weighting: Weighting
) -> Floats:
    """Return what asking each item is worth a second, so many days after its last answer."""
    costs = np.array([seconds[kind] for kind in items.kinds], dtype=np.float64)
    counts = np.array([COUNTS.get(kind, 1.0) for kind in items.kinds], dtype=np.float64)
    stability = np.asarray(items.stability, dtype=np.float64)
    difficulty = np.asarray(items.difficulty, dtype=np.float64)
    values = np.zeros(len(items.kinds))
    for weights, its in apart(items.kinds, weighting):
        values[its] = worth(stability[its], difficulty[its], elapsed[its], costs[its], weights)
    weighed: Floats = values * counts * np.where(np.asarray(items.close, dtype=bool), CLOSE, 1.0)
    return weighed


def unasked_worth(
    kind: KindName, seconds: Mapping[KindName, float], weighting: Weighting = PUBLISHED
) -> float:
    """Return what asking an item of a kind for the first time is worth a second."""
    first = worth_unasked(np.array([seconds[kind]], dtype=np.float64), weighting.of(kind))
    return float(first[0]) * COUNTS.get(kind, 1.0)
