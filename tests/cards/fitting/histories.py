"""Reviews written as steps, and as answers of the core, for the tests of fitting."""

from datetime import UTC, datetime, time, timedelta
from uuid import UUID

from hypothesis import strategies as st

from cards.answers import GRADES, Answer
from cards.fitting.prior import HIGHEST, LOWEST
from cards.fitting.reviews import Reviews
from tests.reference.histories import START

GAPS = st.one_of(st.just(0), st.integers(1, 14), st.integers(15, 400), st.integers(401, 2_500))
STEPS = st.lists(st.tuples(GAPS, st.integers(0, 3)), min_size=1, max_size=12)
HISTORIES = st.lists(STEPS, min_size=1, max_size=6)
WEIGHTS = st.tuples(
    *(st.floats(float(low), float(high)) for low, high in zip(LOWEST, HIGHEST, strict=True))
)


def reviews_of(histories, kind=0):
    """Return reviews of items, each written as (days since the one before, grade 0 to 3)."""
    items, days, grades = [], [], []
    for number, steps in enumerate(histories):
        day = START.toordinal()
        for count, (gap, grade) in enumerate(steps):
            day += gap if count else 0
            items.append(number)
            days.append(day)
            grades.append(grade)
    return Reviews.of(items, [kind] * len(items), days, grades)


def answers_of(steps, item):
    """Return the same steps as answers to an item."""
    answers, day = [], START
    for number, (gap, grade) in enumerate(steps):
        day += timedelta(days=gap if number else 0)
        at = datetime.combine(day, time(20), UTC) + timedelta(seconds=number)
        answers.append(Answer(UUID(int=number + 1), item, GRADES[grade], at, day))
    return answers
