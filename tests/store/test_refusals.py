"""What the store cannot do comes out in its own words."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from dataclasses import replace
from datetime import UTC, datetime, timedelta, timezone
from pathlib import Path
from uuid import uuid4

import pytest
from sqlalchemy import text

from cards.errors import CatchwordError, Invalid
from service.store import engine
from service.store.errors import (
    StoreBusy,
    StoreContradiction,
    StoreError,
    StoreUnavailable,
)
from service.store.sql_store import SqlStore
from service.use_cases.records import ReaderId
from tests.postgres import Server
from tests.store.libraries import NOW, a_book, a_memory, an_answer, key_of, shelve

DRIVERS_WORDS = (
    "sqlite",
    "psycopg",
    "constraint",
    "SELECT",
    "INSERT",
    "sqlalche",
    "OperationalError",
)


def in_own_words(error: StoreError) -> bool:
    """Say whether a refusal is one clear sentence or more, without a word of the driver's."""
    return error.message.endswith(".") and not any(word in error.message for word in DRIVERS_WORDS)


@pytest.fixture
def impatient(monkeypatch: pytest.MonkeyPatch) -> None:
    """Writers wait a moment for others, not ten seconds."""
    pragmas = ("PRAGMA busy_timeout = 50", *engine._PRAGMAS[1:])
    monkeypatch.setattr(engine, "_PRAGMAS", pragmas)
    monkeypatch.setattr(engine, "PATIENCE", 1)


@pytest.mark.parametrize(
    "address",
    ["", "library.db", "sqlite://", "sqlite:///:memory:", "mysql://u:secret@h/d", "nonsense://x"],
)
def test_an_address_it_does_not_know(address: str) -> None:
    """An address of neither database is refused, without repeating the password in it."""
    with pytest.raises(StoreUnavailable) as refused:
        SqlStore(address)
    assert "secret" not in refused.value.message


def test_a_folder_that_is_not_there(tmp_path: Path, reader: ReaderId) -> None:
    """A file that cannot be opened is said to be out of reach."""
    with closing(SqlStore(f"sqlite:///{tmp_path / 'missing' / 'library.db'}")) as store:
        for work in (store.reading(), store.writing()):
            with pytest.raises(StoreUnavailable) as refused:
                work.__enter__()
            assert in_own_words(refused.value)


def test_a_server_that_is_not_there(tmp_path: Path) -> None:
    """A server that does not answer is said to be out of reach."""
    with closing(SqlStore(f"postgresql://nobody@/none?host={tmp_path}")) as store:
        with pytest.raises(StoreUnavailable) as refused:
            store.reading().__enter__()
        assert in_own_words(refused.value)
        with pytest.raises(StoreUnavailable):
            store.migrate()


def test_a_file_that_is_no_database(tmp_path: Path) -> None:
    """A file that is something else is refused and left as it is."""
    file = tmp_path / "library.db"
    file.write_text("Dear diary, today I finished a book." * 100)
    with closing(SqlStore(f"sqlite:///{file}")) as store, pytest.raises(StoreError) as refused:
        store.migrate()
    assert in_own_words(refused.value)
    assert file.read_text().startswith("Dear diary")


@pytest.mark.usefixtures("impatient")
def test_another_program_that_keeps_writing(tmp_path: Path) -> None:
    """A writer who finds the file held by another program all the while is told it is busy."""
    file = tmp_path / "library.db"
    with closing(SqlStore(f"sqlite:///{file}")) as store:
        store.migrate()
        with closing(sqlite3.connect(file, isolation_level=None)) as other:
            other.execute("BEGIN IMMEDIATE")
            with pytest.raises(StoreBusy) as refused:
                store.writing().__enter__()
            other.execute("ROLLBACK")
        assert in_own_words(refused.value)
        with store.writing() as work:
            work.commit()


@pytest.mark.usefixtures("impatient")
def test_a_writer_of_the_same_process_that_does_not_end(tmp_path: Path) -> None:
    """A writer who finds another of this process at work all the while is told it is busy."""
    with closing(SqlStore(f"sqlite:///{tmp_path / 'library.db'}")) as store:
        store.migrate()
        with store.writing(), pytest.raises(StoreBusy) as refused:
            store.writing().__enter__()
        assert in_own_words(refused.value)


