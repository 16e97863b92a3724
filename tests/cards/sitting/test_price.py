"""What keeping a book costs."""

from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from itertools import pairwise
from random import Random
from statistics import fmean
from uuid import UUID

import numpy as np
import pytest

from cards.answers import Answer, Grade
from cards.kinds.base import KindName
from cards.schedule import Schedule
from cards.sitting import price
from cards.sitting.pace import USUAL
from cards.sitting.price import A_YEAR, YEARS, askings

BOOK = {KindName.THEME: 1, KindName.NEXT: 9, KindName.PLACE: 6, KindName.RESTATE: 4}
TARGETS = (0.7, 0.8, 0.9, 0.95, 0.97)
START = date(2026, 1, 5)


def test_a_book_without_items_costs_nothing():
    """Nothing to ask takes no time, in any year."""
    assert price({}, USUAL, 0.9).minutes_a_day == (0.0,) * YEARS


def test_what_is_asked_once_and_hardly_again_costs_its_own_seconds():
    """The first day holds one asking of each item, and no second one."""
    due, again = askings(0.9, 30)
    assert (due[0], again[0]) == (1.0, 0.0)


def test_a_book_costs_what_its_items_cost():
    """Twice the items, or items twice as slow, cost twice; and kinds add up."""
    whole = price(BOOK, USUAL, 0.9).minutes_a_day
    doubled = price({kind: 2 * count for kind, count in BOOK.items()}, USUAL, 0.9)
    slow = price(BOOK, {kind: 2 * each for kind, each in USUAL.items()}, 0.9)
    apart = [price({kind: count}, USUAL, 0.9).minutes_a_day for kind, count in BOOK.items()]
    assert doubled.minutes_a_day == pytest.approx([2 * each for each in whole])
    assert slow.minutes_a_day == pytest.approx([2 * each for each in whole])
    assert [sum(year) for year in zip(*apart, strict=True)] == pytest.approx(whole)


def test_more_to_be_kept_costs_more():
    """A higher target costs more in the first year, and over all years."""
    prices = [price(BOOK, USUAL, target) for target in TARGETS]
    assert all(lower.first_year < higher.first_year for lower, higher in pairwise(prices))
    assert all(
        sum(lower.minutes_a_day) < sum(higher.minutes_a_day) for lower, higher in pairwise(prices)
    )


@pytest.mark.parametrize("target", TARGETS)
def test_a_book_grows_cheaper(target):
    """The first year costs most; the fifth costs less than half of it, and something."""
    told = price(BOOK, USUAL, target)
    assert told.first_year == max(told.minutes_a_day)
    assert 0 < told.last_year < told.first_year / 2


def test_nothing_is_left_to_chance():
    """Foreseen a second time, every day comes out the same."""
    for one, other in zip(askings(0.85, 400), askings(0.85, 400), strict=True):
        assert np.array_equal(one, other)


@pytest.mark.parametrize("target", [0.7, 0.9])
def test_every_course_an_item_can_take_has_its_share(target):
    """Over a third of a year an item is asked as often as all its courses, weighed, tell.

    Outside source: the `fsrs` package behind `Schedule`, spreading and all. Every course is
    followed through it until it is rarer than one in a hundred, from there one way on drawn by
    the recall predicted. Within 4 in a hundred: the mean of 12 items, each spread otherwise,
    strays by some 1.
    """
    days = A_YEAR // 3
    followed = _Courses(Schedule(target), days, Random(20260105))
    weighed = fmean(followed.askings(UUID(int=item), ((0, Grade.CLEAR),), 1) for item in range(12))
    foreseen = sum(float(each.sum()) for each in askings(target, days))
    assert weighed == pytest.approx(foreseen, rel=0.04)


@dataclass(frozen=True)
class _Courses:
    schedule: Schedule
    days: int
    chance: Random

    def askings(self, item: UUID, given: tuple[tuple[int, Grade], ...], share: float) -> float:
        """Return how often an item is asked after what was given so far, and with the last day."""
        memory = self.schedule.fold(item, _answers(item, given))
        assert memory is not None
        asked = share * sum(day == given[-1][0] for day, _ in given)
        day = (memory.due_on - START).days
        if day >= self.days:
            return asked
        kept = self.schedule.recall(memory, memory.due_on)
        clear = (*given, (day, Grade.CLEAR))
        blank = (*given, (day, Grade.BLANK), (day, Grade.CLEAR))
        if share < 1 / 100:
            way = clear if self.chance.random() < kept else blank
            return asked + self.askings(item, way, share)
        return (
            asked
            + self.askings(item, clear, share * kept)
            + self.askings(item, blank, share * (1 - kept))
        )


def _answers(item: UUID, given: tuple[tuple[int, Grade], ...]) -> list[Answer]:
    morning = datetime.combine(START, time(9), UTC)
    return [
        Answer(
            id=UUID(int=number),
            item_id=item,
            grade=grade,
            answered_at=morning + timedelta(day, minutes=number),
            day=START + timedelta(day),
        )
        for number, (day, grade) in enumerate(given)
    ]
