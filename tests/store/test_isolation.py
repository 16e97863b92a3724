"""No reader reaches another's rows."""

from uuid import uuid4

import pytest

from cards.commitments import CheckIn, Outcome
from cards.errors import AnswerConflict
from cards.intake.heading_words import Part
from cards.kinds.base import KindName
from cards.parts import PartKind
from service.store.errors import StoreContradiction
from service.store.sql_store import SqlStore
from service.use_cases.commitment_records import NewCommitment
from service.use_cases.records import Cause, PartAnchor, Reader, ReaderId, Version
from service.use_cases.reminding_records import FeedAddress, Reminders
from tests.store.keeping import a_commitment, a_decision, a_rereading, a_talk
from tests.store.libraries import (
    NOW,
    TODAY,
    TOMORROW,
    a_book,
    a_draft,
    a_file,
    a_memory,
    a_text,
    an_anchor,
    an_answer,
    in_any_order,
    key_of,
    shelve,
)


def test_anothers_ids_give_nothing(store: SqlStore, reader: ReaderId) -> None:
    """Whatever one reader keeps, another finds nothing by its ids, names, days or pages."""
    other = ReaderId(uuid4())
    book = a_book()
    with store.writing() as work:
        item, second, *_ = shelve(work, reader, book)
        answer = an_answer(item)
        work.answers.add(reader, answer, NOW)
        work.items.remember(reader, item.id, a_memory())
        work.digests.keep_original(reader, book.id, a_file())
        commitment = book.held(PartKind.COMMITMENT)[0]
        work.check_ins.add(reader, CheckIn(uuid4(), commitment.id, Outcome.KEPT, TODAY, NOW, TODAY))
        work.readers.put(Reader(reader, unasked_a_day=1))
        work.commit()
    with store.writing() as work:
        assert work.readers.get(other) == Reader(other)
        assert work.digests.get(other, book.id) is None
        assert work.digests.many(other, [book.id]) == {}
        assert work.digests.alike(other, key_of(book)) == []
        assert work.digests.from_file(other, "fell.docx") == []
        assert work.digests.page(other, None, 9) == []
        assert work.digests.original(other, book.id) is None
        assert work.digests.original_hash(other, book.id) is None
        assert work.items.get(other, item.id) is None
        assert work.items.lock(other, item.id) is None
        assert work.items.of_digest(other, book.id) == []
        assert work.items.standings(other, [book.id]) == {}
        assert len(work.items.due(other, TOMORROW)) == 0
        assert len(work.items.remembered(other)) == 0
        assert work.items.returning(other, TODAY, 9) == []
        assert work.items.commitments(other, TODAY, 9) == []
        assert work.items.many(other, [item.id]) == {}
        assert work.answers.on(other, TODAY) == []
        assert work.answers.last_day(other, TOMORROW) is None
        assert work.answers.seconds(other, 9) == {}
        assert work.digests.shelf(other, 9) == ()
        assert work.items.unasked(other, TODAY, 9) == []
        assert work.items.first_asked(other, TODAY) == {}
        assert work.items.next_call(other, TODAY.replace(year=1)) is None
        assert work.items.page(other, None, 9, book.id, KindName.THEME) == []
        assert work.answers.get(other, answer.id) is None
        assert work.answers.of_item(other, item.id) == []
        assert work.answers.history(other, item.id, None, 9) == []
        assert work.check_ins.of_digest(other, book.id) == []
        assert work.check_ins.tallies(other, [commitment.id]) == {}
        work.items.remember(other, second.id, a_memory())
        kept = work.items.get(reader, second.id)
        assert kept is not None
        assert kept.memory is None


def test_anothers_drafts_versions_and_texts_give_nothing(store: SqlStore, reader: ReaderId) -> None:
    """Nothing of what one reader writes, wrote before or proved is found under another's name."""
    other = ReaderId(uuid4())
    book = a_book()
    with store.writing() as work:
        shelve(work, reader, book)
        draft = a_draft()
        work.versions.add(reader, Version(NOW, Cause.ADDED, book))
        work.drafts.put(reader, draft)
        work.drafts.keep_original(reader, draft.id, a_file())
        work.headings.put(reader, {"Gist": Part.THEME})
        work.books.put(reader, book.id, a_text())
        work.books.put_anchors(reader, book.id, [PartAnchor(book.parts[-1].id, an_anchor())])
        work.commit()
    with store.reading() as work:
        assert work.versions.get(other, book.id, book.revision) is None
        assert work.versions.page(other, book.id, None, 9) == []
        assert work.versions.wordings(other, book.id, 9) == {}
        assert work.drafts.get(other, draft.id) is None
        assert work.drafts.page(other, None, 9) == []
        assert work.drafts.count(other) == 0
        assert work.drafts.original(other, draft.id) is None
        assert work.headings.all(other) == {}
        assert work.books.get(other, book.id) is None
        assert work.books.name(other, book.id) is None
        assert work.books.anchors(other, book.id) == []


