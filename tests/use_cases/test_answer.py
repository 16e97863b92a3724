"""Answers are facts: kept once, in their order, and taken back by another fact."""

from datetime import UTC, date, datetime, timedelta, timezone
from uuid import UUID, uuid4

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from cards.answers import GRADES, Grade
from cards.errors import AnswerConflict, AnswerInFuture, AnswerMissing, InvalidAnswer, ItemMissing
from cards.kinds.base import Attempt, KindName
from cards.schedule import Schedule
from service.use_cases.add_digest import add_digest
from service.use_cases.answer import (
    GivenAnswer,
    compare,
    record_answer,
    show_answer,
    take_back,
)
from service.use_cases.items import item_history, show_item
from service.use_cases.mend_digest import remove_digest
from tests.use_cases.house import DIGEST, START, House

HISTORIES = st.lists(
    st.tuples(st.integers(0, 60 * 24 * 60), st.sampled_from(GRADES)),
    min_size=1,
    max_size=8,
    unique_by=lambda answer: answer[0],
)


def some_item(house: House, kind: KindName = KindName.THEME) -> UUID:
    """Find an item of a kind."""
    return next(kept.item.id for kept in house.items().values() if kept.item.kind is kind)


@pytest.fixture
def item(house, added) -> UUID:
    """The item that asks the theme of an added digest."""
    added()
    return some_item(house)


def send(house, item, history, order, times=1):
    """Send a history's answers, under ids of their own, in an order of arrival."""
    ids = [uuid4() for _ in history]
    for index in [*order] * times:
        minutes, grade = history[index]
        at = START + timedelta(minutes=minutes)
        record_answer(house.desk, GivenAnswer(ids[index], item, grade, at))


@settings(
    max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(history=HISTORIES, data=st.data())
def test_answers_in_any_order_of_arrival_or_twice_give_the_same_memory(house, history, data):
    """However often and in whatever order answers arrive, the memory is the same."""
    order = data.draw(st.permutations(range(len(history))))
    memories = []
    for arrival, times in ((sorted(order, key=lambda i: history[i][0]), 1), (order, 2)):
        own = house.another_reader()
        own.now = START + timedelta(days=100)
        add_digest(own.desk, "silas.docx", own.shelf.put(DIGEST))
        item = some_item(own)
        send(own, item, history, arrival, times)
        memory = own.items()[item].memory
        memories.append((memory.stability, memory.difficulty, memory.last_day, memory.answers))
    assert memories[0] == memories[1]


def test_a_better_grade_comes_back_later(house, item):
    """What the comparison promises for each grade is what recording it gives."""
    promised = compare(house.desk, item, Attempt()).due
    assert list(promised.values()) == sorted(promised.values())
    recorded = house.answer(item, Grade.VIVID)
    assert recorded.item.memory.due_on == promised[Grade.VIVID]


def test_the_suggested_grade_is_kept_beside_the_readers_own(house, item):
    """The reader's grade decides; the mark's is kept to be judged later."""
    attempt = Attempt(words="Something else entirely.")
    given_answer = GivenAnswer(uuid4(), item, Grade.CLEAR, None, attempt)
    kept = record_answer(house.desk, given_answer).answer.answer
    assert (kept.grade, kept.suggested) == (Grade.CLEAR, Grade.BLANK)
    assert kept.attempt == "Something else entirely."


def test_a_prediction_is_kept_as_it_was_made(house, item):
    """A late arrival gets its own prediction and leaves those of later answers alone."""
    first = house.answer(item, Grade.CLEAR)
    house.now += timedelta(days=20)
    third = house.answer(item, Grade.CLEAR)
    made = third.answer.answer.predicted
    late = house.answer(item, Grade.BLANK, START + timedelta(days=8))
    after = show_answer(house.desk, third.answer.answer.id).answer.answer
    assert first.answer.answer.predicted is None
    assert made == Schedule().recall(first.item.memory, date(2026, 1, 25)) == after.predicted
    assert late.answer.answer.predicted == Schedule().recall(first.item.memory, date(2026, 1, 13))
    assert late.item.memory.last_grade is Grade.CLEAR


@pytest.mark.parametrize(
    ("change", "refusal"),
    [
        ({"item_id": uuid4()}, ItemMissing),
        ({"answered_at": START + timedelta(days=1)}, AnswerInFuture),
        ({"answered_at": START + timedelta(minutes=6)}, AnswerInFuture),
        ({"answered_at": datetime(1, 1, 1, tzinfo=timezone(timedelta(hours=14)))}, InvalidAnswer),
        ({"attempt": Attempt(words="x" * 20_001)}, InvalidAnswer),
    ],
)
def test_what_cannot_be_an_answer_is_refused_and_nothing_is_kept(house, item, change, refusal):
    """An unknown item, a date that has not come, an endless attempt."""
    answer = {"id": uuid4(), "item_id": item, "grade": Grade.CLEAR} | change
    with pytest.raises(refusal):
        record_answer(house.desk, GivenAnswer(**answer))
    assert house.items()[item].memory is None


def test_a_clock_slightly_ahead_is_forgiven(house, item):
    """A device whose clock runs five minutes ahead can answer."""
    given_answer = GivenAnswer(uuid4(), item, Grade.CLEAR, START + timedelta(minutes=5))
    assert record_answer(house.desk, given_answer).fresh


def test_an_id_belongs_to_one_answer(house, item):
    """The same id with another grade is refused; the very same answer is harmless."""
    answer_id = uuid4()
    record_answer(house.desk, GivenAnswer(answer_id, item, Grade.CLEAR))
    with pytest.raises(AnswerConflict):
        record_answer(house.desk, GivenAnswer(answer_id, item, Grade.VIVID))
    again = record_answer(house.desk, GivenAnswer(answer_id, item, Grade.CLEAR))
    assert not again.fresh
    assert len(item_history(house.desk, item).answers) == 1


def test_taking_back_twice_changes_nothing_more(house, item):
    """An answer is taken back once; the record keeps both facts."""
    answer = house.answer(item, Grade.VIVID).answer.answer.id
    first = take_back(house.desk, answer, uuid4())
    second = take_back(house.desk, answer, uuid4())
    assert first.item.memory is None
    assert (first.fresh, second.fresh) == (True, False)
    assert second.answer.taken_back_at == first.answer.taken_back_at
    with pytest.raises(AnswerMissing):
        take_back(house.desk, uuid4(), uuid4())


def test_an_answer_to_a_removed_book_is_still_a_fact(house, added):
    """An answer from a device that did not know the book was removed is kept."""
    digest_id = added()
    item = some_item(house)
    remove_digest(house.desk, digest_id)
    assert house.answer(item, Grade.HAZY).item.memory.answers == 1
    assert show_item(house.desk, item).cue is None
    with pytest.raises(ItemMissing):
        compare(house.desk, item, Attempt(words="gold"))


def test_no_reader_reaches_anothers_answers(house, item):
    """Another reader can neither answer the item nor see or take back its answer."""
    answer = house.answer(item, Grade.CLEAR).answer.answer.id
    other = house.another_reader()
    with pytest.raises(ItemMissing):
        other.answer(item, Grade.CLEAR)
    with pytest.raises(AnswerMissing):
        show_answer(other.desk, answer)
    with pytest.raises(AnswerMissing):
        take_back(other.desk, answer, uuid4())


def test_an_answer_bears_the_readers_day(house, item):
    """The day is fixed in the reader's zone when the answer is recorded."""
    at = datetime(2026, 1, 5, 3, 59, tzinfo=UTC)
    assert house.answer(item, Grade.CLEAR, at).answer.answer.day == date(2026, 1, 4)
