"""The memory model forward over all items at once: how recall was foreseen before each answer.

Source of the formulas: FSRS-6 (Ye, Su & Cao 2022, doi 10.1145/3534678.3539081) as its
published packages compute it; `cards.schedule` alone speaks to the package, and the tests
hold these against it. Stability is carried as its logarithm, which turns the powers of the
formulas into products and keeps them within range. Weights are counted as published, w[0]
to w[20]; grades 0 to 3, from blank to vivid.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from cards.fitting.records import Floats, Reviews
from cards.fitting.steps import Laid, Step, lay

LEAST = float(np.log(0.001))
"""Logarithm of the least stability, in days: the published packages let it fall no lower."""
MOST = float(np.log(1e100))
"""A bound no reader comes near: under it every power stays a number."""
EASIEST, HARDEST = 1.0, 10.0
"""Difficulty, least and greatest."""
CLEAR = 2
VIVID = np.array(3, np.int8)


@dataclass(frozen=True, slots=True, eq=False)
class Trace:
    """What a pass leaves behind, a value each laid row.

    Attributes:
        stability, difficulty: just before the answer: logarithm of days, and 1 to 10; of no
            meaning in the rows of the first step.
        stability_after, difficulty_after: just after it.
        log_recall: logarithm of the recall foreseen just before it; 0 in the first step.
    """

    stability: Floats
    difficulty: Floats
    stability_after: Floats
    difficulty_after: Floats
    log_recall: Floats


def predictions(reviews: Reviews, weights: Sequence[float]) -> Floats:
    """Return the recall, 0 to 1, foreseen just before each answer; NaN for an item's first.

    Agrees with `Schedule.fold` and `Schedule.recall` to 1e-9.

    Args:
        reviews: the whole history of each item: its memory begins with its first row.
        weights: the 21 weights of FSRS-6.
    """
    foreseen = np.empty(len(reviews))
    if len(reviews):
        laid = lay(reviews)
        foreseen[laid.order] = np.exp(forward(laid, np.asarray(weights, np.float64)).log_recall)
    foreseen[reviews.first] = np.nan
    return foreseen


def forward(laid: Laid, w: Floats) -> Trace:
    """Carry the memory of every item through its answers."""
    trace = Trace(*(np.zeros(len(laid.order)) for _ in range(5)))
    first = laid.steps[0]
    stability = np.maximum(np.log(w[first.grades]), LEAST)
    difficulty = np.clip(first_difficulty(w, first.grades), EASIEST, HARDEST)
    trace.stability_after[first.rows] = stability
    trace.difficulty_after[first.rows] = difficulty
    for step in laid.steps[1:]:
        count = len(step.grades)
        stability, difficulty = stability[:count], difficulty[:count]
        log_recall = -w[20] * np.log1p(factor(w) * step.elapsed * np.exp(-stability))
        trace.stability[step.rows] = stability
        trace.difficulty[step.rows] = difficulty
        trace.log_recall[step.rows] = log_recall
        stability = np.clip(
            _next_stability(step, stability, difficulty, np.exp(log_recall), w), LEAST, MOST
        )
        difficulty = np.clip(drawn_difficulty(step, difficulty, w), EASIEST, HARDEST)
        trace.stability_after[step.rows] = stability
        trace.difficulty_after[step.rows] = difficulty
    return trace


def factor(w: Floats) -> float:
    """Return the factor of the forgetting curve that makes recall 0.9 after the stability."""
    return float(0.9 ** (-1 / w[20]) - 1)


def first_difficulty(w: Floats, grades: NDArray[np.int8]) -> Floats:
    """Return the difficulty after a first answer of each grade, not held to its range."""
    first: Floats = w[4] - np.exp(w[5] * grades) + 1
    return first


def drawn_difficulty(step: Step, difficulty: Floats, w: Floats) -> Floats:
    """Return the difficulty after a step, not held to its range."""
    moved = difficulty - w[6] * (step.grades - CLEAR) * (HARDEST - difficulty) / 9
    # The packages draw it to the difficulty of a first vivid answer before that is held to range.
    drawn: Floats = w[7] * first_difficulty(w, VIVID) + (1 - w[7]) * moved
    return drawn


def bonus(w: Floats) -> Floats:
    """Return how much more each grade makes of a success; blank has none."""
    return np.array([np.nan, w[15], 1.0, w[16]])


def _next_stability(
    step: Step, stability: Floats, difficulty: Floats, recall: Floats, w: Floats
) -> Floats:
    after = np.empty_like(stability)
    at = step.recalled
    growth = (
        np.exp(w[8] - w[9] * stability[at])
        * (11 - difficulty[at])
        * np.expm1(w[10] * (1 - recall[at]))
        * bonus(w)[step.grades[at]]
    )
    after[at] = stability[at] + np.log1p(growth)
    at = step.lapsed
    after[at] = np.minimum(
        lapsed_stability(stability[at], difficulty[at], recall[at], w),
        stability[at] - w[17] * w[18],
    )
    at = step.same_day
    grades = step.grades[at]
    risen = w[17] * (grades - CLEAR + w[18]) - w[19] * stability[at]
    after[at] = stability[at] + np.where(grades > 0, np.maximum(risen, 0.0), risen)
    return after


def lapsed_stability(stability: Floats, difficulty: Floats, recall: Floats, w: Floats) -> Floats:
    """Return the logarithm of the stability after a blank, before the published cap."""
    kept = np.log(np.expm1(w[13] * np.log1p(np.exp(stability))))
    after: Floats = np.log(w[11]) - w[12] * np.log(difficulty) + kept + w[14] * (1 - recall)
    return after