@pytest.fixture
def impatient_postgres(postgres: Server, impatient: None, reader: ReaderId) -> Iterator[SqlStore]:
    """A store on PostgreSQL whose writers wait a second for each other."""
    name = f"test_{uuid4().hex}"
    with closing(SqlStore(postgres.create(name, "migrated"))) as store:
        yield store
    postgres.drop(name)


def test_a_lock_that_is_not_given(impatient_postgres: SqlStore, reader: ReaderId) -> None:
    """A writer on PostgreSQL who is not given a lock in time is told it is busy."""
    with impatient_postgres.writing() as holding:
        holding.readers.lock(reader)
        with impatient_postgres.writing() as waiting, pytest.raises(StoreBusy) as refused:
            waiting.readers.lock(reader)
    assert in_own_words(refused.value)


def test_a_server_that_was_restarted(impatient_postgres: SqlStore, reader: ReaderId) -> None:
    """Connections that broke between two transactions are replaced without a word."""
    with impatient_postgres.writing() as work:
        work.readers.lock(reader)
        work.commit()
    with impatient_postgres.engines.writing.connect() as connection:
        own = connection.execute(text("SELECT pg_backend_pid()")).scalar_one()
    with (
        closing(SqlStore(impatient_postgres.engines.writing.url.render_as_string())) as other,
        other.engines.writing.connect() as connection,
    ):
        connection.execute(text("SELECT pg_terminate_backend(:pid)"), {"pid": own})
    with impatient_postgres.reading() as work:
        assert work.readers.get(reader).id == reader


def test_what_breaks_a_rule_of_the_tables(store: SqlStore, reader: ReaderId) -> None:
    """What no table may hold is refused as a contradiction, and nothing of it is kept."""
    book = a_book()
    with store.writing() as work:
        item = shelve(work, reader, book)[0]
        work.commit()
    for broken in (
        replace(a_memory(), stability=-1.0),
        replace(a_memory(), difficulty=11.0),
        replace(a_memory(), answers=0),
    ):
        with store.writing() as work, pytest.raises(StoreContradiction) as refused:
            work.items.remember(reader, item.id, broken)
        assert in_own_words(refused.value)
    with store.writing() as work, pytest.raises(StoreContradiction):
        work.digests.put(reader, replace(book, pages=10**30), key_of(book), NOW)


@pytest.mark.parametrize("attempt", ["a\x00b", "half \ud800 of a pair"])
def test_text_no_database_can_hold(store: SqlStore, reader: ReaderId, attempt: str) -> None:
    """A NUL, and half of a surrogate pair, are refused alike by both databases."""
    with store.writing() as work:
        answer = replace(an_answer(shelve(work, reader, a_book())[0]), attempt=attempt)
        with pytest.raises(Invalid):
            work.answers.add(reader, answer, NOW)


@pytest.mark.parametrize(
    "when",
    [
        datetime(2026, 3, 1, 12),  # noqa: DTZ001 - naive on purpose
        datetime(1, 1, 1, tzinfo=timezone(timedelta(hours=14))),
        datetime(9999, 12, 31, 23, tzinfo=timezone(timedelta(hours=-8))),
    ],
)
def test_instants_no_database_can_hold(store: SqlStore, reader: ReaderId, when: datetime) -> None:
    """An instant without a time zone, and one outside the years 1 to 9999, are refused."""
    book = a_book()
    with store.writing() as work, pytest.raises(CatchwordError):
        work.digests.put(reader, book, key_of(book), when)


def test_a_refusal_leaves_the_transaction_to_be_rolled_back(
    store: SqlStore, reader: ReaderId
) -> None:
    """After a refusal nothing is kept, and the next transaction works as ever."""
    book = a_book()
    with store.writing() as work:
        work.digests.put(reader, book, key_of(book), NOW)
        with pytest.raises(StoreContradiction):
            work.digests.put(reader, replace(book, revision=0), key_of(book), NOW)
    with store.writing() as work:
        assert work.digests.get(reader, book.id) is None
        work.digests.put(reader, book, key_of(book), datetime.now(UTC))
        work.commit()
