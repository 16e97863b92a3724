"""Whether one weighting foresees better than another, and how sure that is."""

from dataclasses import replace

import numpy as np
import pytest
import statsmodels.api as sm
from sklearn.metrics import log_loss

from cards.fitting.gradient import losses
from cards.fitting.judging import better, clustered_error, compared
from cards.fitting.model import predictions
from cards.fitting.records import Comparison
from cards.fitting.reviews import KINDS
from cards.schedule import DEFAULT_WEIGHTS
from cards.weighting import PUBLISHED, Weighting
from tests.benchmarks.recovery.histories import history
from tests.benchmarks.recovery.readers import other_weights
from tests.cards.fitting.histories import reviews_of

_GRADES = {
    "days": [[0, 2, 2, 0, 2, 0]] * 20,
    "items": [[0] * 6, [2] * 6] * 10,
}
"""Of items asked on the same few days: what each came back as, on days alike or items alike."""
OTHERS = (*(2 * weight for weight in DEFAULT_WEIGHTS[:4]), *DEFAULT_WEIGHTS[4:])


@pytest.mark.parametrize("seed", range(3))
def test_the_clustered_error_is_statsmodels_own(seed):
    """The standard error of a mean of clustered values is that of a regression on a constant.

    Source: statsmodels, OLS with cluster-robust covariance and its usual correction.
    """
    chance = np.random.default_rng(seed)
    clusters = chance.integers(0, 12, 80)
    values = chance.normal(size=80) + chance.normal(size=12)[clusters]
    fitted = sm.OLS(values, np.ones(80)).fit(cov_type="cluster", cov_kwds={"groups": clusters})
    assert clustered_error(values, clusters) == pytest.approx(fitted.bse[0], rel=1e-9)


def test_of_one_cluster_nothing_is_known():
    """Where all values stand in one cluster, no difference is beyond doubt."""
    error = clustered_error(np.array([1.0, 2.0]), np.array([7, 7]))
    assert error == float("inf")
    assert not better(Comparison(738_000, 2.0, 0.5, error), 1_000)


@pytest.mark.parametrize(
    ("gain", "answers", "kind", "found"),
    [
        (0.25, 1_000, False, False),
        (0.26, 1_000, False, True),
        (0.26, 1_000, True, False),
        (0.35, 1_000, True, True),
        (0.40, 11, False, False),
        (0.40, 12, False, True),
        (0.40, 16, True, False),
        (0.40, 17, True, True),
    ],
)
def test_better_is_a_gain_beyond_its_errors_and_at_odds(gain, answers, kind, found):
    """A gain lies beyond 2 errors and odds of 100 to 1; for a kind 2.75 and 800 to 1.

    Source: ln 100 = 4.605 and ln 800 = 6.685 nats, by hand.
    """
    assert better(Comparison(738_000, 0.5, 0.5 - gain, 0.125), answers, kind=kind) is found


def test_both_losses_are_of_the_held_out_answers_alone():
    """Each loss is the mean over the held-out rows, memories carried over the whole history.

    Source: scikit-learn's `log_loss` of the same predictions.
    """
    reviews = history(other_weights, 1, books=5).reviews
    held_out = reviews.scored & (reviews.days >= np.quantile(reviews.days, 0.8))
    found = compared(reviews, held_out, PUBLISHED, Weighting(OTHERS))
    came_back = reviews.came_back[held_out]
    before = log_loss(came_back, predictions(reviews, DEFAULT_WEIGHTS)[held_out])
    after = log_loss(came_back, predictions(reviews, OTHERS)[held_out])
    assert found.in_force == pytest.approx(before, rel=1e-9)
    assert found.proposed == pytest.approx(after, rel=1e-9)
    assert found.from_day == reviews.days[held_out].min()


def test_a_kind_is_foreseen_by_its_own_weights():
    """What only one kind's weights change, only that kind's answers feel."""
    reviews = history(other_weights, 1, books=5).reviews
    own = replace(PUBLISHED, by_kind=((KINDS[2], OTHERS),))
    of_kind = reviews.scored & (reviews.kinds == 2)
    assert compared(reviews, of_kind, PUBLISHED, own).gain != 0
    assert compared(reviews, reviews.scored & ~of_kind, PUBLISHED, own).gain == 0


@pytest.mark.parametrize("together", ["days", "items"])
def test_the_error_is_the_larger_of_those_by_item_and_by_day(together):
    """Days of fever, and items misunderstood, each make a gain less sure than single answers."""
    apart = 7 if together == "items" else 0
    steps = [
        [(0, 2), (2 + apart * item, row[0]), *((1, grade) for grade in row[1:])]
        for item, row in enumerate(_GRADES[together])
    ]
    reviews = reviews_of(steps)
    found = compared(reviews, reviews.scored, PUBLISHED, Weighting(OTHERS))
    lost = [
        losses(predictions(reviews, weights)[reviews.scored], reviews.came_back[reviews.scored])
        for weights in (DEFAULT_WEIGHTS, OTHERS)
    ]
    errors = {
        "items": clustered_error(lost[0] - lost[1], reviews.items[reviews.scored]),
        "days": clustered_error(lost[0] - lost[1], reviews.days[reviews.scored]),
    }
    assert max(errors, key=errors.__getitem__) == together
    assert found.error == pytest.approx(errors[together], rel=1e-9)
