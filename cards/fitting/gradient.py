"""The loss of weights over a history, and its gradient, by one pass back through the answers.

The loss is the sum of the log losses of what came back, of every answer a day or more after
the item's one before. Going back, each step is told how the loss changes with the memory it
left, and tells how it changes with the memory it came upon, adding what it owes each weight
(reverse accumulation).
"""

import numpy as np
from numpy.typing import NDArray

from cards.fitting.model import (
    EASIEST,
    HARDEST,
    HAZY,
    LEAST,
    MOST,
    VIVID,
    Moment,
    begun,
    bonus,
    factor,
    first_difficulty,
    forward,
    lapsed_stability,
)
from cards.fitting.reviews import Floats
from cards.fitting.steps import Laid, Places, Step

LEAST_SURPRISE = 1e-12
"""Recall is taken to stay so far below 1: with it a blank has a loss, however unforeseen."""


def losses(recall: Floats, came_back: NDArray[np.bool_]) -> Floats:
    """Return the log loss, in nats, of each answer whose recall was foreseen."""
    return -np.log(np.where(came_back, recall, np.maximum(1 - recall, LEAST_SURPRISE)))


def loss_and_gradient(laid: Laid, w: Floats) -> tuple[float, Floats]:
    """Return the summed log loss, in nats, and its derivative by each of the 21 weights."""
    moments = tuple(forward(laid, w))
    gradient = np.zeros(21)
    loss = 0.0
    by_stability, by_difficulty = np.zeros((2, len(laid.first)))
    for step, moment in zip(reversed(laid.later), reversed(moments), strict=True):
        count = len(step.grades)
        surprise = np.maximum(1 - moment.recall[step.lapsed], LEAST_SURPRISE)
        loss -= float(moment.log_recall[step.recalled].sum() + np.log(surprise).sum())
        by_log_recall = np.zeros(count)
        by_log_recall[step.recalled] = -1.0
        by_log_recall[step.lapsed] = 1 / surprise - 1
        by_stability[:count], by_difficulty[:count] = _back(
            step, moment, (by_stability[:count], by_difficulty[:count], by_log_recall), w, gradient
        )
    _back_to_the_first(laid.first, by_stability, by_difficulty, w, gradient)
    return loss, gradient


def _back(
    step: Step, moment: Moment, by: tuple[Floats, Floats, Floats], w: Floats, gradient: Floats
) -> tuple[Floats, Floats]:
    """Go back over one step.

    Args:
        step: the answers.
        moment: the memories they came upon, and left.
        by: how the loss changes with the stability and the difficulty after, and with the
            logarithm of recall as far as this step is scored.
        w: the weights.
        gradient: what each weight is owed is added to it.

    Returns:
        How the loss changes with the stability and the difficulty before.
    """
    by_stability, by_difficulty, by_log_recall = by
    left = moment.stability_after
    by_stability = by_stability * ((left > LEAST) & (left < MOST))
    before = np.empty_like(by_stability)
    harder = _back_to_difficulty(step, moment, by_difficulty, w, gradient)
    for at, back in (
        (step.recalled, _back_from_recalled),
        (step.lapsed, _back_from_lapsed),
        (step.same_day, _back_from_same_day),
    ):
        if len(at):
            through, on_difficulty, on_log_recall = back(
                step, moment, at, by_stability[at], w, gradient
            )
            before[at] = through
            harder[at] += on_difficulty
            by_log_recall[at] += on_log_recall
    share = moment.faded / (1 + moment.faded)
    whole = factor(w) + 1
    widened = whole * np.log(0.9) / (w[20] * (whole - 1))
    gradient[20] += by_log_recall @ (moment.log_recall / w[20] - widened * share)
    return before + by_log_recall * (w[20] * share), harder


def _back_to_difficulty(
    step: Step, moment: Moment, by: Floats, w: Floats, gradient: Floats
) -> Floats:
    left = moment.difficulty_after
    by = by * ((left > EASIEST) & (left < HARDEST))
    off = step.off
    room = (HARDEST - moment.difficulty) / 9
    whole = by.sum()
    moved = by @ (off * room)
    gradient[4] += w[7] * whole
    gradient[5] -= w[7] * whole * 3 * np.exp(3 * w[5])
    gradient[6] -= (1 - w[7]) * moved
    gradient[7] += whole * first_difficulty(w, VIVID) - by @ moment.difficulty + w[6] * moved
    through: Floats = by * ((1 - w[7]) * (1 + w[6] / 9 * off))
    return through


def _back_from_recalled(
    step: Step, moment: Moment, at: Places, by: Floats, w: Floats, gradient: Floats
) -> tuple[Floats, Floats, Floats]:
    s, d, r, g = moment.stability[at], moment.difficulty[at], moment.recall[at], step.grades[at]
    plain = np.exp(w[8] - w[9] * s) * (11 - d)
    spaced = np.expm1(w[10] * (1 - r))
    size = bonus(w)[g]
    by_growth = by / (1 + plain * spaced * size)
    by_size = by_growth * plain * spaced
    by_logarithm = by_size * size
    by_spacing = by_growth * plain * size * (spaced + 1)
    gradient[8] += by_logarithm.sum()
    gradient[9] -= by_logarithm @ s
    gradient[10] += by_spacing @ (1 - r)
    gradient[15] += by_size @ (g == HAZY)
    gradient[16] += by_size @ (g == VIVID)
    return by - w[9] * by_logarithm, -by_logarithm / (11 - d), -w[10] * by_spacing * r


def _back_from_lapsed(
    _: Step, moment: Moment, at: Places, by: Floats, w: Floats, gradient: Floats
) -> tuple[Floats, Floats, Floats]:
    s, d, r = moment.stability[at], moment.difficulty[at], moment.recall[at]
    capped = lapsed_stability(s, d, r, w) > s - w[17] * w[18]
    by_cap, by = by * capped, by * ~capped
    kept = np.log1p(np.exp(s))
    steep = -by / np.expm1(-w[13] * kept)
    gradient[11] += by.sum() / w[11]
    gradient[12] -= by @ np.log(d)
    gradient[13] += steep @ kept
    gradient[14] += by @ (1 - r)
    gradient[17] -= w[18] * by_cap.sum()
    gradient[18] -= w[17] * by_cap.sum()
    return by_cap - steep * w[13] * np.expm1(-kept), -w[12] * by / d, -w[14] * by * r


def _back_from_same_day(
    step: Step, moment: Moment, at: Places, by: Floats, w: Floats, gradient: Floats
) -> tuple[Floats, Floats, Floats]:
    s, off = moment.stability[at], step.off[at] + w[18]
    moves = by * ((step.grades[at] == 0) | (w[17] * off - w[19] * s > 0))
    gradient[17] += moves @ off
    gradient[18] += w[17] * moves.sum()
    gradient[19] -= moves @ s
    none = np.zeros(len(at))
    return by - w[19] * moves, none, none


def _back_to_the_first(
    grades: NDArray[np.int8],
    by_stability: Floats,
    by_difficulty: Floats,
    w: Floats,
    gradient: Floats,
) -> None:
    every = np.arange(4, dtype=np.int8)
    stability, difficulty = begun(every, w)
    summed = np.bincount(grades, by_stability, 4) * (stability > LEAST)
    gradient[:4] += summed / w[:4]
    summed = np.bincount(grades, by_difficulty, 4)
    summed *= (difficulty > EASIEST) & (difficulty < HARDEST)
    gradient[4] += summed.sum()
    gradient[5] -= summed @ (every * np.exp(w[5] * every))
