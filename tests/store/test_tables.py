"""Every row belongs to a reader; facts are only ever added to."""

import re
from uuid import uuid4

import pytest
from sqlalchemy import ForeignKeyConstraint, Index, PrimaryKeyConstraint, Table, UniqueConstraint

from cards.commitments import CheckIn, Outcome
from cards.intake.heading_words import Part
from cards.items import Item
from cards.kinds.base import KindName
from cards.parts import KeptDigest, Link, PartKind
from service.store.sql_store import SqlStore
from service.store.tables import metadata
from service.store.unit_of_work import SqlUnitOfWork
from service.use_cases.commitment_records import NewCommitment
from service.use_cases.records import Cause, PartAnchor, Reader, ReaderId, Version
from service.use_cases.reminding_records import FeedAddress, Reminders
from service.use_cases.sitting_records import Sheet, SheetItem
from tests.store.keeping import a_commitment, a_decision, a_rereading, a_talk
from tests.store.libraries import (
    NOW,
    TODAY,
    a_book,
    a_draft,
    a_file,
    a_memory,
    a_text,
    an_anchor,
    an_answer,
    key_of,
    shelve,
)
from tests.store.statements import Statements

FACTS = (
    "answers",
    "taken_back",
    "check_ins",
    "versions",
    "decisions",
    "rereadings",
    "talks",
    "withdrawals",
)


@pytest.mark.parametrize("table", metadata.tables.values(), ids=metadata.tables.keys())
def test_keys_and_indexes_begin_with_the_reader(table: Table) -> None:
    """Primary keys, unique constraints, foreign keys and indexes begin with the reader."""
    keyed = [
        constraint
        for constraint in table.constraints
        if isinstance(constraint, PrimaryKeyConstraint | UniqueConstraint | ForeignKeyConstraint)
    ]
    keys: list[PrimaryKeyConstraint | UniqueConstraint | ForeignKeyConstraint | Index]
    keys = [*keyed, *table.indexes]
    assert {key.name: next(iter(key.columns)).name for key in keys} == {
        key.name: "reader_id" for key in keys
    }
    for key in table.foreign_key_constraints:
        assert key.elements[0].column.name == "reader_id"


@pytest.mark.parametrize("table", metadata.tables.values(), ids=metadata.tables.keys())
def test_every_constraint_has_a_name(table: Table) -> None:
    """A migration can name every constraint it is to change."""
    assert all(constraint.name for constraint in table.constraints)


def test_every_statement_names_the_reader(
    store: SqlStore, reader: ReaderId, statements: Statements
) -> None:
    """Whatever is asked of the store, each table in a statement is bound to a reader."""
    do_everything(store, reader)
    assert len(statements) > 40
    for statement in statements:
        if statement.startswith("INSERT"):
            assert re.match(r"INSERT INTO \w+ \(reader_id, ", statement), statement
        else:
            named = re.findall(r"(?:FROM|JOIN|UPDATE) (\w+)(?: AS (\w+))?", statement)
            assert named, statement
            for table, alias in named:
                bound = rf"\b{alias or table}\.reader_id = "
                assert re.search(bound, statement) or re.search(
                    rf" = {alias or table}\.reader_id\b", statement
                ), statement


def test_facts_are_only_ever_added(
    store: SqlStore, reader: ReaderId, statements: Statements
) -> None:
    """Facts of every sort meet INSERT and SELECT alone."""
    do_everything(store, reader)
    verbs = {
        (table, statement.split()[0])
        for statement in statements
        for table in FACTS
        if re.search(rf"\b{table}\b", statement.split(" SET ")[0].split(" WHERE ")[0])
    }
    assert verbs == {(table, verb) for table in FACTS for verb in ("INSERT", "SELECT")} | {
        ("answers", "SELECT")
    }
    deleted = {statement.split()[2] for statement in statements if statement.startswith("DELETE")}
    assert deleted == {
        "book_texts",
        "draft_contents",
        "draft_originals",
        "drafts",
        "heading_words",
        "left_out",
        "links",
        "mails",
    }
    assert not any(
        "DO UPDATE" in statement
        for statement in statements
        if statement.startswith(tuple(f"INSERT INTO {table} " for table in FACTS))
    )


