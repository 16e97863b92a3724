"""Answers: what one holds, and their order."""

from datetime import UTC, date, datetime, timedelta
from uuid import UUID

import pytest

from cards.answers import GRADES, MAX_ATTEMPT, Answer, Grade, in_order
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
