"""What a sitting holds, day by day."""

from dataclasses import replace
from datetime import timedelta
from uuid import uuid4

import pytest

from cards.answers import Grade
from cards.digest import Commitment
from cards.errors import ItemMissing
from cards.kinds.base import KindName
from service.use_cases.add_digest import add_digest
from service.use_cases.answer import record_answer
from service.use_cases.leave_out import leave_out, take_in
from service.use_cases.minutes import set_minutes_today
from service.use_cases.preferences import Preferences, set_preferences
from service.use_cases.recording import GivenAnswer
from service.use_cases.sit import todays_sitting


def ids(house):
    """The items of today's sitting, in their order."""
    return [view.kept.item.id for view in todays_sitting(house.desk).items]


def all_answered(house, grade):
    """Answer what is asked, sitting after sitting, until nothing more is asked today."""
    while asked := ids(house):
        for item in asked:
            house.answer(item, grade)


def all_asked(house, grade=Grade.CLEAR, days=40):
    """Let everything in, a sitting of an hour a day, until every item was asked."""
    set_preferences(house.desk, Preferences(unasked_a_day=100, minutes=60))
    for _ in range(days):
        all_answered(house, grade)
        if all(kept.memory for kept in house.items().values()):
            break
        house.now += timedelta(days=1)
    set_preferences(house.desk, Preferences(minutes=10))


def shelved(house, digest, count):
    """Add as many books, each with a commitment of its own."""
    for number in range(count):
        book = replace(
            digest,
            title=f"Book {number}",
            commitments=(Commitment(f"I will walk {number + 2} miles before breakfast."),),
        )
        add_digest(house.desk, f"{number}.docx", house.shelf.put(book))


def test_unasked_items_are_let_in_up_to_the_readers_number_a_day(house, added):
    """What was asked for the first time today counts; tomorrow lets in more."""
    added()
    set_preferences(house.desk, Preferences(unasked_a_day=1))
    for _ in range(3):
        fresh = [v for v in todays_sitting(house.desk).items if v.kept.memory is None]
        assert len(fresh) == 1
        while asked := ids(house):
            house.answer(asked[0], Grade.VIVID)
        house.now += timedelta(days=1)


def test_a_reader_who_lets_nothing_in_is_asked_nothing_unasked(house, added):
    """With 0 a day, only what was asked before is ever due."""
    added()
    set_preferences(house.desk, Preferences(unasked_a_day=0))
    assert not ids(house)


def test_the_next_day_something_is_asked_is_told(house, added):
    """When today is over the reader is told the day of the next sitting, and it holds."""
    added()
    set_preferences(house.desk, Preferences(unasked_a_day=0))
    assert todays_sitting(house.desk).next_on is None
    all_asked(house, Grade.VIVID)
    set_preferences(house.desk, Preferences(unasked_a_day=0, minutes=60))
    all_answered(house, Grade.VIVID)
    told = todays_sitting(house.desk).next_on
    assert told is not None
    commitments = {k for k, v in house.items().items() if v.item.kind is KindName.RESTATE}
    while house.now.date() < told - timedelta(days=1):
        house.now += timedelta(days=1)
        assert set(ids(house)) <= commitments
    house.now += timedelta(days=1)
    assert ids(house)


def test_with_minutes_to_spare_items_are_asked_before_they_are_due(house, added):
    """Once half of what may be forgotten is forgotten, and not while due items fill the minutes."""
    added()
    all_asked(house)
    set_preferences(house.desk, Preferences(minutes=60, unasked_a_day=0))
    days = []
    for _ in range(12):
        sitting = todays_sitting(house.desk)
        early = [v for v in sitting.items if v.due_on > sitting.day]
        days.append(len([v for v in early if v.kept.item.kind is not KindName.RESTATE]))
        for view in early:
            if view.kept.item.kind is not KindName.RESTATE:
                assert view.recall < 0.95 + 1e-9
        all_answered(house, Grade.CLEAR)
        house.now += timedelta(days=1)
    assert any(days)


def test_what_is_over_the_minutes_waits_for_tomorrow(house, digest):
    """Nothing is said of a pile: the sitting ends with its minutes, and goes on tomorrow."""
    shelved(house, digest, 4)
    all_asked(house)
    house.now += timedelta(days=400)
    set_preferences(house.desk, Preferences(minutes=2))
    sitting = todays_sitting(house.desk)
    assert 0 < sitting.seconds <= 2 * 60 + 60
    while asked := ids(house):
        record_answer(house.desk, GivenAnswer(uuid4(), asked[0], Grade.CLEAR, seconds=60))
    sitting = todays_sitting(house.desk)
    assert sitting.spent >= 2 * 60
    assert sitting.next_on == sitting.day + timedelta(days=1)


