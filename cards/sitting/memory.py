"""What follows an asking, over arrays: how it changes memory, and when the next one is due.

The formulas are those of FSRS-6, as in `cards.sitting.worth_memory`; the tests hold them
against the published package.
"""

import numpy as np
from numpy.typing import NDArray

from cards.schedule import MAX_INTERVAL
from cards.sitting.worth_memory import BLANK, CLEAR, Floats, Weights, answered, curve

LEAST_STABILITY = 0.001
"""Days; the published packages let stability fall no lower."""


def interval(stability: Floats, target: float | Floats, weights: Weights) -> Floats:
    """Return the whole days after which recall will have fallen to the target, not yet spread.

    Args:
        stability: days, above 0.
        target: retention aimed for, one for all or of each.
        weights: the 21 weights of FSRS-6.
    """
    decay, factor = curve(weights)
    days = stability / factor * (np.asarray(target) ** (1 / decay) - 1)
    whole: Floats = np.clip(np.round(days), 1, MAX_INTERVAL)
    return whole


def asked(
    stability: Floats,
    difficulty: Floats,
    recalled: Floats,
    came_back: NDArray[np.bool_],
    weights: Weights,
) -> tuple[Floats, Floats]:
    """Return stability (days) and difficulty (1 to 10) after a day on which items were asked.

    What came back was clear. What came back blank comes round again in the same sitting, and
    is taken to be clear then: our own simplification.

    Args:
        stability: days, before it.
        difficulty: 1 to 10, before it.
        recalled: the recall predicted just before it.
        came_back: whether each did.
        weights: the 21 weights of FSRS-6.
    """
    clear = answered(stability, difficulty, recalled, CLEAR, weights)
    lapsed, harder = answered(stability, difficulty, recalled, BLANK, weights)
    lapsed = np.maximum(lapsed, LEAST_STABILITY)
    again = np.maximum(np.exp(weights[17] * weights[18]) * lapsed ** -weights[19], 1.0)
    # A difficulty after a clear answer does not depend on the recall before it.
    _, settled = answered(lapsed, harder, np.ones_like(lapsed), CLEAR, weights)
    return (
        np.where(came_back, clear[0], lapsed * again),
        np.where(came_back, clear[1], settled),
    )
