"""Memory over arrays, against published values and against the package's own fold.

Source of the figures: FSRS-6 with its published default weights (Ye, Su & Cao 2022, doi
10.1145/3534678.3539081), computed in 50-digit decimal arithmetic independently of any library.
"""

from datetime import UTC, date, datetime, time, timedelta
from itertools import pairwise
from uuid import UUID

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cards.answers import Answer, Grade
from cards.schedule import DEFAULT_WEIGHTS, Schedule, spread_range
from cards.sitting.memory import asked, interval
from cards.sitting.worth_memory import CLEAR, first, recall

ITEM = UUID("5d3c0e0a-8d0b-4b0c-9a86-0b5f6a2f7f10")
START = date(2026, 1, 5)


def after(stability: float, difficulty: float, recalled: float, *, came_back: bool):
    """Return what one asking makes of one memory."""
    found = asked(
        np.array([stability]),
        np.array([difficulty]),
        np.array([recalled]),
        np.array([came_back]),
        DEFAULT_WEIGHTS,
    )
    return float(found[0][0]), float(found[1][0])


def folded(days: list[tuple[int, bool]], target: float = 0.9):
    """Fold a first clear answer and one asking a day more: clear, or blank and then clear."""
    grades = [(0, Grade.CLEAR)]
    day = 0
    for gap, came_back in days:
        day += gap
        grades += [(day, Grade.CLEAR)] if came_back else [(day, Grade.BLANK), (day, Grade.CLEAR)]
    answers = [
        Answer(
            id=UUID(int=number),
            item_id=ITEM,
            grade=grade,
            answered_at=datetime.combine(START, time(9), UTC) + timedelta(day, minutes=number),
            day=START + timedelta(day),
        )
        for number, (day, grade) in enumerate(grades)
    ]
    return Schedule(target).fold(ITEM, answers)


@pytest.mark.parametrize(
    ("target", "days"),
    [(0.95, 403), (0.9, 1000), (0.85, 1906), (0.8, 3316), (0.75, 5570), (0.7, 9288)],
)
def test_an_interval_is_the_published_share_of_the_stability(target, days):
    """Of a stability of 1000 days every target makes the published interval."""
    assert interval(np.array([1000.0]), target, DEFAULT_WEIGHTS).tolist() == [days]


def test_an_interval_is_a_day_at_the_least():
    """What is hardly remembered is due tomorrow, not today."""
    assert interval(np.array([0.01, 0.4]), 0.97, DEFAULT_WEIGHTS).tolist() == [1, 1]


def test_what_comes_back_grows_as_published():
    """A clear answer after 10 days, at stability 10 and difficulty 5, gives the known values."""
    stability, difficulty = after(10, 5, 0.9, came_back=True)
    assert stability == pytest.approx(32.02672948, abs=1e-6)
    assert difficulty == pytest.approx(4.99022837, abs=1e-6)


def test_a_blank_and_a_clear_answer_the_same_day_are_as_published():
    """Rows 4 and 5 of the published example: blank after 46 days, clear the same day."""
    stability, difficulty = after(46.28021729, 2.10433139, 0.90041669, came_back=False)
    assert stability == pytest.approx(2.93258045, abs=1e-6)
    assert difficulty == pytest.approx(7.37781418, abs=1e-6)


@given(
    days=st.lists(st.tuples(st.integers(1, 400), st.booleans()), max_size=12),
    target=st.sampled_from([0.7, 0.8, 0.9, 0.97]),
)
def test_a_course_comes_to_what_the_package_makes_of_its_answers(days, target):
    """Asking after asking, memory and interval are those of the schedule's own fold."""
    stability, difficulty = (each[[CLEAR]] for each in first(DEFAULT_WEIGHTS))
    for gap, came_back in days:
        recalled = recall(stability, np.array([float(gap)]), DEFAULT_WEIGHTS)
        stability, difficulty = asked(
            stability, difficulty, recalled, np.array([came_back]), DEFAULT_WEIGHTS
        )
    memory = folded(days, target)
    assert memory is not None
    assert stability[0] == pytest.approx(memory.stability, rel=1e-9)
    assert difficulty[0] == pytest.approx(memory.difficulty, rel=1e-9)
    low, high = spread_range(int(interval(stability, target, DEFAULT_WEIGHTS)[0]))
    assert low <= (memory.due_on - memory.last_day).days <= high


def test_each_item_follows_its_own_course():
    """Items side by side come to what each comes to alone."""
    memories = [(3.0, 2.0, 0.95, True), (80.0, 7.0, 0.6, False), (0.3, 9.5, 0.4, False)]
    columns = [np.array(column) for column in zip(*memories, strict=True)]
    together = zip(*asked(*columns, DEFAULT_WEIGHTS), strict=True)
    alone = [after(*known, came_back=came_back) for *known, came_back in memories]
    assert [tuple(map(float, each)) for each in together] == alone
    assert all(one != other for one, other in pairwise(alone))
