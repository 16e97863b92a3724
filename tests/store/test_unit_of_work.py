"""One transaction a use case, committed in plain sight."""

from contextlib import closing

import pytest

from service.store.errors import StoreError
from service.store.sql_store import SqlStore
from service.use_cases.records import Reader, ReaderId
from tests.postgres import Server
from tests.store.libraries import NOW, a_book, key_of


def test_leaving_without_commit_keeps_nothing(store: SqlStore, reader: ReaderId) -> None:
    """Leaving a unit of work without commit rolls everything back."""
    with store.writing() as work:
        work.readers.put(Reader(reader, unasked_a_day=1))
    with store.reading() as work:
        assert work.readers.get(reader).unasked_a_day == 6


def test_an_error_keeps_nothing(store: SqlStore, reader: ReaderId) -> None:
    """An error inside a unit of work rolls back what was done before it, and comes out."""
    book = a_book()

    def fail() -> None:
        with store.writing() as work:
            work.digests.put(reader, book, key_of(book), NOW)
            raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError):
        fail()
    with store.reading() as work:
        assert work.digests.get(reader, book.id) is None


def test_commit_keeps_everything(store: SqlStore, reader: ReaderId) -> None:
    """What was committed is there for the next transaction, and outlives the store's object."""
    with store.writing() as work:
        work.readers.put(Reader(reader, unasked_a_day=1))
        work.commit()
    store.close()
    with store.reading() as work:
        assert work.readers.get(reader).unasked_a_day == 1


def test_nothing_follows_a_commit(store: SqlStore, reader: ReaderId) -> None:
    """A unit of work is one transaction: nothing is done in it after its commit."""
    with store.writing() as work:
        work.commit()
        with pytest.raises(RuntimeError):
            work.readers.get(reader)
        with pytest.raises(RuntimeError):
            work.commit()


def test_it_is_used_inside_its_block(store: SqlStore, reader: ReaderId) -> None:
    """Before its block and after it, a unit of work refuses to be used."""
    work = store.reading()
    with pytest.raises(RuntimeError):
        work.readers.get(reader)
    with work:
        work.readers.get(reader)
    with pytest.raises(RuntimeError):
        work.readers.get(reader)


def test_a_reading_one_cannot_write(store: SqlStore, reader: ReaderId) -> None:
    """A transaction that only reads is held to it by the database."""
    with store.reading() as work, pytest.raises(StoreError):
        work.readers.put(Reader(reader))


def test_a_reading_one_sees_one_state(store: SqlStore, reader: ReaderId) -> None:
    """What others commit meanwhile does not show before the next transaction."""
    with store.reading() as before:
        assert before.readers.get(reader).unasked_a_day == 6
        with store.writing() as work:
            work.readers.put(Reader(reader, unasked_a_day=1))
            work.commit()
        assert before.readers.get(reader).unasked_a_day == 6
    with store.reading() as after:
        assert after.readers.get(reader).unasked_a_day == 1


def test_the_manner_of_dates_of_a_database_is_not_ours(postgres: Server, reader: ReaderId) -> None:
    """Dates come back whatever a server writes them like unless told (PostgreSQL, DateStyle)."""
    name = "dated_otherwise"
    address = postgres.create(name, "migrated")
    with closing(SqlStore(address)) as store, store.engines.writing.begin() as connection:
        connection.exec_driver_sql(f"ALTER DATABASE {name} SET datestyle TO 'German'")
    book = a_book()
    with closing(SqlStore(address)) as store:
        with store.writing() as work:
            work.digests.put(reader, book, key_of(book), NOW)
            work.commit()
        with store.reading() as work:
            assert work.exporting.digests(reader) == [(book.id, NOW)]
    postgres.drop(name)
