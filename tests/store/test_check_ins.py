"""The check-ins of a reader: facts."""

from dataclasses import replace
from datetime import timedelta
from uuid import UUID, uuid4

import pytest

from cards.commitments import CheckIn, Outcome
from cards.parts import KeptDigest, PartKind
from service.store.errors import StoreContradiction
from service.store.sql_store import SqlStore
from service.use_cases.records import ReaderId, Tally
from tests.store.libraries import NOW, TODAY, a_book, shelve
from tests.store.statements import Statements


def promise_of(book: KeptDigest) -> UUID:
    """Return the id of a book's commitment."""
    return book.held(PartKind.COMMITMENT)[0].id


def a_check_in(book: KeptDigest, days_ago: int = 0) -> CheckIn:
    """Return a check-in on a book's commitment."""
    commitment = book.held(PartKind.COMMITMENT)[0]
    day = TODAY - timedelta(days=days_ago)
    return CheckIn(uuid4(), commitment.id, Outcome.PARTLY, day, NOW, TODAY, "Half a letter.")


def test_they_come_by_day_for_one_digest(store: SqlStore, reader: ReaderId) -> None:
    """Check-ins on a digest's commitments come by day, and none on another's."""
    book, other = a_book(), a_book("Of Harbours")
    today, before = a_check_in(book), a_check_in(book, days_ago=8)
    with store.writing() as work:
        for each in (book, other):
            shelve(work, reader, each)
        for report in (today, a_check_in(other), before):
            work.check_ins.add(reader, report)
        assert work.check_ins.of_digest(reader, book.id) == [before, today]


def test_one_already_kept_changes_nothing(store: SqlStore, reader: ReaderId) -> None:
    """A check-in whose id is already kept changes nothing, whatever it says."""
    book = a_book()
    report = a_check_in(book)
    with store.writing() as work:
        shelve(work, reader, book)
        work.check_ins.add(reader, report)
        work.check_ins.add(reader, replace(report, outcome=Outcome.KEPT))
        assert work.check_ins.of_digest(reader, book.id) == [report]


def test_a_check_in_needs_its_commitment(store: SqlStore, reader: ReaderId) -> None:
    """A check-in on a commitment that is not there is not kept."""
    report = a_check_in(a_book())
    with store.writing() as work:
        work.readers.lock(reader)
        with pytest.raises(StoreContradiction):
            work.check_ins.add(reader, report)


def test_tallies_count_by_outcome_and_keep_the_last(store: SqlStore, reader: ReaderId) -> None:
    """Each commitment asked for is counted; the last is about the latest day.

    Of several about that day it is the one reported last, whichever came first.
    """
    book, silent, other = a_book(), a_book("Of Harbours"), a_book("Of Tides")
    early, late = a_check_in(book), replace(a_check_in(book), outcome=Outcome.KEPT)
    late = replace(late, reported_at=NOW + timedelta(hours=1))
    about_before = replace(a_check_in(book, days_ago=2), reported_at=NOW + timedelta(days=1))
    with store.writing() as work:
        for each in (book, silent, other):
            shelve(work, reader, each)
        for report in (late, about_before, early, a_check_in(other)):
            work.check_ins.add(reader, report)
        assert work.check_ins.tallies(reader, [promise_of(book), promise_of(silent)]) == {
            early.commitment_id: Tally({Outcome.PARTLY: 2, Outcome.KEPT: 1}, late)
        }
        assert work.check_ins.tallies(reader, []) == {}


def test_tallies_take_two_statements(
    store: SqlStore, reader: ReaderId, statements: Statements
) -> None:
    """Two statements tell what came of any number of commitments."""
    books = [a_book(f"Volume {number}") for number in range(9)]
    with store.writing() as work:
        for book in books:
            shelve(work, reader, book)
            work.check_ins.add(reader, a_check_in(book))
        statements.clear()
        assert len(work.check_ins.tallies(reader, map(promise_of, books))) == len(books)
        assert len(statements) == 2
