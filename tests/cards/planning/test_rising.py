"""Figures that never fall."""

import numpy as np
import pytest
from scipy.optimize import isotonic_regression

from cards.planning.rising import rising


@pytest.mark.parametrize("count", [1, 2, 9, 28])
def test_it_is_the_isotonic_regression_of_every_column(count):
    """Outside source: `scipy.optimize.isotonic_regression`, on random figures."""
    chance = np.random.default_rng(count)
    rows = chance.normal(size=(count, 5)) + 0.1 * np.arange(count)[:, None]
    expected = np.stack([isotonic_regression(column).x for column in rows.T], axis=1)
    assert rising(rows) == pytest.approx(expected)


def test_what_rises_already_stays_as_it_is():
    """Nothing is drawn level that does not fall."""
    rows = np.array([[1.0, 2.0], [1.0, 3.0], [5.0, 4.0]])
    assert np.array_equal(rising(rows), rows)
