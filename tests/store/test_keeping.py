"""Commitments, decisions, re-readings, talks: kept whole, taken back, and what rests for them."""

from dataclasses import replace
from datetime import timedelta
from uuid import UUID, uuid4

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from cards.commitments import CheckIn, Commitment, Decision, Measure, Outcome
from cards.kinds.base import KindName
from cards.parts import PartKind
from cards.rereading import Rereading
from cards.talk import Talk
from service.store.sql_store import SqlStore
from service.use_cases.commitment_records import NewCommitment
from service.use_cases.records import ReaderId
from service.use_cases.reminding_records import FeedAddress, Reminders
from tests.store.anything import decisions, rereadings, talks
from tests.store.keeping import WEEKLY, a_commitment, a_decision, a_rereading, a_talk
from tests.store.libraries import NOW, TODAY, TOMORROW, a_book, a_memory, shelve

BOOK = a_book()
PROMISED = BOOK.held(PartKind.COMMITMENT)[0].id
HASH = "5" * 64

few = settings(
    max_examples=30,  # each opens two transactions, one of them on PostgreSQL
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)


@few
@given(decided=st.lists(decisions(PROMISED), max_size=4, unique_by=lambda each: each.id))
def test_decisions_come_back_whole(store: SqlStore, decided: list[Decision]) -> None:
    """Decisions come back word for word, by day and id, one by one and all together."""
    reader = ReaderId(uuid4())
    with store.writing() as work:
        shelve(work, reader, BOOK)
        for decision in decided:
            work.decisions.add(reader, decision)
        work.commit()
    with store.reading() as work:
        in_order = sorted(decided, key=lambda each: (each.day, each.id.bytes))
        assert work.decisions.of(reader, [PROMISED]) == ({PROMISED: in_order} if decided else {})
        assert work.decisions.all(reader) == work.decisions.of(reader, [PROMISED])
        assert all(work.decisions.get(reader, each.id) == each for each in decided)
        assert work.decisions.of(reader, []) == {}


@few
@given(
    read=st.lists(rereadings(BOOK.id), max_size=3, unique_by=lambda each: each.id),
    told=st.lists(talks(BOOK.id), max_size=3, unique_by=lambda each: each.id),
)
def test_rereadings_and_talks_come_back_whole(
    store: SqlStore, read: list[Rereading], told: list[Talk]
) -> None:
    """Re-readings and talks come back word for word, the latest day first."""
    reader = ReaderId(uuid4())
    with store.writing() as work:
        shelve(work, reader, BOOK)
        for rereading in read:
            work.rereadings.add(reader, rereading)
        for talk in told:
            work.talks.add(reader, talk)
        work.commit()
    with store.reading() as work:
        assert {each.id: each for each in work.rereadings.all(reader)} == {
            each.id: each for each in read
        }
        for found in (
            work.rereadings.of_digest(reader, BOOK.id),
            work.talks.of_digest(reader, BOOK.id),
        ):
            days = [each.day for each in found]
            assert days == sorted(days, reverse=True)
        assert all(work.talks.get(reader, each.id) == each for each in told)


def test_commitments_say_what_their_digest_says_now(store: SqlStore, reader: ReaderId) -> None:
    """A commitment keeps when it was made; its place, its words now and its book come with it."""
    with store.writing() as work:
        shelve(work, reader, BOOK)
        assert work.commitments.unentered(reader) == [BOOK.id]
        made = a_commitment(BOOK)
        work.commitments.enter(reader, [NewCommitment(made, BOOK.id)])
        assert work.commitments.unentered(reader) == []
        found = work.commitments.get(reader, made.id)
        assert found is not None
        assert (found.commitment, found.title, found.number) == (made, BOOK.title, 1)
        assert work.commitments.of_digests(reader, [BOOK.id]) == [found]
        assert work.commitments.all(reader) == [found]
        later = replace(made, text="Write.", measure=None, entered_on=TODAY - timedelta(days=90))
        work.commitments.enter(reader, [NewCommitment(later, BOOK.id)])
        kept = work.commitments.get(reader, made.id)
        assert kept is not None
        assert kept.commitment == replace(made, text="Write.", measure=None)
        assert work.commitments.get(reader, uuid4()) is None
        assert work.commitments.of_digests(reader, []) == []


