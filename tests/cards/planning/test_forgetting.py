"""What is known over a stretch of days."""

import numpy as np
import pytest
from scipy.integrate import quad

from cards.planning.forgetting import recalled_days
from cards.schedule import DEFAULT_WEIGHTS
from cards.sitting.worth_memory import recall

STEEP = (*DEFAULT_WEIGHTS[:20], 0.8)


@pytest.mark.parametrize("weights", [DEFAULT_WEIGHTS, STEEP])
@pytest.mark.parametrize(("since", "until"), [(0.0, 1.0), (3.0, 94.0), (100.0, 3_650.0)])
def test_it_is_the_area_under_the_curve(weights, since, until):
    """Outside source: numerical integration by `scipy.integrate.quad` of the recall itself."""
    stability = np.array([0.5, 12.0, 800.0])
    expected = [
        quad(lambda day, s=s: float(recall(np.array(s), np.array(day), weights)), since, until)[0]
        for s in stability
    ]
    assert recalled_days(stability, since, until, weights) == pytest.approx(expected, rel=1e-6)
