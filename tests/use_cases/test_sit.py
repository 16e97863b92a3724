"""What a sitting holds, day by day."""

from collections import Counter
from dataclasses import replace
from datetime import timedelta

from cards.answers import Grade
from cards.kinds.base import KindName
from service.use_cases.add_digest import add_digest
from service.use_cases.preferences import Preferences, set_preferences
from service.use_cases.sit import todays_sitting


def ids(house):
    """The items of today's sitting, in their order."""
    return [view.kept.item.id for view in todays_sitting(house.desk).items]


def test_unasked_items_are_let_in_up_to_the_readers_number_a_day(house, added):
    """What was asked for the first time today counts; tomorrow lets in more."""
    added()
    set_preferences(house.desk, Preferences(unasked_a_day=1))
    for expected in (1, 1, 1, 1):
        assert len(ids(house)) == expected
        house.answer(ids(house)[0], Grade.VIVID)
        assert not ids(house)
        house.now += timedelta(days=1)
    assert all(kept.memory is not None for kept in house.items().values())


def test_a_reader_who_lets_nothing_in_is_asked_nothing_unasked(house, added):
    """With 0 a day, only what was asked before is ever due."""
    added()
    set_preferences(house.desk, Preferences(unasked_a_day=0))
    assert not ids(house)


def test_most_at_risk_comes_first(house, added):
    """Among the due, the least likely to come back is asked first."""
    added()
    for item, grade in zip(ids(house), (*Grade,), strict=True):
        house.answer(item, grade)
    house.now += timedelta(days=60)
    recalls = [
        (view.kept.item.kind.value, view.recall) for view in todays_sitting(house.desk).items
    ]
    free = [recall for kind, recall in recalls if kind != "place"]
    assert free == sorted(free)
    assert len(recalls) == 4


def test_the_next_day_something_is_asked_is_told(house, added):
    """When today is over the reader is told the day of the next sitting."""
    added()
    set_preferences(house.desk, Preferences(unasked_a_day=0))
    assert todays_sitting(house.desk).next_on is None
    set_preferences(house.desk, Preferences(unasked_a_day=6))
    while ids(house):
        house.answer(ids(house)[0], Grade.CLEAR)
    sitting = todays_sitting(house.desk)
    due = [kept.memory.due_on for kept in house.items().values() if kept.memory]
    assert sitting.next_on == min(due) > sitting.day


def test_what_came_back_blank_yesterday_is_due_today(house, added):
    """A blank that was left standing is not lost overnight."""
    added()
    first = ids(house)[0]
    house.answer(first, Grade.BLANK)
    house.now += timedelta(days=1)
    assert first in ids(house)


def test_of_many_new_books_all_kinds_are_asked_on_the_first_day(house, digest):
    """Six new books and six items a day: two of each kind, not six themes."""
    for number in range(6):
        book = replace(digest, title=f"Book {number}")
        add_digest(house.desk, f"{number}.docx", house.shelf.put(book))
    asked = []
    while views := todays_sitting(house.desk).items:
        asked.append(views[0].kept.item.kind)
        house.answer(views[0].kept.item.id, Grade.CLEAR)
    assert Counter(asked) == dict.fromkeys(KindName, 2)
    assert todays_sitting(house.desk).next_on == house.now.date() + timedelta(days=1)