def do_everything(store: SqlStore, reader: ReaderId) -> None:
    """Call every method of every repository, each way it can go."""
    book = a_book()
    with store.writing() as work:
        readers, digests, items = work.readers, work.digests, work.items
        readers.lock(reader)
        readers.put(Reader(reader))
        readers.get(reader)
        first, second, *_ = shelve(work, reader, book)
        shelve(work, reader, book)
        digests.get(reader, book.id)
        digests.alike(reader, key_of(book))
        digests.page(reader, None, 5)
        digests.page(reader, (NOW, uuid4()), 5)
        digests.keep_original(reader, book.id, a_file())
        digests.keep_original(reader, book.id, a_file())
        digests.from_file(reader, "fell.docx")
        digests.original(reader, book.id)
        digests.original_hash(reader, book.id)
        items.get(reader, first.id)
        items.lock(reader, first.id)
        items.of_digest(reader, book.id)
        items.standings(reader, [book.id])
        items.remember(reader, first.id, a_memory())
        items.remember(reader, second.id, None)
        items.many(reader, [first.id])
        items.chosen(reader, items.due(reader, TODAY).keys)
        items.remembered(reader)
        items.returning(reader, TODAY, 5)
        items.commitments(reader, TODAY, 5)
        digests.shelf(reader, 5)
        items.unasked(reader, TODAY, 5)
        items.first_asked(reader, TODAY)
        items.next_call(reader, TODAY)
        items.ask_afresh(reader, {first.id: TODAY})
        items.afresh(reader, TODAY, 5)
        for after in (None, first.id):
            for digest_id in (None, book.id):
                for kind in (None, KindName.THEME):
                    items.page(reader, after, 5, digest_id, kind)
        answer_and_report(work, reader, book, first)
        write_and_prove(work, reader, book)
        sit_down(work, reader, book, first)
        keep_promises(work, reader, book)
        be_reminded(work, reader)
        work.commit()


def answer_and_report(work: SqlUnitOfWork, reader: ReaderId, book: KeptDigest, first: Item) -> None:
    """Call every method of the answers and the check-ins."""
    commitment = book.held(PartKind.COMMITMENT)[0]
    answer = an_answer(first)
    for _ in range(2):
        work.answers.add(reader, answer, NOW)
        work.answers.take_back(reader, uuid4(), answer.id, NOW)
    work.answers.get(reader, answer.id)
    work.answers.on(reader, TODAY)
    work.answers.last_day(reader, TODAY)
    work.answers.seconds(reader, 5)
    work.answers.of_item(reader, first.id)
    work.answers.history(reader, first.id, None, 5)
    work.answers.history(reader, first.id, (NOW, uuid4()), 5)
    report = CheckIn(uuid4(), commitment.id, Outcome.KEPT, TODAY, NOW, TODAY)
    work.check_ins.add(reader, report)
    work.check_ins.add(reader, report)
    work.check_ins.of_digest(reader, book.id)
    work.check_ins.get(reader, report.id)
    work.check_ins.of_commitment(reader, commitment.id, 5)
    work.check_ins.count_on(reader, commitment.id, TODAY)
    work.check_ins.since(reader, {commitment.id: TODAY})
    work.check_ins.tallies(reader, [commitment.id])


