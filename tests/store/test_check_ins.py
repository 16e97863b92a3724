"""The check-ins of a reader: facts."""

from dataclasses import replace
from datetime import timedelta
from uuid import uuid4

import pytest

from cards.commitments import CheckIn, Outcome
from cards.parts import KeptDigest, PartKind
from service.store.errors import StoreContradiction
from service.store.sql_store import SqlStore
from service.use_cases.ports import ReaderId
from tests.store.libraries import NOW, TODAY, a_book, shelve


def a_check_in(book: KeptDigest, days_ago: int = 0) -> CheckIn:
    """Return a check-in on a book's commitment."""
    commitment = book.held(PartKind.COMMITMENT)[0]
    day = TODAY - timedelta(days=days_ago)
    return CheckIn(uuid4(), commitment.id, Outcome.PARTLY, day, NOW, "Half a letter.")


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
