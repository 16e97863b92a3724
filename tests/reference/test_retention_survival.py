"""The time to the first blank against a published trial and lifelines 0.30.

Published: the 6-MP arm of Freireich et al. 1963, remissions in weeks, as "Introductory
Biostatistics", example 11.1, prints it: .8571 .8067 .7529 .6902 .6275 .5378 .4482, median 23.
"""

from collections import Counter

import numpy as np
import pytest
from lifelines import KaplanMeierFitter

from cards.retention.survival import survival_of

RELAPSED = (6, 6, 6, 7, 10, 13, 16, 22, 23)
FOLLOWED = (6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35)
PRINTED = (0.8571, 0.8067, 0.7529, 0.6902, 0.6275, 0.5378, 0.4482)


def survival(gone, followed):
    """Return the survival of items by the days of those that ended and of those that did not."""
    return survival_of(Counter([(d, True) for d in gone] + [(d, False) for d in followed]))


def test_the_published_remissions_come_out():
    """Every step to four places, who is at risk at the first and the last, and the median."""
    found = survival(RELAPSED, FOLLOWED)
    assert [each.lasting for each in found.steps] == pytest.approx(PRINTED, abs=5e-5)
    assert [each.day for each in found.steps] == [6, 7, 10, 13, 16, 22, 23]
    assert (found.steps[0].at_risk, found.steps[0].blanks, found.steps[-1].at_risk) == (21, 3, 6)
    assert (found.items, found.blanks, found.median, found.until) == (21, 9, 23, 35)


@pytest.mark.parametrize("seed", range(4))
def test_made_up_items_last_as_lifelines_says(seed):
    """Shares, Greenwood's bounds on the scale of ln(-ln), and the median, with many ties."""
    chance = np.random.default_rng(seed)
    days = chance.geometric(0.05, 150)
    limit = chance.integers(1, 60, 150)
    ended = days <= limit
    lasted = np.minimum(days, limit)
    found = survival(lasted[ended].tolist(), lasted[~ended].tolist())
    fitted = KaplanMeierFitter().fit(lasted, ended)
    bounds = fitted.confidence_interval_
    for each in found.steps:
        assert each.lasting == pytest.approx(fitted.predict(each.day))
        if each.lasting:
            low, high = bounds.loc[each.day]
            assert (each.low, each.high) == pytest.approx((low, high), abs=1e-6)
    assert found.median == fitted.median_survival_time_
    assert found.lasting(0) == 1
    assert found.lasting(10_000) == found.steps[-1].lasting


def test_the_median_lies_where_its_bounds_fall_below_a_half():
    """The earliest and the latest day on which half may be gone, None where it may be later."""
    found = survival(RELAPSED, FOLLOWED)
    fitted = KaplanMeierFitter().fit(
        RELAPSED + FOLLOWED, [True] * len(RELAPSED) + [False] * len(FOLLOWED)
    )
    low = fitted.confidence_interval_["KM_estimate_lower_0.95"]
    assert found.median_bounds == (int(low.index[low <= 0.5][0]), None)


def test_what_never_was_there_is_gone_at_once():
    """A first answer that was blank ends on day 0; an item that ends there still counts."""
    found = survival([0, 0, 5], [0, 9])
    assert [(each.day, each.lasting) for each in found.steps] == [(0, 0.6), (5, pytest.approx(0.3))]
    assert found.lasting(0) == 0.6
    assert found.lasting(4) == 0.6
    assert found.median == 5


def test_of_nothing_nothing_lasts_or_ends():
    """No item, no step; items that never came back blank have no median."""
    nothing = survival([], [])
    assert (nothing.items, nothing.steps, nothing.median, nothing.until) == (0, (), None, 0)
    lasting = survival([], [3, 8])
    assert (lasting.median, lasting.median_bounds, lasting.until) == (None, (None, None), 8)


def test_once_all_are_gone_nothing_lasts():
    """The last step falls to nothing, and has no bounds around it."""
    last = survival([2, 4], []).steps[-1]
    assert (last.lasting, last.low, last.high) == (0, 0, 0)
