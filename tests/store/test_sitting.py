"""What a sitting asks of the store: what is due, what was asked, days, links, sheets."""

from dataclasses import replace
from datetime import timedelta
from uuid import uuid4

import pytest

from cards.answers import Grade
from cards.items import KeptItem
from cards.kinds.base import KindName, Shelved
from cards.parts import Care, Link, PartKind
from service.store.sql_store import SqlStore
from service.use_cases.records import ReaderId
from service.use_cases.sitting_records import GivenOn, Sheet, SheetItem
from tests.store.libraries import (
    NOW,
    TODAY,
    TOMORROW,
    a_book,
    a_memory,
    an_answer,
    key_of,
    shelve,
)

YESTERDAY = TODAY - timedelta(days=1)


def test_due_is_what_the_day_calls_and_was_not_asked_on_it(
    store: SqlStore, reader: ReaderId
) -> None:
    """Due are items called by the day whose last answer lies before it; no retired one.

    One that came back blank is due from the next day on, whenever it would be due.
    """
    with store.writing() as work:
        made = shelve(work, reader, a_book(quotations=6))
        blank, due, late, today, retired, future = made[:6]
        before = replace(a_memory(TOMORROW), last_day=YESTERDAY)
        work.items.remember(reader, blank.id, replace(before, last_grade=Grade.BLANK))
        work.items.remember(reader, due.id, replace(before, due_on=TODAY))
        work.items.remember(reader, late.id, replace(before, due_on=YESTERDAY))
        work.items.remember(reader, today.id, a_memory(TODAY))
        work.items.remember(reader, retired.id, replace(before, due_on=TODAY))
        work.items.remember(reader, future.id, before)
        work.items.put(reader, [replace(retired, retired=True)], NOW)
        found = work.items.due(reader, TODAY)
        chosen = work.items.chosen(reader, found.keys)
        everything = work.items.remembered(reader)
    expected = {blank.id, due.id, late.id}
    assert {each.item.id for each in chosen} == expected
    assert [each.item.kind for each in chosen] == list(found.kinds)
    assert [each.memory.due_on for each in chosen if each.memory] == list(found.due_on)
    assert set(found.last_days) == {YESTERDAY}
    assert set(found.stability) == {3.25}
    assert set(found.difficulty) == {5.5}
    assert len(everything) == 5


def test_due_tells_the_books_kept_close(store: SqlStore, reader: ReaderId) -> None:
    """What a book is worth to its reader is told with each of its items."""
    with store.writing() as work:
        for title, care in (("Close", Care.CLOSE), ("Steady", Care.STEADY)):
            made = shelve(work, reader, a_book(title))
            work.items.remember(reader, made[0].id, replace(a_memory(), last_day=YESTERDAY))
            work.items.put(reader, made, NOW, care)
        found = work.items.due(reader, TODAY)
    assert sorted(found.close) == [False, True]


def test_chosen_come_in_the_order_of_the_keys(store: SqlStore, reader: ReaderId) -> None:
    """A sitting that ranks its items gets them in that order."""
    with store.writing() as work:
        for item in shelve(work, reader, a_book(quotations=8)):
            work.items.remember(reader, item.id, replace(a_memory(), last_day=YESTERDAY))
        keys = list(work.items.due(reader, TODAY).keys)
        forth = work.items.chosen(reader, keys)
        back = work.items.chosen(reader, keys[::-1])
    assert back == forth[::-1]
    assert len({each.item.id for each in forth}) == 10


def test_returning_is_what_came_back_blank_on_the_day(store: SqlStore, reader: ReaderId) -> None:
    """A blank of another day is due, not returning; a clear one is neither."""
    with store.writing() as work:
        blank, clear, earlier, *_ = shelve(work, reader, a_book())
        work.items.remember(reader, blank.id, a_memory(TOMORROW, Grade.BLANK))
        work.items.remember(reader, clear.id, a_memory(TOMORROW))
        old = replace(a_memory(TOMORROW, Grade.BLANK), last_day=YESTERDAY)
        work.items.remember(reader, earlier.id, old)
        assert [each.item.id for each in work.items.returning(reader, TODAY, 9)] == [blank.id]
        assert work.items.returning(reader, TODAY, 0) == []


