"""The readers of this house."""

from collections.abc import Iterator
from contextlib import closing

import pytest

from service.store.sql_store import SqlStore
from service.use_cases.records import Reader, ReaderId


@pytest.fixture
def early(address: str) -> Iterator[SqlStore]:
    """A store whose readers' day turns over at two unless they set it."""
    made = SqlStore(address, lambda reader: Reader(reader, "Europe/London", turns_at=2))
    yield made
    made.close()


def test_one_never_seen_has_the_defaults(early: SqlStore, reader: ReaderId) -> None:
    """A reader never seen before has the settings given to the store, and is not made a row."""
    with early.reading() as work:
        assert work.readers.get(reader) == Reader(reader, "Europe/London", turns_at=2)


def test_locking_one_never_seen_makes_them(early: SqlStore, address: str, reader: ReaderId) -> None:
    """Locking a reader never seen before keeps them, whatever a later store gives newcomers."""
    with early.writing() as work:
        assert work.readers.lock(reader) == Reader(reader, "Europe/London", turns_at=2)
        work.commit()
    with closing(SqlStore(address)) as later, later.reading() as work:
        assert work.readers.get(reader) == Reader(reader, "Europe/London", turns_at=2)


def test_locking_returns_what_was_put(store: SqlStore, reader: ReaderId) -> None:
    """Locking a known reader changes none of their settings."""
    settings = Reader(reader, "Asia/Tokyo", 5, 0.85, 12, 7)
    with store.writing() as work:
        work.readers.put(settings)
        assert work.readers.lock(reader) == settings
        assert work.readers.get(reader) == settings


def test_putting_replaces(store: SqlStore, reader: ReaderId) -> None:
    """Settings put again replace the former ones, the revision as given."""
    with store.writing() as work:
        work.readers.put(Reader(reader, revision=1))
        work.readers.put(Reader(reader, turns_at=6, revision=2))
        assert work.readers.get(reader) == Reader(reader, turns_at=6, revision=2)
