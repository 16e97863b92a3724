"""Answers: what one holds, and their order."""

from datetime import UTC, date, datetime, timedelta
from uuid import UUID

import pytest

from cards.answers import (
    GRADES,
    MAX_ATTEMPT,
    Answer,
    Grade,
    graded_first,
    in_order,
    seconds_taken,
)
from cards.errors import InvalidAnswer

DAY = date(2026, 3, 10)
EVENING = datetime(2026, 3, 10, 20, tzinfo=UTC)


def answer(number, at=EVENING, **more):
    """Return an answer under a numbered id."""
    return Answer(UUID(int=number), UUID(int=99), Grade.CLEAR, at, DAY, **more)


def test_grades_stand_in_order_the_weakest_first():
    """Blank, hazy, clear, vivid."""
    assert [grade.value for grade in GRADES] == ["blank", "hazy", "clear", "vivid"]


def test_answers_are_put_in_the_order_they_happened():
    """By their instant, and at one instant by their id; the order of arrival does not count."""
    late = answer(1, EVENING + timedelta(hours=1))
    twins = [answer(2), answer(3)]
    assert in_order([late, twins[1], twins[0]]) == [*twins, late]
    assert in_order([]) == []


def test_instants_in_other_zones_are_compared_as_instants():
    """What the clock on the wall said makes no difference."""
    later = answer(1, EVENING + timedelta(minutes=1))
    earlier = answer(2, datetime.fromisoformat("2026-03-10T21:00:00+01:00"))
    assert in_order([later, earlier]) == [earlier, later]


def test_an_answer_that_is_there_twice_counts_once():
    """Sending an answer twice changes nothing."""
    one, other = answer(1), answer(2)
    assert in_order([one, other, one]) == [one, other]


def test_an_answer_needs_a_time_zone():
    """A time without its zone is no instant."""
    with pytest.raises(InvalidAnswer) as refusal:
        answer(1, datetime(2026, 3, 10, 20))  # noqa: DTZ001 - the point of the test
    assert refusal.value.where == "answered_at"


def test_an_attempt_has_a_bound():
    """As long as the longest part of a digest, and not a character more."""
    assert len(answer(1, attempt="x" * MAX_ATTEMPT).attempt) == MAX_ATTEMPT
    with pytest.raises(InvalidAnswer) as refusal:
        answer(1, attempt="x" * (MAX_ATTEMPT + 1))
    assert refusal.value.where == "attempt"


@pytest.mark.parametrize(
    ("seconds", "taken"), [(0, None), (1, 1), (42.4, 42), (600, 600), (601, None), (-5, None)]
)
def test_seconds_count_while_they_can_be_answering(seconds, taken):
    """Less than a second is no answering, and after ten minutes the reader was elsewhere."""
    begun = datetime(2026, 3, 1, 21, 40, tzinfo=UTC)
    assert seconds_taken(begun, begun + timedelta(seconds=seconds)) == taken


def test_one_answer_in_ten_is_graded_first():
    """Of many items and answers a tenth, to a hundredth (three standard deviations of chance)."""
    chosen = [
        graded_first(UUID(int=item), answers) for item in range(1, 2_001) for answers in range(5)
    ]
    assert sum(chosen) / len(chosen) == pytest.approx(0.1, abs=0.01)


def test_which_is_graded_first_is_the_same_everywhere():
    """It depends on the item and the number of its answers, and not on where it is due."""
    item = UUID(int=7)
    first = [graded_first(item, answers) for answers in range(200)]
    assert first == [graded_first(item, answers) for answers in range(200)]
    assert 5 < sum(first) < 40