def test_commitments_are_by_the_day_they_are_due(store: SqlStore, reader: ReaderId) -> None:
    """Of `restate` items asked before the first due come first, whatever else there is."""
    with store.writing() as work:
        late, early, unasked = (shelve(work, reader, a_book(title))[1] for title in "LEU")
        work.items.remember(reader, late.id, a_memory(TOMORROW))
        work.items.remember(reader, early.id, a_memory(TODAY))
        found = work.items.commitments(reader, TODAY, 9)
        assert [each.item.id for each in found] == [early.id, late.id]
        assert [each.item.id for each in work.items.commitments(reader, TODAY, 1)] == [early.id]
    assert unasked.kind is KindName.RESTATE


def test_many_returns_what_there_is(store: SqlStore, reader: ReaderId) -> None:
    """Items by id, those there are none of left out; none asked for gives none."""
    with store.writing() as work:
        first, *_ = shelve(work, reader, a_book())
        assert work.items.many(reader, [first.id, uuid4()]) == {first.id: KeptItem(first, None)}
        assert work.items.many(reader, []) == {}


def test_the_answers_of_a_day_leave_out_what_was_taken_back(
    store: SqlStore, reader: ReaderId
) -> None:
    """In the order they happened, each with its kind and what it took."""
    with store.writing() as work:
        theme, restate, *_ = shelve(work, reader, a_book())
        second = replace(an_answer(restate, minutes=5), seconds=40)
        first = an_answer(theme, minutes=1)
        gone = an_answer(theme, minutes=2)
        other_day = replace(an_answer(theme), day=YESTERDAY)
        for answer in (second, first, gone, other_day):
            work.answers.add(reader, answer, NOW)
        work.answers.take_back(reader, uuid4(), gone.id, NOW)
        assert work.answers.on(reader, TODAY) == [
            GivenOn(first.id, theme.id, KindName.THEME, None),
            GivenOn(second.id, restate.id, KindName.RESTATE, 40),
        ]
        assert work.answers.last_day(reader, TODAY) == YESTERDAY
        assert work.answers.last_day(reader, TOMORROW) == TODAY
        assert work.answers.last_day(reader, YESTERDAY) is None


def test_an_answer_keeps_what_it_took_and_what_was_ticked(
    store: SqlStore, reader: ReaderId
) -> None:
    """Seconds, whether it was graded first, and the ticks come back as they were given."""
    with store.writing() as work:
        item, *_ = shelve(work, reader, a_book())
        for ticked in (None, frozenset[int](), frozenset({1, 3, 12})):
            answer = replace(
                an_answer(item), seconds=600, graded_first=ticked is not None, ticked=ticked
            )
            work.answers.add(reader, answer, NOW)
            kept = work.answers.get(reader, answer.id)
            assert kept is not None
            assert kept.answer == answer


def test_seconds_are_the_latest_measured_of_each_kind(store: SqlStore, reader: ReaderId) -> None:
    """At most so many of a kind, the newest days first, those nobody measured left out."""
    with store.writing() as work:
        theme, restate, *_ = shelve(work, reader, a_book())
        for number in range(6):
            day = TODAY - timedelta(days=number)
            work.answers.add(reader, replace(an_answer(theme), day=day, seconds=10 + number), NOW)
        work.answers.add(reader, an_answer(restate), NOW)
        assert work.answers.seconds(reader, 3) == {KindName.THEME: (10, 11, 12)}


def test_the_minutes_of_a_day_are_that_days(store: SqlStore, reader: ReaderId) -> None:
    """Setting them again replaces them; another day has none."""
    with store.writing() as work:
        work.readers.lock(reader)
        for minutes in (5, 15):
            work.days.set_minutes(reader, TODAY, minutes)
        assert work.days.minutes(reader, TODAY) == 15
        assert work.days.minutes(reader, TOMORROW) is None


