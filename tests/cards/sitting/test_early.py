"""Items that may be asked before they are due."""

from dataclasses import dataclass
from datetime import date, timedelta

import pytest

from cards.kinds.base import KindName
from cards.sitting import early, first_early

DAY = date(2026, 3, 10)


@dataclass
class Remembered:
    """Items column by column, all of one stability."""

    stability: list[float]
    last_days: list[date]

    @property
    def kinds(self):
        """Return themes all."""
        return [KindName.THEME] * len(self.stability)

    difficulty = close = due_on = ()


def asked(stability, days_ago):
    """Return one item of a stability, last asked some days ago."""
    return Remembered([stability], [DAY - timedelta(days=days_ago)])


@pytest.mark.parametrize(("days_ago", "may"), [(40, False), (41, True), (100, True), (0, False)])
def test_an_item_waits_until_its_recall_is_half_way_to_the_target(days_ago, may):
    """With a target of 0.9: 0.402559 of its stability, the published interval for 0.95.

    Source: the reference, part 1.1, I/S at r = .95, computed with 50 digits there.
    """
    assert early(asked(100.0, days_ago), DAY, 0.9) == ([0] if may else [])


def test_nothing_is_asked_again_on_its_own_day():
    """However little is remembered of it."""
    assert early(asked(0.01, 0), DAY, 0.9) == []
    assert early(asked(0.01, 1), DAY, 0.9) == [0]


@pytest.mark.parametrize(("stability", "days_ago"), [(100.0, 3), (3.0, 0), (0.1, 0), (50.0, 400)])
def test_the_first_day_told_is_the_first_on_which_it_may_be_asked(stability, days_ago):
    """On the day told it may be, and on no day between."""
    items = asked(stability, days_ago)
    told = first_early(items, DAY, 0.9)
    assert told > DAY
    assert early(items, told, 0.9) == [0]
    between = [DAY + timedelta(days=n) for n in range(1, (told - DAY).days)]
    assert not any(early(items, day, 0.9) for day in between)


def test_without_items_there_is_no_such_day():
    """Nothing remembered, nothing early."""
    assert early(Remembered([], []), DAY, 0.9) == []
    assert first_early(Remembered([], []), DAY, 0.9) is None