def test_the_minutes_of_a_day_are_that_days(house, digest):
    """More minutes today make a longer sitting today, and tomorrow is as set before."""
    shelved(house, digest, 4)
    all_asked(house)
    house.now += timedelta(days=400)
    set_preferences(house.desk, Preferences(minutes=2))
    short = todays_sitting(house.desk)
    set_minutes_today(house.desk, 8)
    longer = todays_sitting(house.desk)
    assert longer.minutes == 8
    assert len(longer.items) > len(short.items)
    house.now += timedelta(days=1)
    assert todays_sitting(house.desk).minutes == 2
    assert todays_sitting(house.desk, minutes=5).minutes == 5


def test_the_readers_own_pace_tells_how_much_fits(house, digest):
    """Whoever answers in five seconds is expected to take five seconds an item."""
    shelved(house, digest, 5)
    all_asked(house)
    house.now += timedelta(days=400)
    before = todays_sitting(house.desk)
    assert before.seconds > 10 * len(before.items)
    for _ in range(4):
        for kind in KindName:
            item = next((i for i, kept in house.items().items() if kept.item.kind is kind), None)
            if item is not None:
                record_answer(house.desk, GivenAnswer(uuid4(), item, Grade.CLEAR, seconds=5))
    house.now += timedelta(days=400)
    after = todays_sitting(house.desk)
    assert after.items
    assert after.seconds == 5 * len(after.items)


def test_what_came_back_blank_yesterday_is_due_today(house, added):
    """A blank that was left standing is not lost overnight."""
    added()
    set_preferences(house.desk, Preferences(unasked_a_day=1))
    first = ids(house)[0]
    house.answer(first, Grade.BLANK)
    assert ids(house)[-1] == first
    house.now += timedelta(days=1)
    assert first in ids(house)


def test_a_commitment_is_asked_every_day(house, digest):
    """Due or not, one is asked each day; once answered, no other is owed."""
    shelved(house, digest, 3)
    all_asked(house, Grade.VIVID)
    for _ in range(5):
        house.now += timedelta(days=1)
        sitting = todays_sitting(house.desk)
        restates = [v for v in sitting.items if v.kept.item.kind is KindName.RESTATE]
        assert restates
        house.answer(restates[0].kept.item.id, Grade.CLEAR)
        owed = [
            v
            for v in todays_sitting(house.desk).items
            if v.kept.item.kind is KindName.RESTATE and v.kept.memory.due_on > sitting.day
        ]
        assert not owed


def test_what_is_left_out_waits_for_tomorrow(house, added):
    """It is not asked today, comes back when it is taken in, and tomorrow by itself."""
    added()
    first = ids(house)[0]
    leave_out(house.desk, first)
    leave_out(house.desk, first)
    sitting = todays_sitting(house.desk)
    assert first not in ids(house)
    assert sitting.left_out == (first,)
    take_in(house.desk, first)
    assert first in ids(house)
    leave_out(house.desk, first)
    house.now += timedelta(days=1)
    assert todays_sitting(house.desk).left_out == ()


def test_after_three_weeks_the_reader_is_told_when_all_is_level(house, digest):
    """Twenty days are no absence; three weeks are, while more waits than fits."""
    shelved(house, digest, 4)
    all_asked(house, Grade.HAZY)
    last = max(kept.memory.last_day for kept in house.items().values() if kept.memory)
    set_preferences(house.desk, Preferences(minutes=1, unasked_a_day=0))
    house.now += last + timedelta(days=20) - house.now.date()
    assert todays_sitting(house.desk).away is None
    house.now += timedelta(days=1)
    sitting = todays_sitting(house.desk)
    assert sitting.away is not None
    assert sitting.away.since == last
    assert sitting.away.level_on is None or sitting.away.level_on > sitting.day
    house.answer(ids(house)[0], Grade.CLEAR)
    assert todays_sitting(house.desk).away is None


def test_another_readers_items_cannot_be_left_out(house, added):
    """What is not theirs is missing to them."""
    added()
    item = ids(house)[0]
    other = house.another_reader()
    for act in (leave_out, take_in):
        with pytest.raises(ItemMissing):
            act(other.desk, item)
