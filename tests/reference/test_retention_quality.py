"""How well recall was foreseen, against published values and scikit-learn.

Published: the examples in the docstrings of scikit-learn's `brier_score_loss` (.0375),
`log_loss` (.21616), `roc_auc_score` (.75) and `calibration_curve`; of the last one's bins the
root mean square (.153206) and the expected error (.138889) were computed with 50-digit decimal
arithmetic. On made-up answers every figure is computed once more by scikit-learn 1.9 or NumPy.
"""

import numpy as np
import pytest
from sklearn.calibration import calibration_curve
from sklearn.metrics import brier_score_loss, log_loss, roc_auc_score

from cards.retention.calibration import by_count, by_width, expected_error, root_error
from cards.retention.guesses import Guess
from cards.retention.losses import loss, losses_of, standard_error
from cards.retention.quality import quality_of
from cards.retention.tally import total
from cards.retention.telling_apart import auc
from tests.cards.retention.telling import foretold

BINS_CAME = [0, 0, 0, 0, 1, 1, 1, 1, 1]
BINS_GIVEN = [0.1, 0.2, 0.3, 0.4, 0.65, 0.7, 0.8, 0.9, 1]


def cells_of(came, given):
    """Return what is counted by thousandths predicted."""
    return foretold(came, given).thousandths


def losses(came, given):
    """Return the mean losses."""
    return losses_of(total(cells_of(came, given).values()))


def made_up(seed, answers=400, places=None):
    """Return made-up outcomes and predictions, mostly high, more or less right."""
    chance = np.random.default_rng(seed)
    given = chance.beta(5, 1.2, answers).clip(0.002, 0.998)
    came = (chance.random(answers) < given**1.3).astype(int)
    return came, given if places is None else given.round(places)


def test_the_brier_score_is_the_published_one():
    """The mean squared error of four predictions is .0375."""
    assert losses([0, 1, 1, 0], [0.1, 0.9, 0.8, 0.3]).brier == pytest.approx(0.0375, abs=1e-9)


def test_the_log_loss_is_the_published_one():
    """The mean loss of four predictions is .216162."""
    assert losses([0, 1, 1, 0], [0.1, 0.9, 0.8, 0.35]).log_loss == pytest.approx(0.216162, abs=5e-7)


def test_the_area_is_the_published_one():
    """Three of four pairs stand the right way round."""
    assert auc(cells_of([0, 0, 1, 1], [0.1, 0.4, 0.35, 0.8])).area == 0.75


def test_the_calibration_curve_is_the_published_one():
    """Three bins of equal width, their means, shares, root and expected error."""
    bins = by_width(cells_of(BINS_CAME, BINS_GIVEN), 3)
    assert [each.share.share for each in bins] == [0, 0.5, 1]
    assert [each.predicted for each in bins] == pytest.approx([0.2, 0.525, 0.85])
    assert [each.share.asked for each in bins] == [3, 2, 4]
    assert root_error(bins) == pytest.approx(0.153206, abs=5e-7)
    assert expected_error(bins) == pytest.approx(0.138889, abs=5e-7)


@pytest.mark.parametrize("seed", range(5))
def test_losses_are_scikit_learns(seed):
    """Log loss and Brier score of made-up answers agree to a billionth."""
    came, given = made_up(seed)
    found = losses(came, given)
    assert found.log_loss == pytest.approx(log_loss(came, given), abs=1e-9)
    assert found.brier == pytest.approx(brier_score_loss(came, given), abs=1e-9)
    assert found.predicted == pytest.approx(given.mean(), abs=1e-9)
    assert found.share == came.mean()


@pytest.mark.parametrize("seed", range(5))
def test_the_area_is_scikit_learns_within_what_is_said(seed):
    """Of whole thousandths it is the same; of others it is off by no more than is said."""
    came, given = made_up(seed, places=3)
    assert auc(cells_of(came, given)).area == pytest.approx(roc_auc_score(came, given), abs=1e-12)
    came, given = made_up(seed)
    found = auc(cells_of(came, given))
    off = abs(found.area - roc_auc_score(came, given))
    assert 0 < off <= found.within < 0.01


def test_the_bound_of_the_area_is_reached():
    """Two predictions in one thousandth, the wrong one greater: half a pair is wrong, as said."""
    found = auc(cells_of([1, 0], [0.9001, 0.9002]))
    assert (found.area, found.within) == (0.5, 0.5)
    assert roc_auc_score([1, 0], [0.9001, 0.9002]) == 0


