"""The loss of weights, and its derivative by each of them."""

import numpy as np
import pytest
from hypothesis import given, settings
from scipy.optimize import approx_fprime
from sklearn.metrics import log_loss

from cards.fitting.gradient import loss_and_gradient, losses
from cards.fitting.model import predictions
from cards.fitting.prior import HIGHEST, LOWEST
from cards.fitting.steps import lay
from cards.schedule import DEFAULT_WEIGHTS
from tests.benchmarks.recovery.histories import history
from tests.benchmarks.recovery.readers import other_weights
from tests.cards.fitting.histories import HISTORIES, reviews_of


def loss_of(laid, weights):
    """Return the loss alone."""
    return loss_and_gradient(laid, np.array(weights))[0]


@settings(max_examples=25)
@given(HISTORIES)
def test_the_loss_is_the_sum_of_what_the_predictions_lose(histories):
    """Summed are the log losses of all answers a day or more after one before.

    Source: scikit-learn's `log_loss` of the same predictions.
    """
    reviews = reviews_of(histories)
    scored = reviews.scored
    if not scored.any():
        assert loss_of(lay(reviews), DEFAULT_WEIGHTS) == 0
        return
    recall = predictions(reviews, DEFAULT_WEIGHTS)[scored]
    expected = log_loss(reviews.came_back[scored], recall, normalize=False, labels=[False, True])
    assert loss_of(lay(reviews), DEFAULT_WEIGHTS) == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize("seed", range(2))
def test_the_gradient_is_what_small_steps_show(seed):
    """The derivative by each weight is the slope between two losses near by.

    Source: SciPy's `approx_fprime`, taken to both sides.
    """
    chance = np.random.default_rng(seed)
    laid = lay(history(other_weights, seed, books=2).reviews)
    w = np.array(DEFAULT_WEIGHTS) * np.exp(chance.normal(0, 0.2, 21))
    w[7] = 0.03
    w = np.clip(w, LOWEST * 1.1 + 1e-3, HIGHEST * 0.9)
    _, gradient = loss_and_gradient(laid, w)
    step = 1e-6 * np.maximum(w, 0.01)
    ahead = approx_fprime(w, lambda each: loss_of(laid, each), step)
    behind = approx_fprime(w, lambda each: loss_of(laid, each), -step)
    np.testing.assert_allclose(gradient, (ahead + behind) / 2, rtol=2e-4, atol=2e-4)


def test_the_gradient_holds_where_a_blank_meets_the_published_cap():
    """A tiny stability, long unasked, is capped after a blank: only w[17] and w[18] matter then."""
    laid = lay(reviews_of([[(0, 0), (365, 0), (3, 2)]]))
    w = np.array(DEFAULT_WEIGHTS)
    w[0] = 0.01
    _, gradient = loss_and_gradient(laid, w)
    for number in (0, 11, 14, 17, 18, 20):
        ahead, behind = w.copy(), w.copy()
        ahead[number] += 1e-6 * w[number]
        behind[number] -= 1e-6 * w[number]
        slope = (loss_of(laid, ahead) - loss_of(laid, behind)) / (2e-6 * w[number])
        assert gradient[number] == pytest.approx(slope, rel=1e-4, abs=1e-6)
    assert gradient[11] == 0
    assert gradient[17] != 0


def test_what_was_thought_certain_loses_much_but_not_everything():
    """A blank where recall was foreseen as 1 has a finite loss; what came back then has none."""
    lost = losses(np.array([1.0, 1.0, 0.5]), np.array([False, True, False]))
    assert lost == pytest.approx([27.631021, 0.0, 0.693147])


@pytest.mark.parametrize(("number", "weight"), [(0, 0.0005), (11, 0.001)])
def test_a_weight_that_leaves_stability_at_its_floor_changes_nothing(number, weight):
    """Where a first blank, or a later one, leaves the least stability, its weight has no slope."""
    laid = lay(reviews_of([[(0, 0), (1, 0), (3, 2)]]))
    w = np.array(DEFAULT_WEIGHTS)
    w[number] = weight
    assert loss_and_gradient(laid, w)[1][number] == 0
    w[number] = DEFAULT_WEIGHTS[number]
    assert loss_and_gradient(laid, w)[1][number] != 0
