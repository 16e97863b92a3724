"""The answers of a reader: facts."""

from dataclasses import replace
from datetime import datetime, timedelta
from uuid import UUID, uuid4

import pytest

from cards.answers import Grade
from cards.errors import Conflict
from service.store.errors import StoreContradiction
from service.store.sql_store import SqlStore
from service.use_cases.records import KeptAnswer, ReaderId
from tests.store.libraries import NOW, a_book, an_answer, shelve


def test_they_come_in_the_order_they_happened(store: SqlStore, reader: ReaderId) -> None:
    """Answers to an item come in the order they happened, whatever order they arrived in."""
    with store.writing() as work:
        item, other, *_ = shelve(work, reader, a_book())
        late, early, middle = (an_answer(item, minutes) for minutes in (9, 1, 5))
        for answer in (late, early, an_answer(other), middle):
            work.answers.add(reader, answer, NOW)
        assert work.answers.of_item(reader, item.id) == [early, middle, late]


def test_another_answer_under_the_same_id_is_not_kept(store: SqlStore, reader: ReaderId) -> None:
    """An id names one answer for good: a different one under it is told apart and not kept."""
    with store.writing() as work:
        item, other, *_ = shelve(work, reader, a_book())
        answer = an_answer(item)
        assert work.answers.add(reader, answer, NOW)
        for different in (
            replace(answer, grade=Grade.BLANK),
            replace(answer, item_id=other.id),
            replace(answer, attempt="something else"),
        ):
            assert not work.answers.add(reader, different, NOW)
        assert work.answers.of_item(reader, item.id) == [answer]


def test_adding_twice_keeps_when_it_first_arrived(store: SqlStore, reader: ReaderId) -> None:
    """The same answer sent again changes nothing, not even when it arrived."""
    with store.writing() as work:
        item = shelve(work, reader, a_book())[0]
        answer = an_answer(item)
        work.answers.add(reader, answer, NOW)
        work.answers.add(reader, answer, NOW + timedelta(hours=1))
        assert work.answers.get(reader, answer.id) == KeptAnswer(answer, NOW)


def test_an_answer_needs_its_item(store: SqlStore, reader: ReaderId) -> None:
    """An answer to an item that is not there is not kept."""
    with store.writing() as work:
        answer = replace(an_answer(shelve(work, reader, a_book())[0]), item_id=uuid4())
        with pytest.raises(StoreContradiction):
            work.answers.add(reader, answer, NOW)


def test_taken_back_is_another_fact(store: SqlStore, reader: ReaderId) -> None:
    """An answer taken back counts no more and is still there, with when that happened."""
    then = NOW + timedelta(hours=2)
    with store.writing() as work:
        item = shelve(work, reader, a_book())[0]
        kept, gone = an_answer(item, 1), an_answer(item, 2)
        for answer in (kept, gone):
            work.answers.add(reader, answer, NOW)
        work.answers.take_back(reader, uuid4(), gone.id, then)
        assert work.answers.of_item(reader, item.id) == [kept]
        assert work.answers.get(reader, gone.id) == KeptAnswer(gone, NOW, then)
        assert work.answers.get(reader, kept.id) == KeptAnswer(kept, NOW)


def test_taking_back_twice_changes_nothing(store: SqlStore, reader: ReaderId) -> None:
    """Taking back again, under the same id or another, leaves the first time standing."""
    fact = uuid4()
    with store.writing() as work:
        item = shelve(work, reader, a_book())[0]
        answer = an_answer(item)
        work.answers.add(reader, answer, NOW)
        for again in (fact, fact, uuid4()):
            work.answers.take_back(reader, again, answer.id, NOW)
        work.answers.take_back(reader, uuid4(), answer.id, NOW + timedelta(hours=3))
        assert work.answers.get(reader, answer.id) == KeptAnswer(answer, NOW, NOW)


def test_a_fact_takes_back_one_answer(store: SqlStore, reader: ReaderId) -> None:
    """A second answer cannot be taken back under the id of the first one's fact; it stands."""
    fact = uuid4()
    with store.writing() as work:
        item = shelve(work, reader, a_book())[0]
        gone, standing = an_answer(item, 1), an_answer(item, 2)
        for answer in (gone, standing):
            work.answers.add(reader, answer, NOW)
        work.answers.take_back(reader, fact, gone.id, NOW)
        with pytest.raises(Conflict):
            work.answers.take_back(reader, fact, standing.id, NOW)
        assert work.answers.of_item(reader, item.id) == [standing]


def test_history_is_newest_first_and_its_pages_meet(store: SqlStore, reader: ReaderId) -> None:
    """Page after page gives every answer once, newest first, those taken back too."""
    with store.writing() as work:
        item, other, *_ = shelve(work, reader, a_book())
        # Three at each instant: the id decides between them.
        given = [an_answer(item, minutes // 3) for minutes in range(8)]
        for answer in (*given, an_answer(other)):
            work.answers.add(reader, answer, NOW)
        work.answers.take_back(reader, uuid4(), given[4].id, NOW)
        seen: list[KeptAnswer] = []
        after: tuple[datetime, UUID] | None = None
        while page := work.answers.history(reader, item.id, after, 3):
            seen += page
            after = (page[-1].answer.answered_at, page[-1].answer.id)
    newest_first = sorted(
        given, key=lambda answer: (answer.answered_at, answer.id.bytes), reverse=True
    )
    assert [kept.answer for kept in seen] == newest_first
    assert [kept.answer for kept in seen if kept.taken_back_at] == [given[4]]
