"""What asking an item today is worth, for each second it takes."""

from collections.abc import Sequence

import numpy as np

from cards.sitting.worth_memory import CLEAR, Floats, first
from cards.sitting.worth_table import table

READ_BEFORE = 60.0
"""Days that an item not asked yet counts as having rested since its book was read."""
PATIENCE = 0.5
"""What a first asking counts beside a later one that the model says is worth as much.

Our own choice, by simulation: what is begun has to be carried through, and fewer items well
kept come to more than all of them half kept."""


def worth(
    stability: Floats,
    difficulty: Floats,
    elapsed: Floats,
    seconds: Floats,
    weights: Sequence[float],
) -> Floats:
    """Return what asking each item today is worth, in days of recall for a second.

    It is the price of a second at which asking the item today and waiting are equally good
    (`cards.sitting.worth_table`); 0 where waiting is better even for nothing.

    Args:
        stability: days after which recall has fallen to 0.9; above 0.
        difficulty: 1 to 10.
        elapsed: days since the last answer.
        seconds: what asking takes; above 0.
        weights: the 21 weights of FSRS-6.
    """
    return table(tuple(weights))(stability, difficulty, elapsed) / seconds


def worth_unasked(seconds: Floats, weights: Sequence[float]) -> Floats:
    """Return the same, on the same scale, for items not asked yet.

    Reading and digesting a book are taken to have left what one clear answer leaves, two
    months ago: known a little whether it is asked or not, so that asking it adds the rest.
    """
    stability, difficulty = first(weights)
    rested = np.array([READ_BEFORE])
    read = table(tuple(weights))(
        stability[CLEAR : CLEAR + 1], difficulty[CLEAR : CLEAR + 1], rested
    )
    return PATIENCE * read / seconds
