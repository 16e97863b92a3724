"""What follows an answer, over arrays: the next interval, and a second asking the same day.

The formulas are FSRS-6, as `cards.sitting.worth_memory` gives the others; the tests hold them
against the published package.
"""

import numpy as np

from cards.schedule import MAX_INTERVAL
from cards.sitting.worth_memory import BLANK, CLEAR, Floats, Weights, answered, curve

LEAST_STABILITY = 0.001
"""Days; the published packages let stability fall no lower."""


def interval(stability: Floats, target: float | Floats, weights: Weights) -> Floats:
    """Return the whole days after which recall will have fallen to the target.

    Args:
        stability: days, above 0.
        target: retention aimed for, one for all or of each.
        weights: the 21 weights of FSRS-6.
    """
    decay, factor = curve(weights)
    days = stability / factor * (np.asarray(target) ** (1 / decay) - 1)
    whole: Floats = np.clip(np.round(days), 1, MAX_INTERVAL)
    return whole


def came_back(
    stability: Floats, difficulty: Floats, recalled: Floats, weights: Weights
) -> tuple[Floats, Floats]:
    """Return stability (days) and difficulty after an answer that was clear.

    Args:
        stability, difficulty: before it.
        recalled: the recall predicted just before it.
        weights: the 21 weights of FSRS-6.
    """
    return answered(stability, difficulty, recalled, CLEAR, weights)


def came_back_later(
    stability: Floats, difficulty: Floats, recalled: Floats, weights: Weights
) -> tuple[Floats, Floats]:
    """Return stability (days) and difficulty after a blank, and a clear answer the same day.

    What came back blank comes round again in the sitting; that it comes back then is our own
    simplification. Arguments as those of `came_back`.
    """
    lapsed, harder = answered(stability, difficulty, recalled, BLANK, weights)
    lapsed = np.maximum(lapsed, LEAST_STABILITY)
    # The second answer counts as one after no day at all, for which recall is certain.
    _, settled = answered(lapsed, harder, np.ones_like(lapsed), CLEAR, weights)
    growth = np.exp(weights[17] * weights[18]) * lapsed ** -weights[19]
    return lapsed * np.maximum(growth, 1.0), settled
