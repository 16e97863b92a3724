"""Items that may be asked before they are due, when the minutes allow."""

from datetime import date, timedelta

import numpy as np

from cards.sitting.columns import Columns
from cards.sitting.weights import weights_of
from cards.sitting.worth_memory import Floats, curve
from cards.weighting import PUBLISHED, Weighting

HALF_WAY = 0.5
"""How far towards forgetting as much as the schedule bears an item must be to be asked early.

With a target of 0.9 it is asked once its recall is under 0.95. Asked sooner than that it would
hardly gain; not asked before it is due, minutes would be left that keep more (simulation,
`tests.benchmarks.composition`: candidates due at 0.95 against 0.9). Our own convention."""


def early(items: Columns, day: date, target: float, weighting: Weighting = PUBLISHED) -> list[int]:
    """Return the places of the items that may be asked on a day, due or not.

    Those asked on the day itself are left out.

    Args:
        items: remembered items.
        day: the reader's day.
        target: retention aimed for.
        weighting: the reader's weights.
    """
    wait = _wait(items, target, weighting)
    last = np.array([each.toordinal() for each in items.last_days], dtype=np.float64)
    elapsed = day.toordinal() - last
    return [int(place) for place in np.flatnonzero((elapsed >= wait) & (elapsed >= 1))]


def first_early(
    items: Columns, day: date, target: float, weighting: Weighting = PUBLISHED
) -> date | None:
    """Return the first day after `day` on which one of the items may be asked, or None."""
    if not items.kinds:
        return None
    last = np.array([each.toordinal() for each in items.last_days], dtype=np.float64)
    days = np.maximum(
        last + np.maximum(np.ceil(_wait(items, target, weighting)), 1.0), day.toordinal() + 1
    )
    return day + timedelta(days=int(days.min()) - day.toordinal())


def _wait(items: Columns, target: float, weighting: Weighting) -> Floats:
    """Return the days after its last answer on which each item may be asked."""
    decay, factor = curve(weights_of(items.kinds, weighting))
    recall = 1 - HALF_WAY * (1 - target)
    share = (recall ** (1 / decay) - 1) / factor
    wait: Floats = share * np.asarray(items.stability, dtype=np.float64)
    return wait
