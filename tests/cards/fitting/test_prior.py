"""What is thought of weights beforehand, and where they may lie."""

import numpy as np
import pytest
from fsrs.scheduler import LOWER_BOUNDS_PARAMETERS, UPPER_BOUNDS_PARAMETERS
from hypothesis import given, settings

from cards.fitting.prior import HIGHEST, LOWEST, Prior
from cards.schedule import DEFAULT_WEIGHTS
from tests.cards.fitting.histories import WEIGHTS


def test_weights_lie_where_the_package_accepts_them():
    """The ranges are those of the package `fsrs`, which refuses weights outside them."""
    assert LOWEST.tolist() == list(LOWER_BOUNDS_PARAMETERS)
    assert HIGHEST.tolist() == list(UPPER_BOUNDS_PARAMETERS)


def test_no_spreads_from_the_centre_is_the_centre():
    """The published weights lie no spread from themselves, and cost nothing there."""
    prior = Prior.around(DEFAULT_WEIGHTS, 1.0)
    assert prior.weights(np.zeros(21)) == pytest.approx(np.array(DEFAULT_WEIGHTS))
    assert prior.penalty(np.zeros(21))[0] == 0


@settings(max_examples=50)
@given(WEIGHTS)
def test_all_that_is_searched_lies_within_the_ranges(centre):
    """Around any centre the centre itself may be found, and nothing outside the ranges."""
    prior = Prior.around(centre, 1.0)
    low, high = prior.bounds
    assert (low <= 0).all()
    assert (high >= 0).all()
    for spreads in (low, high, np.zeros(21)):
        weights = prior.weights(spreads)
        assert (weights >= LOWEST).all()
        assert (weights <= HIGHEST).all()


def test_slopes_are_what_small_steps_show():
    """How each weight changes with its spreads is the slope between two near by."""
    prior = Prior.around(DEFAULT_WEIGHTS, 1.0)
    spreads = np.full(21, 0.1)
    slope = (prior.weights(spreads + 1e-6) - prior.weights(spreads - 1e-6)) / 2e-6
    assert prior.slopes(prior.weights(spreads)) == pytest.approx(slope, rel=1e-6)


def test_the_penalty_is_that_of_a_gaussian():
    """Two spreads off cost half their square, times the strength; the slope is the strength's."""
    prior = Prior.around(DEFAULT_WEIGHTS, 3.0)
    spreads = np.zeros(21)
    spreads[4] = 2.0
    cost, slope = prior.penalty(spreads)
    assert cost == 6.0
    assert slope[4] == 6.0