def test_what_is_left_out_is_left_out_for_its_day(store: SqlStore, reader: ReaderId) -> None:
    """Twice is once, taking in undoes it, and another day knows nothing of it."""
    with store.writing() as work:
        item, other, *_ = shelve(work, reader, a_book())
        for now in (NOW, NOW + timedelta(minutes=1)):
            work.days.leave_out(reader, item.id, TODAY, now)
        assert work.days.left_out(reader, TODAY) == {item.id: NOW}
        assert work.days.left_out(reader, TOMORROW) == {}
        work.days.take_in(reader, other.id, TODAY)
        work.days.take_in(reader, item.id, TODAY)
        assert work.days.left_out(reader, TODAY) == {}


def test_a_link_comes_with_its_digest(store: SqlStore, reader: ReaderId) -> None:
    """With the other book's title as it is now, while that book is in the library."""
    book, other = a_book(), a_book("Of Harbours")
    point = book.held(PartKind.POINT)[0]
    made = Link(uuid4(), point.id, other.id, other.title, other.author, "Both are kept by staying.")
    with store.writing() as work:
        shelve(work, reader, book)
        shelve(work, reader, other)
        work.links.put(reader, made, NOW)
        found = work.digests.get(reader, book.id)
        assert found is not None
        assert found.links == (made,)
        again = replace(made, id=uuid4(), why="")
        work.links.put(reader, again, NOW)
        assert work.links.get(reader, made.id) == replace(made, why="")
        assert work.links.get(reader, again.id) is None
        assert work.links.leading_to(reader, other.id) == [book.id]
        renamed = replace(other, title="Of Harbours and Piers", removed=True)
        work.digests.put(reader, renamed, key_of(renamed), NOW)
        gone = work.digests.get(reader, book.id)
        assert gone is not None
        assert gone.links == ()
        kept = work.links.get(reader, made.id)
        assert kept is not None
        assert kept.title == "Of Harbours and Piers"
        work.links.drop(reader, made.id)
        assert work.links.get(reader, made.id) is None


def test_the_shelf_names_the_books_newest_first(store: SqlStore, reader: ReaderId) -> None:
    """Removed ones are left out, and no more come than asked for."""
    books = [a_book(title) for title in ("First", "Second", "Third")]
    with store.writing() as work:
        for number, book in enumerate(books):
            shelve(work, reader, book, NOW + timedelta(days=number))
        gone = replace(books[1], removed=True)
        work.digests.put(reader, gone, key_of(gone), NOW)
        shelf = [Shelved(each.id, each.title, each.author, each.finished_on) for each in books]
        assert work.digests.shelf(reader, 9) == (shelf[2], shelf[0])
        assert work.digests.shelf(reader, 1) == (shelf[2],)


@pytest.mark.parametrize("lines", [0, 3])
def test_a_sheet_comes_back_as_it_was_printed(
    store: SqlStore, reader: ReaderId, lines: int
) -> None:
    """Once entered it is open no more."""
    items = tuple(SheetItem(uuid4(), number, number > 1, uuid4()) for number in range(lines))
    sheet = Sheet(uuid4(), NOW, 10, items)
    later = Sheet(uuid4(), NOW + timedelta(days=1), 5, ())
    with store.writing() as work:
        work.readers.lock(reader)
        for each in (sheet, later):
            work.sheets.put(reader, each)
        assert work.sheets.get(reader, sheet.id) == sheet
        assert work.sheets.open(reader, 9) == [later, sheet]
        entered = replace(sheet, entered_at=NOW)
        work.sheets.put(reader, entered)
        assert work.sheets.get(reader, sheet.id) == entered
        assert work.sheets.open(reader, 9) == [later]
        assert work.sheets.get(ReaderId(uuid4()), sheet.id) is None
