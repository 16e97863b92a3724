"""Lots laid evenly, and the days an item waits by its lot."""

import numpy as np
import pytest

from cards.schedule import DEFAULT_WEIGHTS, MAX_INTERVAL, spread_range
from cards.sitting.lots import lots, waited


@pytest.mark.parametrize(("lot", "end"), [(0.0, 0), (1 - 1e-12, 1)])
def test_the_least_and_the_greatest_wait_are_those_of_the_schedule(lot, end):
    """Of every interval there is, the least lot waits shortest and the greatest longest.

    Outside source: the published range, as `cards.schedule.spread_range` computes it alone.
    """
    every = np.arange(1, MAX_INTERVAL + 1)
    # At a target of 0.9 the interval is the stability.
    found = waited(every.astype(np.float64), 0.9, DEFAULT_WEIGHTS, np.full(len(every), lot))
    assert found.astype(int).tolist() == [spread_range(int(each))[end] for each in every]


def test_every_day_of_the_range_has_its_share():
    """Even lots spread an interval of thirty days over its eight or nine days alike."""
    even = (np.arange(9_000) + 0.5) / 9_000
    days, counts = np.unique(
        waited(np.full(9_000, 30.0), 0.9, DEFAULT_WEIGHTS, even), return_counts=True
    )
    low, high = spread_range(30)
    assert days.astype(int).tolist() == list(range(low, high + 1))
    assert counts.max() - counts.min() <= 1


def test_lots_lie_evenly():
    """Of a thousand neighbours' lots every tenth of the way holds a tenth, and pairs likewise."""
    one, other = lots(1_000, 7)
    for each in (one, other):
        assert np.histogram(each, 10, (0, 1))[0] == pytest.approx(100, abs=4)
    assert np.histogram2d(one, other, 4, [(0, 1), (0, 1)])[0] == pytest.approx(62.5, abs=9)
    assert not np.array_equal(one, lots(1_000, 8)[0])
