"""The likeliest weights, given answers and what is thought beforehand."""

import numpy as np
import pytest

from cards.fitting.gradient import loss_and_gradient
from cards.fitting.likeliest import LONGEST, STRENGTH, fit
from cards.fitting.prior import HIGHEST, LOGARITHMIC, LOWEST, SPREAD
from cards.fitting.reviews import Reviews
from cards.fitting.steps import lay
from cards.schedule import DEFAULT_WEIGHTS, Schedule
from tests.benchmarks.recovery.histories import history
from tests.benchmarks.recovery.readers import other_weights
from tests.cards.fitting.histories import answers_of, reviews_of
from tests.reference.histories import ITEM


@pytest.fixture(scope="module")
def reviews():
    """Three years of a reader unlike the published defaults, with a dozen books."""
    return history(other_weights, 5, books=12).reviews


def cost_of(laid, weights):
    """Return the log loss and what the prior asks for, from the formula of a Gaussian."""
    weights = np.array(weights)
    ratio = np.log(np.maximum(weights, 1e-3) / np.array(DEFAULT_WEIGHTS))
    off = np.where(LOGARITHMIC, ratio, weights - DEFAULT_WEIGHTS) / SPREAD
    return loss_and_gradient(laid, weights)[0] + STRENGTH * float(off @ off) / 2


def test_no_weights_near_by_are_likelier(reviews):
    """From the weights found no step, in whatever direction, leads to likelier ones."""
    chance = np.random.default_rng(1)
    laid, found = lay(reviews), fit(reviews)
    least = cost_of(laid, found)
    assert least < cost_of(laid, DEFAULT_WEIGHTS) - 1
    for size in (0.003, 0.03, 0.3):
        for _ in range(6):
            near = np.clip(found * np.exp(chance.normal(0, size, 21)), LOWEST, HIGHEST)
            assert cost_of(laid, near) > least - 0.05


def test_the_same_answers_give_the_same_weights(reviews):
    """Fitting twice, or with the items in another order, finds the same weights."""
    found = fit(reviews)
    assert fit(reviews) == found
    backwards = np.argsort(-reviews.items, kind="stable")
    turned = Reviews(
        reviews.items[backwards],
        reviews.kinds[backwards],
        reviews.days[backwards],
        reviews.grades[backwards],
    )
    assert fit(turned) == pytest.approx(found, rel=0.02, abs=0.005)


def test_a_strong_prior_stays_and_a_weak_one_moves(reviews):
    """The stronger the prior, the nearer the weights found to its centre."""
    far = np.abs(np.log(np.array(fit(reviews, strength=0.3)[:4]) / DEFAULT_WEIGHTS[:4]))
    near = np.abs(np.log(np.array(fit(reviews, strength=1e4)[:4]) / DEFAULT_WEIGHTS[:4]))
    assert near.max() < 0.05
    assert far.max() > 0.2


def test_without_a_scored_answer_the_centre_is_found():
    """First answers and further ones of the day teach nothing."""
    assert fit(Reviews.of([], [], [], [])) == DEFAULT_WEIGHTS
    assert fit(reviews_of([[(0, 0), (0, 2)], [(0, 3)]])) == DEFAULT_WEIGHTS


def test_of_an_item_answered_without_end_only_the_first_answers_count():
    """Answers beyond the longest history a fit goes through change nothing, and cost nothing."""
    steps = [(0, 2), *[(3, count % 4) for count in range(LONGEST + 500)]]
    cut = fit(reviews_of([steps[:LONGEST]] * 3))
    assert fit(reviews_of([steps] * 3)) == cut
    assert cut != fit(reviews_of([steps[: LONGEST - 9]] * 3))


@pytest.mark.parametrize(
    "histories",
    [
        [[(0, 0)] + [(1, 0)] * 30] * 30,
        [[(0, 3)] + [(900, 3)] * 10] * 60,
        [[(0, 3)] + [(0, 3)] * 200 + [(30_000, 0)]] * 5,
        [[(0, grade), (700, 3 - grade), (1, grade), (5_000, 3)] for grade in range(4)] * 50,
    ],
    ids=["always blank", "always vivid", "a day of hundreds", "here and there"],
)
def test_even_strange_answers_give_weights_the_schedule_accepts(histories):
    """Whatever was answered, the weights lie in the published ranges and are numbers."""
    found = np.array(fit(reviews_of(histories)))
    assert np.isfinite(found).all()
    assert (found >= LOWEST).all()
    assert (found <= HIGHEST).all()
    assert Schedule(weights=tuple(found)).fold(ITEM, answers_of(histories[0], ITEM)) is not None