def test_what_is_over_rests(store: SqlStore, reader: ReaderId) -> None:
    """From the day a commitment rests on, its item is neither due, soon, unasked nor owed."""

    def asked(day_of_asking: int) -> set[UUID]:
        day = TODAY + timedelta(days=day_of_asking)
        with store.reading() as work:
            found = [
                *work.items.commitments(reader, day, 9),
                *work.items.unasked(reader, day, 9),
                *work.items.chosen(reader, work.items.due(reader, day).keys),
                *work.items.chosen(reader, work.items.soon(reader, day, 9).keys),
            ]
        return {each.item.id for each in found if each.item.kind is KindName.RESTATE}

    with store.writing() as work:
        item = next(each for each in shelve(work, reader, BOOK) if each.kind is KindName.RESTATE)
        work.commitments.enter(reader, [NewCommitment(a_commitment(BOOK), BOOK.id)])
        work.commitments.rest(reader, {PROMISED: TOMORROW})
        work.commit()
    assert [asked(0), asked(1)] == [{item.id}, set()]
    with store.writing() as work:
        work.items.remember(reader, item.id, a_memory(TODAY + timedelta(days=3)))
        assert work.items.next_call(reader, TODAY) is None
        work.commit()
    assert [asked(0), asked(1)] == [{item.id}, set()]
    with store.writing() as work:
        work.commitments.rest(reader, {PROMISED: None})
        assert work.items.next_call(reader, TODAY) == TODAY + timedelta(days=3)
        work.commit()
    assert asked(1) == {item.id}


def test_an_item_is_asked_afresh_once(store: SqlStore, reader: ReaderId) -> None:
    """What was read again is asked from its day until it is answered; what never was, is not."""
    with store.writing() as work:
        item, unasked, *_ = shelve(work, reader, BOOK)
        work.items.remember(reader, item.id, a_memory(TODAY + timedelta(days=90)))
        work.items.ask_afresh(reader, {item.id: TOMORROW, unasked.id: TOMORROW})
        assert work.items.next_call(reader, TODAY) == TOMORROW
        assert work.items.afresh(reader, TODAY, 9) == []
        assert [each.item.id for each in work.items.afresh(reader, TOMORROW, 9)] == [item.id]
        answered = replace(a_memory(TODAY + timedelta(days=90)), last_day=TOMORROW)
        work.items.remember(reader, item.id, answered)
        assert work.items.afresh(reader, TOMORROW, 9) == []
        work.items.ask_afresh(reader, {})


def test_what_is_taken_back_is_known_until_then(store: SqlStore, reader: ReaderId) -> None:
    """A fact taken back says on which day; a book's re-readings and talks are without it."""
    decision, rereading, talk = a_decision(BOOK), a_rereading(BOOK), a_talk(BOOK)
    report = CheckIn(uuid4(), PROMISED, Outcome.KEPT, TODAY, NOW, TODAY)
    with store.writing() as work:
        shelve(work, reader, BOOK)
        work.decisions.add(reader, decision)
        work.rereadings.add(reader, rereading)
        work.talks.add(reader, talk)
        work.check_ins.add(reader, report)
        for fact in (decision, rereading, talk, report):
            for _ in range(2):
                work.withdrawals.add(reader, uuid4(), fact.id, NOW, TOMORROW)
        assert work.decisions.of(reader, [PROMISED]) == {
            PROMISED: [replace(decision, withdrawn_on=TOMORROW)]
        }
        assert work.rereadings.get(reader, rereading.id) == replace(
            rereading, withdrawn_on=TOMORROW
        )
        assert work.talks.get(reader, talk.id) == replace(talk, withdrawn_on=TOMORROW)
        assert work.check_ins.get(reader, report.id) == replace(report, withdrawn_on=TOMORROW)
        assert work.check_ins.since(reader, {PROMISED: TODAY}) == {
            PROMISED: [replace(report, withdrawn_on=TOMORROW)]
        }
        assert work.check_ins.of_digest(reader, BOOK.id) == []
        assert work.check_ins.tallies(reader, [PROMISED]) == {}
        assert work.rereadings.of_digest(reader, BOOK.id) == []
        assert work.talks.of_digest(reader, BOOK.id) == []


