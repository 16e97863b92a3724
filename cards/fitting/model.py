"""The memory model forward over all items at once: how recall was foreseen before each answer.

Source of the formulas: FSRS-6 (Ye, Su & Cao 2022, doi 10.1145/3534678.3539081) as its
published packages compute it; `cards.schedule` alone speaks to the package, and the tests
hold these against it. Stability is carried as its logarithm, which turns the powers of the
formulas into products and keeps them within range. Weights are counted as published, w[0]
to w[20]; grades 0 to 3, from blank to vivid.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from cards.fitting.reviews import Floats, Reviews
from cards.fitting.steps import Laid, Step, lay

LEAST = float(np.log(0.001))
"""Logarithm of the least stability, in days: the published packages let it fall no lower."""
MOST = float(np.log(1e100))
"""A bound no reader comes near: under it every power stays a number."""
EASIEST, HARDEST = 1.0, 10.0
"""Difficulty, least and greatest."""
HAZY, VIVID = np.array((1, 3), dtype=np.int8)


@dataclass(frozen=True, slots=True, eq=False)
class Moment:
    """The memories that answers of one step came upon, and left.

    Attributes:
        stability, difficulty: just before: logarithm of days, and 1 to 10.
        faded: the factor of the forgetting curve times days gone by, over stability in days.
        log_recall, recall: foreseen just before.
        stability_after, difficulty_after: just after.
    """

    stability: Floats
    difficulty: Floats
    faded: Floats
    log_recall: Floats
    recall: Floats
    stability_after: Floats
    difficulty_after: Floats


def predictions(reviews: Reviews, weights: Sequence[float]) -> Floats:
    """Return the recall, 0 to 1, foreseen just before each answer; NaN for an item's first.

    Agrees with `Schedule.fold` and `Schedule.recall` to 1e-9.

    Args:
        reviews: the whole history of each item: its memory begins with its first row.
        weights: the 21 weights of FSRS-6.
    """
    foreseen = np.full(len(reviews), np.nan)
    laid = lay(reviews)
    for step, moment in zip(laid.later, forward(laid, np.array(weights, np.float64)), strict=True):
        foreseen[laid.order[step.rows]] = moment.recall
    return foreseen


def forward(laid: Laid, w: Floats) -> Iterator[Moment]:
    """Carry the memory of every item through its answers; what each step after the first saw."""
    stability, difficulty = begun(laid.first, w)
    for step in laid.later:
        count = len(step.grades)
        stability, difficulty = stability[:count], difficulty[:count]
        faded = factor(w) * step.elapsed * np.exp(-stability)
        log_recall = -w[20] * np.log1p(faded)
        recall = np.exp(log_recall)
        after = _held(_next_stability(step, stability, difficulty, recall, w), LEAST, MOST)
        drawn = _held(drawn_difficulty(step, difficulty, w), EASIEST, HARDEST)
        yield Moment(stability, difficulty, faded, log_recall, recall, after, drawn)
        stability, difficulty = after, drawn


def begun(grades: NDArray[np.int8], w: Floats) -> tuple[Floats, Floats]:
    """Return stability (its logarithm) and difficulty after first answers."""
    stability = np.maximum(np.log(w[:4]), LEAST)
    difficulty = np.clip(first_difficulty(w, np.arange(4, dtype=np.int8)), EASIEST, HARDEST)
    return stability[grades], difficulty[grades]


def factor(w: Floats) -> float:
    """Return the factor of the forgetting curve that makes recall 0.9 after the stability."""
    return float(0.9 ** (-1 / w[20]) - 1)


def first_difficulty(w: Floats, grades: NDArray[np.int8] | np.int8) -> Floats:
    """Return the difficulty after a first answer of each grade, not held to its range."""
    first: Floats = w[4] - np.exp(w[5] * grades) + 1
    return first


def drawn_difficulty(step: Step, difficulty: Floats, w: Floats) -> Floats:
    """Return the difficulty after a step, not held to its range."""
    moved = difficulty - w[6] / 9 * step.off * (HARDEST - difficulty)
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
    risen = w[17] * (step.off[at] + w[18]) - w[19] * stability[at]
    after[at] = stability[at] + np.where(step.grades[at] > 0, np.maximum(risen, 0.0), risen)
    return after


def lapsed_stability(stability: Floats, difficulty: Floats, recall: Floats, w: Floats) -> Floats:
    """Return the logarithm of the stability after a blank, before the published cap."""
    kept = np.log(np.expm1(w[13] * np.log1p(np.exp(stability))))
    after: Floats = np.log(w[11]) - w[12] * np.log(difficulty) + kept + w[14] * (1 - recall)
    return after


def _held(values: Floats, least: float, most: float) -> Floats:
    """Return values held within a range: as `numpy.clip`, at a third of its cost a call."""
    held: Floats = np.minimum(np.maximum(values, least), most)
    return held
