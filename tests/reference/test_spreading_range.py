"""The published range around an interval, and where an item lies in it.

Source: the published fuzz range of the FSRS packages, worked by hand below. For an interval
I of 2.5 days and more, delta = 1 + 0.15 (min(I, 7) - 2.5) + 0.10 max(0, min(I, 20) - 7)
+ 0.05 max(0, I - 20); the due day lies between max(2, round(I - delta)) and
round(I + delta). Below 2.5 days nothing is spread. At 3, 10 and 50 days ts-fsrs 5.4.2 was
seen to give 2 to 4, 8 to 12 and 46 to 54; fsrs 6.3.2 can overshoot its own range by a day
(5, 13, 55), which ours never does.
"""

from uuid import UUID

import pytest

from cards.schedule import MAX_INTERVAL, spread, spread_range


@pytest.mark.parametrize(
    ("interval", "low", "high"),
    [
        (1, 1, 1),  # below 2.5
        (2, 2, 2),  # below 2.5
        (3, 2, 4),  # delta 1 + .15 x .5 = 1.075: 1.925, 4.075
        (4, 3, 5),  # delta 1.225: 2.775, 5.225
        (7, 5, 9),  # delta 1 + .15 x 4.5 = 1.675: 5.325, 8.675
        (10, 8, 12),  # delta 1.675 + .10 x 3 = 1.975: 8.025, 11.975
        (20, 17, 23),  # delta 1.675 + .10 x 13 = 2.975: 17.025, 22.975
        (50, 46, 54),  # delta 2.975 + .05 x 30 = 4.475: 45.525, 54.475
        (100, 93, 107),  # delta 2.975 + .05 x 80 = 6.975: 93.025, 106.975
        (365, 345, 385),  # delta 2.975 + .05 x 345 = 20.225: 344.775, 385.225
        (MAX_INTERVAL, 34_673, MAX_INTERVAL),  # delta 1826.975: the ceiling cuts the upper end
    ],
)
def test_the_range_around_an_interval(interval, low, high):
    """The range is the published one, worked by hand."""
    assert spread_range(interval) == (low, high)


@pytest.mark.parametrize("interval", [3, 10, 50])
def test_items_fill_the_whole_range_evenly(interval):
    """Two thousand items land on every day of the range, none more than 1.5 times its share."""
    low, high = spread_range(interval)
    days = [spread(interval, UUID(int=number * 7919), 3) for number in range(2_000)]
    counts = {day: days.count(day) for day in range(low, high + 1)}
    share = 2_000 / (high - low + 1)
    assert sum(counts.values()) == 2_000
    assert all(share / 1.5 < count < share * 1.5 for count in counts.values())