def keep_promises(work: SqlUnitOfWork, reader: ReaderId, book: KeptDigest) -> None:
    """Call every method of the commitments, decisions, re-readings, talks and withdrawals."""
    commitment, decision = a_commitment(book), a_decision(book)
    rereading, talk = a_rereading(book), a_talk(book)
    work.commitments.unentered(reader)
    for _ in range(2):
        work.commitments.enter(reader, [NewCommitment(commitment, book.id)])
        work.decisions.add(reader, decision)
        work.rereadings.add(reader, rereading)
        work.talks.add(reader, talk)
        work.withdrawals.add(reader, uuid4(), talk.id, NOW, TODAY)
    work.commitments.get(reader, commitment.id)
    work.commitments.of_digests(reader, [book.id])
    work.commitments.all(reader)
    work.commitments.rest(reader, {commitment.id: TODAY})
    work.decisions.get(reader, decision.id)
    work.decisions.of(reader, [commitment.id])
    work.decisions.all(reader)
    work.rereadings.get(reader, rereading.id)
    work.rereadings.of_digest(reader, book.id)
    work.rereadings.all(reader)
    work.talks.get(reader, talk.id)
    work.talks.of_digest(reader, book.id)


def be_reminded(work: SqlUnitOfWork, reader: ReaderId) -> None:
    """Call every method of the reminders."""
    work.reminding.get(reader)
    address = FeedAddress(uuid4(), "The calendar on the desk", NOW)
    for _ in range(2):
        work.reminding.put(reader, Reminders(mail=True, mail_to="ada@example.org"))
        work.reminding.begin_mail(reader, TODAY, NOW, "1" * 64)
        work.reminding.add_address(reader, address, "0" * 64)
    work.reminding.end_mail(reader, TODAY, NOW)
    work.reminding.end_mail(reader, TODAY, None)
    work.reminding.mailed(reader, 5)
    work.reminding.ends_mail(reader, "1" * 64)
    work.reminding.addresses(reader)
    work.reminding.opens(reader, "0" * 64)
    work.reminding.revoke(reader, address.id, NOW)


def sit_down(work: SqlUnitOfWork, reader: ReaderId, book: KeptDigest, item: Item) -> None:
    """Call every method of the days, the links and the sheets."""
    for _ in range(2):
        work.days.set_minutes(reader, TODAY, 5)
        work.days.leave_out(reader, item.id, TODAY, NOW)
    work.days.minutes(reader, TODAY)
    work.days.left_out(reader, TODAY)
    work.days.take_in(reader, item.id, TODAY)
    other = a_book("Of Harbours")
    shelve(work, reader, other)
    made = Link(uuid4(), book.held(PartKind.POINT)[0].id, other.id, other.title)
    for _ in range(2):
        work.links.put(reader, made, NOW)
    work.links.get(reader, made.id)
    work.links.leading_to(reader, other.id)
    work.digests.get(reader, book.id)
    work.links.drop(reader, made.id)
    sheet = Sheet(uuid4(), NOW, 5, (SheetItem(item.id, 0, False, uuid4()),))
    for _ in range(2):
        work.sheets.put(reader, sheet)
    work.sheets.get(reader, sheet.id)
    work.sheets.open(reader, 5)


def write_and_prove(work: SqlUnitOfWork, reader: ReaderId, book: KeptDigest) -> None:
    """Call every method of the repositories of versions, drafts, heading words and books."""
    versions, drafts, headings, books = work.versions, work.drafts, work.headings, work.books
    for _ in range(2):
        versions.add(reader, Version(NOW, Cause.ADDED, book))
    versions.get(reader, book.id, 1)
    versions.page(reader, book.id, None, 5)
    versions.page(reader, book.id, 9, 5)
    versions.wordings(reader, book.id, 5)
    draft = a_draft()
    for content in (b"1", b"2"):
        drafts.put(reader, draft)
        drafts.keep_original(reader, draft.id, a_file(content))
    drafts.get(reader, draft.id)
    drafts.page(reader, None, 5)
    drafts.page(reader, (NOW, uuid4()), 5)
    drafts.count(reader)
    drafts.original(reader, draft.id)
    drafts.drop(reader, draft.id)
    headings.put(reader, {"Gist": Part.THEME})
    headings.all(reader)
    for _ in range(2):
        books.put(reader, book.id, a_text())
        books.put_anchors(reader, book.id, [PartAnchor(book.parts[-1].id, an_anchor())])
    books.get(reader, book.id)
    books.name(reader, book.id)
    books.anchors(reader, book.id)
    books.drop(reader, book.id)
