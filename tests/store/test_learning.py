"""What is learned from the answers is kept whole, and due days move a few at a time."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from uuid import UUID

import pytest

from cards.answers import Answer, Grade
from cards.fitting import Comparison, Verdict
from cards.kinds.base import KindName
from cards.retention.tally import Of, Tally, TallyKey
from cards.schedule import DEFAULT_WEIGHTS, Memory
from cards.weighting import PUBLISHED, Weighting
from service.store.sql_store import SqlStore
from service.use_cases.learning_records import Fitting, Refolded
from service.use_cases.records import ReaderId
from tests.store.libraries import a_book, shelve

OTHER = ReaderId(UUID(int=99))
NOW = datetime(2026, 3, 1, 21, 40, tzinfo=UTC)
DAY = date(2026, 3, 1)
OWN = Weighting(
    tuple(weight * 1.01 for weight in DEFAULT_WEIGHTS),
    ((KindName.PLACE, tuple(weight * 0.99 for weight in DEFAULT_WEIGHTS)),),
)
BOOK, MONTH = TallyKey(Of.BOOK, "a" * 32), TallyKey(Of.MONTH, "2026-03")


def test_tallies_add_up_and_vanish_at_nothing(store: SqlStore, reader: ReaderId) -> None:
    """What is added is added to what was there; a tally that comes to nothing is gone."""
    with store.writing() as work:
        work.readers.ensure(reader)
        work.tallies.add(reader, {BOOK: Tally(3, 2, 1, 1, 5, 6, 7), MONTH: Tally(1, 1)})
        work.tallies.add(reader, {BOOK: Tally(1, 0, 1, 0, 10**17, 0, -2), MONTH: Tally(-1, -1)})
        work.tallies.reach(reader, DAY)
        work.tallies.reach(reader, DAY + timedelta(days=1))
        work.commit()
    with store.reading() as work:
        assert work.tallies.all(reader) == {BOOK: Tally(4, 2, 2, 1, 10**17 + 5, 6, 5)}
        assert work.tallies.through(reader) == DAY + timedelta(days=1)
        assert work.tallies.all(OTHER) == {}
        assert work.tallies.through(OTHER) is None


def test_a_fit_comes_back_to_the_last_bit(store: SqlStore, reader: ReaderId) -> None:
    """A fit, its verdicts and the weights in force are handed back as they were kept."""
    verdicts = (
        Verdict(None, 900, 180, Comparison(739_000, 0.1 + 0.2, 1 / 3, 1e-9), True, "Better."),
        Verdict(KindName.PLACE, 40, 8, None, False, "Too few."),
    )
    first = Fitting(UUID(int=1), NOW, DAY, 900, verdicts, OWN)
    later = replace(
        first,
        id=UUID(int=2),
        fitted_at=NOW + timedelta(days=1),
        verdicts=verdicts[1:],
        weighting=PUBLISHED,
        refolded=True,
    )
    with store.writing() as work:
        work.readers.ensure(reader)
        work.fittings.add(reader, first)
        work.fittings.add(reader, later)
        work.fittings.carried(reader, first.id, DAY)
        work.readers.weigh(reader, OWN)
        work.commit()
    with store.reading() as work:
        assert work.fittings.latest(reader) == later
        assert work.fittings.adopted(reader, 9) == [replace(first, refolded=True, moved_on=DAY)]
        assert work.fittings.latest(OTHER) is None
        assert work.readers.get(reader).weighting == OWN


def test_settings_leave_what_was_learned(store: SqlStore, reader: ReaderId) -> None:
    """Changing a setting does not touch the weights in force."""
    with store.writing() as work:
        settings = work.readers.lock(reader)
        work.readers.weigh(reader, OWN)
        work.readers.put(replace(settings, minutes=5, revision=2))
        work.commit()
    with store.reading() as work:
        assert work.readers.get(reader).weighting == OWN
        assert work.readers.get(reader).minutes == 5


@pytest.fixture
def answered(store: SqlStore, reader: ReaderId) -> tuple[UUID, ...]:
    """Three items of a kept library, answered twice each, the second time with a prediction."""
    with store.writing() as work:
        item_ids = [each.id for each in shelve(work, reader, a_book())[:3]]
        for number, item_id in enumerate(item_ids):
            for turn in range(2):
                given = NOW + timedelta(days=turn * 4, minutes=number)
                answer = Answer(
                    UUID(int=100 + 10 * number + turn),
                    item_id,
                    Grade.CLEAR if turn else Grade.BLANK,
                    given,
                    given.date(),
                    predicted=0.75 if turn else None,
                )
                assert work.answers.add(reader, answer, given)
            work.items.remember(reader, item_id, memory(number))
        work.commit()
    return tuple(item_ids)


def memory(number: int, due: int = 10) -> Memory:
    """Return what an item's answers come to, due some days on."""
    day = NOW.date() + timedelta(days=4)
    due_on = day + timedelta(days=due + number)
    return Memory(5.0 + number, 5.0, NOW.date(), day, Grade.CLEAR, 2, due_on)


