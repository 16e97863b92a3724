"""The versions of a reader's digests."""

import json
from dataclasses import replace
from datetime import timedelta
from uuid import uuid4

import pytest
from sqlalchemy import text

from cards.parts import Care, KeptDigest, PartKind
from service.store.errors import StoreContradiction
from service.store.sql_store import SqlStore
from service.use_cases.records import Cause, ReaderId, Version, VersionEntry
from tests.store.libraries import NOW, a_book, shelve
from tests.store.statements import Statements


def reworded(book: KeptDigest, words: str, revision: int) -> KeptDigest:
    """Return a book as it is after its theme was reworded."""
    theme, *rest = book.parts
    return replace(book, parts=(replace(theme, text=words), *rest), revision=revision)


def test_a_version_kept_twice_stays_as_it_was(store: SqlStore, reader: ReaderId) -> None:
    """A version is a fact: one of the same revision, sent later, changes nothing."""
    book = a_book()
    first = Version(NOW, Cause.ADDED, book)
    with store.writing() as work:
        shelve(work, reader, book)
        work.versions.add(reader, first)
        later = Version(NOW + timedelta(days=1), Cause.CHANGED, replace(book, title="Other"))
        work.versions.add(reader, later)
        assert work.versions.get(reader, book.id, 1) == first
        assert work.versions.get(reader, book.id, 2) is None
        assert work.versions.get(reader, uuid4(), 1) is None


def test_a_version_does_not_follow_its_digest(store: SqlStore, reader: ReaderId) -> None:
    """What a digest becomes later leaves its versions as they were."""
    book = replace(a_book(), care=Care.CLOSE, edition="Fell & Daughter, 1931")
    with store.writing() as work:
        shelve(work, reader, book)
        work.versions.add(reader, Version(NOW, Cause.ADDED, book))
        shelve(work, reader, replace(reworded(book, "Other.", 2), care=Care.RESTING, edition=None))
        found = work.versions.get(reader, book.id, 1)
        assert found == Version(NOW, Cause.ADDED, book)


def test_pages_are_newest_first_and_meet(
    store: SqlStore, reader: ReaderId, statements: Statements
) -> None:
    """Page after page gives every version once, newest first, one statement each, no contents."""
    book, other = a_book(), a_book("Of Harbours")
    with store.writing() as work:
        for shelved in (book, other):
            shelve(work, reader, shelved)
            for revision in range(1, 8):
                when = NOW + timedelta(hours=revision)
                kept = replace(shelved, revision=revision)
                work.versions.add(reader, Version(when, Cause.CHANGED, kept))
        work.commit()
    statements.clear()
    with store.reading() as work:
        seen: list[VersionEntry] = []
        while page := work.versions.page(reader, book.id, seen[-1].revision if seen else None, 3):
            seen += page
    assert seen == [
        VersionEntry(revision, NOW + timedelta(hours=revision), Cause.CHANGED)
        for revision in range(7, 0, -1)
    ]
    assert len(statements) == 4
    assert not any(
        "versions.kept," in statement or "versions.kept " in statement for statement in statements
    )


def test_wordings_are_each_once_and_newest_first(
    store: SqlStore, reader: ReaderId, statements: Statements
) -> None:
    """One statement gives what each part said in the latest versions, each wording once."""
    book = a_book(quotations=1)
    theme = book.held(PartKind.THEME)[0]
    late = replace(book.held(PartKind.POINT)[0], id=uuid4(), number=3, text="A bell is rung.")
    said = ["Never looked at.", "One.", "Two.", "One.", "Three."]
    with store.writing() as work:
        shelve(work, reader, book)
        for revision, words in enumerate(said, 1):
            kept = reworded(book, words, revision)
            if revision == len(said):
                kept = replace(kept, parts=(*kept.parts, late))
            work.versions.add(reader, Version(NOW, Cause.CHANGED, kept))
        statements.clear()
        wordings = work.versions.wordings(reader, book.id, 4)
        assert len(statements) == 1
        assert wordings[theme.id] == ("Three.", "One.", "Two.")
        assert wordings[late.id] == ("A bell is rung.",)
        assert set(wordings) == {part.id for part in (*book.parts, late)}
        assert work.versions.wordings(reader, uuid4(), 4) == {}


def test_wordings_of_a_retired_part_are_found(store: SqlStore, reader: ReaderId) -> None:
    """What a part said before it was taken out is still told, so that it is known come back."""
    book = a_book()
    gone = replace(book.parts[-1], retired=True)
    with store.writing() as work:
        shelve(work, reader, book)
        kept = replace(book, parts=(*book.parts[:-1], gone))
        work.versions.add(reader, Version(NOW, Cause.CHANGED, kept))
        assert work.versions.wordings(reader, book.id, 1)[gone.id] == (gone.text,)


def test_a_version_of_no_digest_is_refused(store: SqlStore, reader: ReaderId) -> None:
    """A version belongs to a digest that is kept."""
    with store.writing() as work:
        work.readers.lock(reader)
        with pytest.raises(StoreContradiction):
            work.versions.add(reader, Version(NOW, Cause.ADDED, a_book()))


def test_a_version_written_before_a_fact_was_known_can_be_read(
    store: SqlStore, reader: ReaderId
) -> None:
    """A version that lacks what digests came to hold later reads as without it."""
    book = a_book()
    with store.writing() as work:
        shelve(work, reader, book)
        work.versions.add(reader, Version(NOW, Cause.ADDED, book))
        work.commit()
    with store.engines.writing.begin() as connection:
        written = json.loads(connection.execute(text("SELECT kept FROM versions")).scalar_one())
        del written["care"], written["edition"]
        written["a fact of next year"] = 1
        connection.execute(text("UPDATE versions SET kept = :kept"), {"kept": json.dumps(written)})
    with store.reading() as work:
        assert work.versions.get(reader, book.id, 1) == Version(NOW, Cause.ADDED, book)