def test_check_ins_of_many_are_read_in_a_few_statements(
    store: SqlStore, reader: ReaderId, statements: list[str]
) -> None:
    """Whatever day each is asked from, all are found in few statements, none far too early."""
    books = [a_book(f"Book {number}") for number in range(12)]
    first_days = {
        book.held(PartKind.COMMITMENT)[0].id: TODAY - timedelta(days=3**number)
        for number, book in enumerate(books[:8])
    }
    with store.writing() as work:
        for book in books:
            shelve(work, reader, book)
        expected = {}
        for commitment, first in first_days.items():
            report = CheckIn(uuid4(), commitment, Outcome.KEPT, first, NOW, TODAY)
            work.check_ins.add(reader, report)
            expected[commitment] = [report]
            early = replace(report, id=uuid4(), day=TODAY - timedelta(days=36500))
            work.check_ins.add(reader, early)
        work.commit()
    statements.clear()
    with store.reading() as work:
        assert work.check_ins.since(reader, first_days) == expected
        assert work.check_ins.since(reader, {}) == {}
    assert len([each for each in statements if each.startswith("SELECT")]) <= 4


def test_check_ins_about_a_day_are_counted(store: SqlStore, reader: ReaderId) -> None:
    """So many are about a day; the latest of a commitment come first, as many as asked for."""
    with store.writing() as work:
        shelve(work, reader, BOOK)
        reports = [
            CheckIn(uuid4(), PROMISED, Outcome.KEPT, TODAY - timedelta(days=n // 2), NOW, TODAY)
            for n in range(4)
        ]
        for report in reports:
            work.check_ins.add(reader, report)
        assert work.check_ins.count_on(reader, PROMISED, TODAY) == 2
        latest = work.check_ins.of_commitment(reader, PROMISED, 2)
        assert {each.id for each in latest} == {each.id for each in reports[:2]}
        assert work.check_ins.get(reader, uuid4()) is None


def test_a_mail_is_begun_once_a_day(store: SqlStore, reader: ReaderId) -> None:
    """Of two who want to send the mail of a day one does; a failed one may be tried again."""
    with store.writing() as work:
        assert work.reminding.begin_mail(reader, TODAY, NOW, "1" * 64)
        assert not work.reminding.begin_mail(reader, TODAY, NOW, "1" * 64)
        work.reminding.end_mail(reader, TODAY, None)
        assert work.reminding.begin_mail(reader, TODAY, NOW, "1" * 64)
        work.reminding.end_mail(reader, TODAY, NOW)
        assert not work.reminding.begin_mail(reader, TODAY, NOW, "1" * 64)
        assert work.reminding.mailed(reader, 5) == [(TODAY, NOW)]
        assert work.reminding.ends_mail(reader, "1" * 64)
        assert not work.reminding.ends_mail(reader, "2" * 64)


def test_reminders_and_addresses_are_kept(store: SqlStore, reader: ReaderId) -> None:
    """What is set is what is found; an address opens until it is revoked, once."""
    address = FeedAddress(uuid4(), "Desk", NOW)
    wanted = Reminders(mail=True, mail_to="ada@example.org", mail_at=6, revision=2)
    with store.writing() as work:
        assert work.reminding.get(reader) == Reminders()
        work.reminding.put(reader, wanted)
        assert work.reminding.get(reader) == wanted
        work.reminding.add_address(reader, address, HASH)
        assert work.reminding.opens(reader, HASH)
        assert not work.reminding.opens(reader, "6" * 64)
        assert work.reminding.revoke(reader, address.id, NOW)
        assert not work.reminding.revoke(reader, address.id, NOW)
        assert not work.reminding.opens(reader, HASH)
        assert work.reminding.addresses(reader) == [replace(address, revoked_at=NOW)]


@pytest.mark.parametrize("measure", [None, WEEKLY])
def test_a_measure_may_be_missing(
    store: SqlStore, reader: ReaderId, measure: Measure | None
) -> None:
    """A commitment without a measure comes back without."""
    with store.writing() as work:
        shelve(work, reader, BOOK)
        made = Commitment(PROMISED, "Write.", TODAY, TODAY, measure)
        work.commitments.enter(reader, [NewCommitment(made, BOOK.id)])
        kept = work.commitments.get(reader, PROMISED)
        assert kept is not None
        assert kept.commitment.measure == measure