def test_answers_are_handed_out_item_by_item(
    store: SqlStore, reader: ReaderId, answered: tuple[UUID, ...]
) -> None:
    """All answers to items answered in a stretch of days come, none of a later day."""
    with store.writing() as work:
        work.answers.take_back(reader, UUID(int=7), UUID(int=100), NOW)
        work.commit()
    with store.reading() as work:
        every = list(work.tallies.answers(reader, None, None))
        assert sorted(len(each.answers) for each in every) == [1, 2, 2]
        assert {each.answers[-1].predicted for each in every} == {0.75}
        early = list(work.tallies.answers(reader, None, DAY))
        assert [len(each.answers) for each in early] == [1, 1]
        assert len(list(work.tallies.answers(reader, DAY, None))) == 3
        assert not list(work.tallies.answers(reader, DAY + timedelta(days=4), None))
        assert not list(work.tallies.answers(OTHER, None, None))


def test_columns_hold_every_answer(
    store: SqlStore, reader: ReaderId, answered: tuple[UUID, ...]
) -> None:
    """Every answer not taken back is in the columns, item by item, its days never falling."""
    with store.writing() as work:
        work.answers.take_back(reader, UUID(int=7), UUID(int=100), NOW)
        work.commit()
    with store.reading() as work:
        columns = work.fittings.columns(reader)
        assert list(columns.items) in ([0, 1, 1, 2, 2], [0, 0, 1, 2, 2], [0, 0, 1, 1, 2])
        assert sorted(columns.grades) == [0, 0, 2, 2, 2]
        assert len(columns.kinds) == len(columns.days) == 5
        assert not work.fittings.columns(OTHER).items


def test_due_days_move_a_few_at_a_time(
    store: SqlStore, reader: ReaderId, answered: tuple[UUID, ...]
) -> None:
    """A memory folded again counts at once; its due day waits until it is moved."""
    with store.writing() as work:
        folded = work.fittings.folded(reader, None, 10)
        assert {each.item_id for each in folded} == set(answered)
        assert work.fittings.folded(reader, folded[0].item_id, 1) == folded[1:2]
        for number, item_id in enumerate(answered):
            due_on = memory(number).due_on
            work.fittings.refold(reader, [Refolded(item_id, memory(number, due=3), due_on)])
        assert work.fittings.moving(reader) == 3
        kept = work.items.many(reader, answered)
        assert [kept[each].memory for each in answered] == [
            replace(memory(number, due=3), due_on=memory(number).due_on) for number in range(3)
        ]
        assert work.fittings.move(reader, 2) == 2
        assert work.fittings.moving(reader) == 1
        moved = work.items.many(reader, answered)
        assert moved[answered[0]].memory == memory(0, due=3)
        assert moved[answered[2]].memory.due_on == memory(2).due_on
        work.items.remember(reader, answered[2], memory(2))
        assert work.fittings.moving(reader) == 0
        assert work.fittings.move(reader, 2) == 0
        assert work.fittings.moving(OTHER) == 0
