"""The schedule, by examples. Published values are checked in `tests/reference`."""

from datetime import UTC, date, datetime, timedelta
from uuid import UUID

import pytest

from cards.answers import GRADES, Answer, Grade
from cards.errors import InvalidPreference
from cards.schedule import HIGHEST_TARGET, LOWEST_TARGET, Schedule, spread, spread_range

ITEM = UUID(int=77)
START = date(2026, 3, 1)
SCHEDULE = Schedule()


def answer(number, days, grade=Grade.CLEAR, **more):
    """Return an answer given in the evening of a day counted from the first."""
    day = more.pop("day", START + timedelta(days=days))
    at = datetime(2026, 3, 1, 20, tzinfo=UTC) + timedelta(days=days, seconds=number)
    return Answer(UUID(int=number), ITEM, grade, at, day, **more)


def test_without_answers_there_is_no_memory():
    """An unasked item has none, and nothing is predicted of it."""
    assert SCHEDULE.fold(ITEM, []) is None
    assert SCHEDULE.predict(answer(1, 0), []) is None


def test_a_memory_tells_what_it_is_the_fold_of():
    """First and last day, last grade and the number of answers."""
    folded = SCHEDULE.fold(ITEM, [answer(1, 0), answer(2, 2, Grade.HAZY)])
    assert folded.first_day == START
    assert folded.last_day == START + timedelta(days=2)
    assert (folded.last_grade, folded.answers) == (Grade.HAZY, 2)


def test_what_came_back_blank_is_called_the_same_day():
    """It comes round again at once; everything else on its due day."""
    blank = SCHEDULE.fold(ITEM, [answer(1, 0, Grade.BLANK)])
    clear = SCHEDULE.fold(ITEM, [answer(1, 0)])
    assert blank.call_on == START < blank.due_on
    assert clear.call_on == clear.due_on > START


def test_a_late_arrival_is_folded_in_its_place():
    """An answer that happened between two others counts there."""
    early, middle, late = answer(1, 0), answer(2, 3, Grade.BLANK), answer(3, 9)
    assert SCHEDULE.fold(ITEM, [early, late, middle]) == SCHEDULE.fold(ITEM, [early, middle, late])


def test_an_answer_bearing_an_earlier_day_counts_on_the_day_before_it():
    """Flying west across the date line, a later answer can bear an earlier date."""
    first = answer(1, 2)
    west = answer(2, 2.5, day=START + timedelta(days=1))
    folded = SCHEDULE.fold(ITEM, [first, west])
    assert folded.last_day == first.day
    assert folded == SCHEDULE.fold(ITEM, [first, answer(2, 2.5, day=first.day)])
    assert SCHEDULE.predict(west, [first]) == 1.0


def test_a_prediction_takes_the_answers_before_it_alone():
    """What happened later changes nothing of what was predicted then."""
    first, second, third = answer(1, 0), answer(2, 4), answer(3, 9, Grade.BLANK)
    alone = SCHEDULE.predict(second, [first])
    assert SCHEDULE.predict(second, [first, third]) == alone
    assert SCHEDULE.predict(second, [third, second, first]) == alone


@pytest.mark.parametrize("target", [LOWEST_TARGET, 0.8, HIGHEST_TARGET])
def test_a_higher_target_asks_sooner(target):
    """Within the range any target is taken, and the lower it is the later an item is due."""
    answers = [answer(1, 0), answer(2, 2), answer(3, 13)]
    at_nine_tenths = SCHEDULE.fold(ITEM, answers).due_on
    due = Schedule(target).fold(ITEM, answers).due_on
    assert (due < at_nine_tenths) is (target > 0.9)


@pytest.mark.parametrize("target", [LOWEST_TARGET - 0.01, HIGHEST_TARGET + 0.01])
def test_a_target_outside_its_range_is_refused(target):
    """Retention is aimed at from .7 to .97."""
    with pytest.raises(InvalidPreference) as refusal:
        Schedule(target)
    assert refusal.value.where == "target"


def test_items_met_together_part_ways():
    """Twenty items answered alike are due on several days, all within the range."""
    answers = [answer(1, 0), answer(2, 2), answer(3, 13)]
    due = {(SCHEDULE.fold(UUID(int=n), answers).due_on - answers[-1].day).days for n in range(20)}
    assert len(due) > 3
    assert min(due) >= spread_range(46)[0]
    assert max(due) <= spread_range(46)[1]


def test_the_spreading_depends_on_the_item_and_its_answers_alone():
    """The same item after as many answers lies at the same place, on every device."""
    assert spread(100, ITEM, 3) == spread(100, UUID(int=77), 3)
    assert len({spread(100, ITEM, answers) for answers in range(20)}) > 5


def test_the_four_grades_come_back_in_order():
    """After one answer the better grade is due later."""
    due = [SCHEDULE.fold(ITEM, [answer(1, 0, grade)]).due_on for grade in GRADES]
    assert due == sorted(due)
    assert due[0] < due[-1]