def test_anothers_promises_give_nothing(store: SqlStore, reader: ReaderId) -> None:
    """What one reader promised, read again or told is not found under another's name."""
    other = ReaderId(uuid4())
    book = a_book()
    commitment, decision, rereading, talk = facts = (
        a_commitment(book),
        a_decision(book),
        a_rereading(book),
        a_talk(book),
    )
    with store.writing() as work:
        item = shelve(work, reader, book)[0]
        work.items.remember(reader, item.id, a_memory())
        work.items.ask_afresh(reader, {item.id: TOMORROW})
        work.items.ask_afresh(other, {item.id: TODAY})
        report = CheckIn(uuid4(), commitment.id, Outcome.KEPT, TODAY, NOW, TODAY)
        work.check_ins.add(reader, report)
        work.commitments.enter(reader, [NewCommitment(commitment, book.id)])
        work.decisions.add(reader, decision)
        work.rereadings.add(reader, rereading)
        work.talks.add(reader, talk)
        for fact in facts:
            work.withdrawals.add(other, uuid4(), fact.id, NOW, TODAY)
        work.commitments.rest(other, {commitment.id: TODAY})
        work.commit()
    with store.reading() as work:
        assert work.commitments.get(other, commitment.id) is None
        assert work.commitments.of_digests(other, [book.id]) == []
        assert work.commitments.all(other) == []
        assert work.commitments.unentered(other) == []
        assert work.decisions.get(other, decision.id) is None
        assert work.decisions.of(other, [commitment.id]) == work.decisions.all(other) == {}
        assert work.rereadings.get(other, rereading.id) is None
        assert work.rereadings.of_digest(other, book.id) == work.rereadings.all(other) == []
        assert work.talks.get(other, talk.id) is None
        assert work.check_ins.since(other, {commitment.id: TODAY}) == {}
        assert work.check_ins.of_commitment(other, commitment.id, 9) == []
        assert work.check_ins.count_on(other, commitment.id, TODAY) == 0
        assert work.items.afresh(other, TOMORROW, 9) == []
        assert work.talks.of_digest(other, book.id) == []
        assert work.decisions.get(reader, decision.id) == decision
        assert work.talks.of_digest(reader, book.id) == [talk]
        kept = work.items.of_digest(reader, book.id)
        assert len(work.items.unasked(reader, TODAY, 9)) == len(kept) - 1
        assert work.items.afresh(reader, TODAY, 9) == []


def test_anothers_reminders_give_nothing(store: SqlStore, reader: ReaderId) -> None:
    """What one reader set, was mailed and can be opened by is another's to neither see nor end."""
    other = ReaderId(uuid4())
    address = FeedAddress(uuid4(), "", NOW)
    with store.writing() as work:
        work.reminding.put(reader, Reminders(mail=True, mail_to="ada@example.org"))
        work.reminding.begin_mail(reader, TODAY, NOW, "1" * 64)
        work.reminding.add_address(reader, address, "0" * 64)
        assert not work.reminding.revoke(other, address.id, NOW)
        work.reminding.end_mail(other, TODAY, None)
        work.commit()
    with store.reading() as work:
        assert work.reminding.get(other) == Reminders()
        assert work.reminding.mailed(other, 5) == []
        assert work.reminding.addresses(other) == []
        assert not work.reminding.opens(other, "0" * 64)
        assert not work.reminding.ends_mail(other, "1" * 64)
        assert work.reminding.mailed(reader, 5) == [(TODAY, None)]
        assert work.reminding.opens(reader, "0" * 64)


def test_what_another_forgets_stays(store: SqlStore, reader: ReaderId) -> None:
    """Forgetting drafts, words or texts under one's own name takes nothing from another."""
    other = ReaderId(uuid4())
    book, draft = a_book(), a_draft()
    words = {"Gist": Part.THEME}
    with store.writing() as work:
        for each in (reader, other):
            shelve(work, each, book)
            work.drafts.put(each, draft)
            work.drafts.keep_original(each, draft.id, a_file())
            work.headings.put(each, words)
            work.books.put(each, book.id, a_text())
        work.drafts.drop(other, draft.id)
        work.headings.put(other, {})
        work.books.drop(other, book.id)
        assert work.drafts.get(other, draft.id) is None
        assert work.drafts.get(reader, draft.id) == draft
        assert work.drafts.original(reader, draft.id) == a_file()
        assert work.headings.all(reader) == words
        assert work.books.get(reader, book.id) == a_text()


def test_two_readers_can_keep_the_same_ids(store: SqlStore, reader: ReaderId) -> None:
    """An id belongs to its reader alone: another can keep a book, items and answers under it."""
    other = ReaderId(uuid4())
    book = a_book()
    with store.writing() as work:
        item = shelve(work, reader, book)[0]
        shelve(work, other, book)
        answer = an_answer(item)
        work.answers.add(reader, answer, NOW)
        assert work.answers.get(other, answer.id) is None
        work.answers.add(other, answer, NOW)
        work.answers.take_back(other, uuid4(), answer.id, NOW)
        assert work.answers.of_item(reader, item.id) == [answer]
        assert work.answers.of_item(other, item.id) == []
        kept = work.digests.get(other, book.id)
        assert kept is not None
        assert in_any_order(kept) == in_any_order(book)


def test_a_fact_about_anothers_item_is_refused(store: SqlStore, reader: ReaderId) -> None:
    """An answer to an item only another reader has is not kept."""
    other = ReaderId(uuid4())
    with store.writing() as work:
        work.readers.lock(other)
        answer = an_answer(shelve(work, reader, a_book())[0])
        with pytest.raises((StoreContradiction, AnswerConflict)):
            work.answers.add(other, answer, NOW)
