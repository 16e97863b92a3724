"""Whether one weighting foresees better than another, and how sure that is."""

from dataclasses import replace

import numpy as np
import pytest
import statsmodels.api as sm
from sklearn.metrics import log_loss

from cards.fitting.judging import better, clustered_error, compared
from cards.fitting.model import predictions
from cards.fitting.records import Comparison
from cards.fitting.reviews import KINDS
from cards.schedule import DEFAULT_WEIGHTS
from cards.weighting import PUBLISHED, Weighting
from tests.benchmarks.recovery.histories import history
from tests.benchmarks.recovery.readers import other_weights

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
    assert not better(Comparison(738_000, 2.0, 0.5, error), 2.0)


def test_better_is_a_gain_beyond_so_many_errors():
    """A gain of just two errors is not yet beyond two."""
    comparison = Comparison(738_000, 0.5, 0.25, 0.125)
    assert not better(comparison, 2.0)
    assert better(comparison, 1.9)


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
