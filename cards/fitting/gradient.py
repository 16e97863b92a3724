"""The loss of weights over a history, and its gradient, by one pass back through the answers.

What each answer makes of the memory before it is differentiated for all rows at once; going
back from the last step to the first then needs a few products a step. The loss is the sum
of the log losses of what came back: of every answer a day or more after the one before it.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from cards.fitting.model import (
    CLEAR,
    EASIEST,
    HARDEST,
    LEAST,
    MOST,
    VIVID,
    Trace,
    bonus,
    factor,
    first_difficulty,
    forward,
    lapsed_stability,
)
from cards.fitting.records import Floats
from cards.fitting.steps import Laid

Grades = NDArray[np.int8]

LEAST_SURPRISE = 1e-12
"""Recall is taken to stay so far below 1: with it a blank has a loss, however unforeseen."""


@dataclass(frozen=True, slots=True, eq=False)
class _Slopes:
    """How what follows an answer changes with what came before it, a value each laid row.

    Attributes:
        by_stability, by_difficulty, by_recall: of the stability after, by the stability and the
            difficulty before and by the logarithm of recall.
        difficulty: of the difficulty after by the one before.
        recall: of the logarithm of recall by the stability before.
        by_weight: of the stability after, w[8] to w[19] in their order.
    """

    by_stability: Floats
    by_difficulty: Floats
    by_recall: Floats
    difficulty: Floats
    recall: Floats
    by_weight: Floats


def losses(log_recall: Floats, came_back: NDArray[np.bool_]) -> Floats:
    """Return the log loss, in nats, of each answer, from the logarithm of the recall foreseen."""
    held = np.minimum(log_recall, -LEAST_SURPRISE)
    lost: Floats = np.where(came_back, -held, -np.log(-np.expm1(held)))
    return lost


def loss_and_gradient(laid: Laid, w: Floats) -> tuple[float, Floats]:
    """Return the summed log loss, in nats, and its derivative by each of the 21 weights."""
    trace = forward(laid, w)
    loss = float(np.sum(losses(trace.log_recall, laid.came_back)[laid.scored]))
    held = np.minimum(trace.log_recall, -LEAST_SURPRISE)
    surprise = np.where(laid.came_back, -1.0, 1 / np.expm1(-held))
    surprise[~laid.scored] = 0.0
    grades = np.concatenate([step.grades for step in laid.steps])
    elapsed = np.concatenate([step.elapsed for step in laid.steps])
    slopes = _slopes(laid, trace, grades, elapsed, w)
    stability, difficulty = _back(laid, slopes, surprise)
    gradient = np.zeros(21)
    gradient[8:20] = slopes.by_weight @ stability
    on_recall = surprise + stability * slopes.by_recall
    gradient[20] = on_recall @ _by_decay(trace, elapsed, w)
    begins = laid.steps[0]
    inside = trace.stability_after[begins.rows] > LEAST
    gradient[:4] = np.bincount(begins.grades, stability[begins.rows] * inside, 4) / w[:4]
    drawn = trace.difficulty_after
    free = np.where((drawn > EASIEST) & (drawn < HARDEST), difficulty, 0.0)
    gradient[4:8] = _by_difficulty_weights(laid, trace, grades, free, w)
    return loss, gradient


def _back(laid: Laid, slopes: _Slopes, surprise: Floats) -> tuple[Floats, Floats]:
    """Return the derivative of the loss by the stability and the difficulty after each row."""
    stability, difficulty = np.zeros(len(surprise)), np.zeros(len(surprise))
    for step, before in zip(laid.steps[:0:-1], laid.steps[-2::-1], strict=True):
        at = step.rows
        earlier = slice(before.rows.start, before.rows.start + len(step.grades))
        after = stability[at]
        through = slopes.by_stability[at] + slopes.by_recall[at] * slopes.recall[at]
        stability[earlier] = after * through + surprise[at] * slopes.recall[at]
        difficulty[earlier] = (
            after * slopes.by_difficulty[at] + difficulty[at] * slopes.difficulty[at]
        )
    return stability, difficulty


def _slopes(laid: Laid, trace: Trace, grades: Grades, elapsed: Floats, w: Floats) -> _Slopes:
    rows = len(grades)
    by_stability, by_difficulty, by_recall = np.zeros(rows), np.zeros(rows), np.zeros(rows)
    by_weight = np.zeros((12, rows))
    recall = np.exp(trace.log_recall)
    begun = laid.steps[0].rows.stop
    later, back = elapsed >= 1, grades > 0

    at = np.flatnonzero(later & back)
    s, d, r = trace.stability[at], trace.difficulty[at], recall[at]
    plain = np.exp(w[8] - w[9] * s) * (11 - d)
    spaced = np.expm1(w[10] * (1 - r))
    size = bonus(w)[grades[at]]
    whole = 1 + plain * spaced * size
    share = (whole - 1) / whole
    by_spacing = plain * size * (spaced + 1) / whole
    by_stability[at] = 1 - w[9] * share
    by_difficulty[at] = -share / (11 - d)
    by_recall[at] = -w[10] * by_spacing * r
    by_weight[0, at] = share
    by_weight[1, at] = -share * s
    by_weight[2, at] = by_spacing * (1 - r)
    by_weight[7, at] = np.where(grades[at] == 1, plain * spaced / whole, 0.0)
    by_weight[8, at] = np.where(grades[at] == 3, plain * spaced / whole, 0.0)

    at = np.flatnonzero(later & ~back)
    s, d, r = trace.stability[at], trace.difficulty[at], recall[at]
    capped = lapsed_stability(s, d, r, w) > s - w[17] * w[18]
    kept = np.log1p(np.exp(s))
    steep = -1 / np.expm1(-w[13] * kept)
    by_stability[at] = np.where(capped, 1.0, steep * w[13] * -np.expm1(-kept))
    by_difficulty[at] = np.where(capped, 0.0, -w[12] / d)
    by_recall[at] = np.where(capped, 0.0, -w[14] * r)
    by_weight[3, at] = np.where(capped, 0.0, 1 / w[11])
    by_weight[4, at] = np.where(capped, 0.0, -np.log(d))
    by_weight[5, at] = np.where(capped, 0.0, steep * kept)
    by_weight[6, at] = np.where(capped, 0.0, 1 - r)
    by_weight[9, at] = np.where(capped, -w[18], 0.0)
    by_weight[10, at] = np.where(capped, -w[17], 0.0)

    at = begun + np.flatnonzero(~later[begun:])
    s, g = trace.stability[at], grades[at]
    moves = (g == 0) | (w[17] * (g - CLEAR + w[18]) - w[19] * s > 0)
    by_stability[at] = np.where(moves, 1 - w[19], 1.0)
    by_weight[9, at] = np.where(moves, g - CLEAR + w[18], 0.0)
    by_weight[10, at] = np.where(moves, w[17], 0.0)
    by_weight[11, at] = np.where(moves, -s, 0.0)

    inside = (trace.stability_after > LEAST) & (trace.stability_after < MOST)
    drawn = trace.difficulty_after
    free = (drawn > EASIEST) & (drawn < HARDEST)
    held = factor(w) * elapsed * np.exp(-trace.stability)
    return _Slopes(
        by_stability * inside,
        by_difficulty * inside,
        by_recall * inside,
        np.where(free, (1 - w[7]) * (1 + w[6] * (grades - CLEAR) / 9), 0.0),
        w[20] * held / (1 + held),
        by_weight * inside,
    )


def _by_decay(trace: Trace, elapsed: Floats, w: Floats) -> Floats:
    """Return how the logarithm of recall changes with w[20]."""
    whole = factor(w) + 1
    held = (whole - 1) * elapsed * np.exp(-trace.stability)
    widened = whole * np.log(0.9) / (w[20] ** 2 * (whole - 1))
    changed: Floats = -np.log1p(held) - w[20] * held / (1 + held) * widened
    return changed


def _by_difficulty_weights(
    laid: Laid, trace: Trace, grades: Grades, free: Floats, w: Floats
) -> Floats:
    """Return the derivative by w[4] to w[7], from that by each difficulty held to its range."""
    begun = laid.steps[0].rows.stop
    first, first_grades = free[:begun], grades[:begun]
    later, off = free[begun:], grades[begun:] - CLEAR
    before = trace.difficulty[begun:]
    room = (HARDEST - before) / 9
    moved = before - w[6] * off * room
    return np.array(
        [
            first.sum() + w[7] * later.sum(),
            -(first @ (first_grades * np.exp(w[5] * first_grades)))
            - w[7] * 3 * np.exp(3 * w[5]) * later.sum(),
            -(1 - w[7]) * (later @ (off * room)),
            later @ (float(first_difficulty(w, VIVID)) - moved),
        ]
    )