def test_without_both_outcomes_nothing_is_told_apart():
    """Where all came back, or nothing did, there is no area."""
    assert auc(cells_of([1, 1], [0.9, 0.8])) is None
    assert auc(cells_of([0, 0], [0.9, 0.8])) is None


@pytest.mark.parametrize("seed", range(3))
@pytest.mark.parametrize("bins", [3, 7, 10])
def test_bins_of_equal_width_are_scikit_learns(seed, bins):
    """Shares and mean predictions of each bin agree."""
    came, given = made_up(seed, places=3)
    found = by_width(cells_of(came, given), bins)
    shares, means = calibration_curve(came, given, n_bins=bins)
    assert [each.share.share for each in found] == pytest.approx(list(shares))
    assert [each.predicted for each in found] == pytest.approx(list(means))


@pytest.mark.parametrize("seed", range(3))
def test_bins_of_equal_count_are_cut_where_a_tenth_is_full(seed):
    """Each holds a tenth of the answers, give or take those of one thousandth."""
    came, given = made_up(seed, 1_000)
    cells = cells_of(came, given)
    most = max(tally.n for tally in cells.values())
    found = by_count(cells, 10)
    assert len(found) == 10
    assert all(abs(each.share.asked - 100) <= most for each in found)
    ordered = np.argsort(given.round(3), kind="stable")
    start = 0
    for each in found:
        own = ordered[start : start + each.share.asked]
        assert each.share.recalled == came[own].sum()
        assert each.predicted == pytest.approx(given[own].mean(), abs=1e-8)
        start += each.share.asked
    assert start == len(came)


def test_answers_that_can_be_shared_out_evenly_are():
    """Twenty answers, each of a thousandth of its own, make ten bins of two."""
    given = [0.9 + 0.001 * number for number in range(20)]
    found = by_count(cells_of([1] * 20, given), 10)
    assert [each.share.asked for each in found] == [2] * 10


@pytest.mark.parametrize("seed", range(3))
def test_errors_of_the_mean_are_numpys(seed):
    """That of the loss, and of how much more a plain guess loses on the same answers."""
    came, given = made_up(seed, places=3)
    cells = cells_of(came, given)
    lost = -np.log(np.where(came, given, 1 - given))
    assert standard_error(cells) == pytest.approx(lost.std(ddof=1) / np.sqrt(len(lost)))
    more = -np.log(np.where(came, 0.8, 0.2)) - lost
    assert standard_error(cells, 0.8) == pytest.approx(more.std(ddof=1) / np.sqrt(len(more)))


def test_one_answer_has_no_error_of_its_mean():
    """Of one answer nothing is known of the spread; of two, half of what lies between them."""
    assert standard_error(cells_of([1], [0.9])) is None
    apart = abs(loss(0.9, came=True) - loss(0.5, came=True))
    assert standard_error(cells_of([1, 1], [0.9, 0.5])) == pytest.approx(apart / 2)


def test_no_loss_is_infinite_and_none_is_below_nothing():
    """What was certain is held a millionth from it, either way."""
    for certain, came in ((1.0, True), (0.0, False)):
        assert loss(certain, came) == pytest.approx(1e-6)
        assert loss(certain, not came) == pytest.approx(-np.log(1e-6))


@pytest.mark.parametrize("seed", range(3))
def test_plain_guesses_cost_what_scikit_learn_says(seed):
    """Guesses that are always the same, on the very answers that were predicted."""
    came, given = made_up(seed)
    quality = quality_of(foretold(came, given), 0.85)
    beside = {each.guess: each for each in quality.guesses}
    fixed = {Guess.TARGET: 0.85, Guess.EVEN: 0.5, Guess.HINDSIGHT: came.mean()}
    for guess, value in fixed.items():
        always = np.full(len(came), value)
        found = beside[guess]
        assert found.value == pytest.approx(value)
        assert found.log_loss == pytest.approx(log_loss(came, always))
        assert found.brier == pytest.approx(brier_score_loss(came, always))
        assert found.ece == pytest.approx(abs(came.mean() - value))
        assert found.gain == pytest.approx(log_loss(came, always) - log_loss(came, given))
    assert quality.losses.log_loss == pytest.approx(log_loss(came, given), abs=1e-9)
    assert quality.auc.area == pytest.approx(roc_auc_score(came, given), abs=quality.auc.within)
