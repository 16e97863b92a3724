"""The memory model over arrays: FSRS-6, a day or more between two askings.

Source of the formulas: Ye, Su & Cao 2022, doi 10.1145/3534678.3539081, as the published
packages of FSRS-6 compute them. `cards.schedule` alone speaks to the package itself; the
tests hold these against it. Grades are counted 0 to 3: blank, hazy, clear, vivid.
"""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Weights = Sequence[float] | Floats
"""The 21 weights of FSRS-6; or of many items side by side, a row a weight, a column an item."""

BLANK, HAZY, CLEAR, VIVID = range(4)


def recall(stability: Floats, elapsed: Floats, weights: Weights) -> Floats:
    """Return the chance, 0 to 1, that items are recalled so many days after their last answer.

    Args:
        stability: days after which recall has fallen to 0.9; above 0.
        elapsed: days since the last answer; 0 or more. Both broadcast.
        weights: the 21 weights of FSRS-6.
    """
    decay, factor = curve(weights)
    fallen: Floats = (1 + factor * elapsed / stability) ** decay
    return fallen


def curve(weights: Weights) -> tuple[float | Floats, float | Floats]:
    """Return the exponent of the forgetting curve and the factor that makes R(S, S) 0.9."""
    decay = -weights[20]
    return decay, 0.9 ** (1 / decay) - 1


def first(weights: Weights) -> tuple[Floats, Floats]:
    """Return stability (days) and difficulty (1 to 10) after a first answer, by grade."""
    grades = np.arange(4)
    difficulty = _first_difficulty(weights, grades)
    return np.array(weights[:4], dtype=np.float64), np.clip(difficulty, 1, 10)


def answered(
    stability: Floats, difficulty: Floats, recalled: Floats, grade: int, weights: Weights
) -> tuple[Floats, Floats]:
    """Return stability (days) and difficulty (1 to 10) after one more answer, all of one grade.

    Args:
        stability: days, before it; all three broadcast.
        difficulty: 1 to 10, before it.
        recalled: the recall predicted just before it.
        grade: 0 to 3.
        weights: the 21 weights of FSRS-6.
    """
    w = weights
    shift = -w[6] * (grade - 2) * (10 - difficulty) / 9
    drawn = w[7] * _first_difficulty(w, np.array(VIVID)) + (1 - w[7]) * (difficulty + shift)
    harder = np.clip(drawn, 1, 10)
    if grade == BLANK:
        raw = (
            w[11]
            * difficulty ** -w[12]
            * ((stability + 1) ** w[13] - 1)
            * np.exp(w[14] * (1 - recalled))
        )
        lapsed: Floats = np.minimum(raw, stability / np.exp(w[17] * w[18]))
        return lapsed, harder
    bonus = {HAZY: w[15], CLEAR: 1.0, VIVID: w[16]}[grade]
    growth = (
        np.exp(w[8])
        * (11 - difficulty)
        * stability ** -w[9]
        * (np.exp(w[10] * (1 - recalled)) - 1)
        * bonus
    )
    return stability * (1 + growth), harder


def _first_difficulty(weights: Weights, grades: NDArray[np.int64]) -> Floats:
    """Return the difficulty after a first answer, not yet held to 1 to 10.

    The drawing back to that of a vivid answer uses it so: where it is held first, the
    packages' published values are missed.
    """
    drop: Floats = np.exp(weights[5] * grades)
    return weights[4] - drop + 1
