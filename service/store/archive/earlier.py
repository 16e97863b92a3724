"""A store of an earlier revision, filled from an archive of its time and brought up to date."""

import re
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any, Protocol

from sqlalchemy import Column, Connection, MetaData, Table
from sqlalchemy.types import TypeEngine

from cards.errors import InvalidArchive
from service.store.archive.tables import LEFT_OUT, READER, fact_table
from service.store.columns import ID, INSTANT, WORDS
from service.store.engine import open_engines
from service.store.migrations import HEAD, alembic_config, bring_up_to_date
from service.use_cases.archiving_records import Facts, FieldType

_OWN: Mapping[FieldType | None, TypeEngine[Any]] = {
    FieldType.ID: ID,
    FieldType.INSTANT: INSTANT,
    FieldType.WORDS: WORDS,
    FieldType.JSON: WORDS,
}
"""Our own types, of which SQLite tells no more than how they are kept."""


class _Made(Protocol):
    def __call__(
        self, connection: Connection, tables: Mapping[str, Table] | None = None
    ) -> Facts: ...


@contextmanager
def raised(revision: str, fill: Callable[[Facts], None], facts_on: _Made) -> Iterator[Facts]:
    """Lend the facts of a store of a revision, filled by `fill` and brought up to date.

    It stands in a folder of its own, which is gone afterwards.

    Args:
        revision: its number, 0001 to the one this Catchword works with.
        fill: puts them there.
        facts_on: makes `Facts` of a connection, and of tables that are not today's.

    Raises:
        InvalidArchive: there is no such revision, or only a later Catchword knows it.
    """
    _check(revision)
    with TemporaryDirectory() as folder:
        engines = open_engines(f"sqlite:///{Path(folder) / 'library.sqlite3'}")
        try:
            with engines.writing.connect() as connection, connection.begin():
                _lay(connection, revision)
                fill(facts_on(connection, _tables(connection)))
            bring_up_to_date(engines)
            with engines.reading.connect() as connection, connection.begin():
                yield facts_on(connection)
        finally:
            engines.close()


def _check(revision: str) -> None:
    if not re.fullmatch(r"[0-9]{4}", revision) or revision == "0000":
        raise InvalidArchive(
            "The manifest of the archive names no state of a library that Catchword ever had.",
            where="manifest.json",
        )
    if revision > HEAD:
        raise InvalidArchive(
            "The archive was written by a later version of Catchword. Restore it with that one.",
            where="manifest.json",
        )


def _lay(connection: Connection, revision: str) -> None:
    from alembic import command  # noqa: PLC0415 - 0.1 s, and seldom needed

    command.upgrade(alembic_config(connection), revision)


def _tables(connection: Connection) -> dict[str, Table]:
    """Return the tables as they are there, each after those it refers to."""
    found = MetaData()
    found.reflect(connection)
    typed = MetaData()
    return {
        table.name: Table(
            table.name,
            typed,
            *(_typed(table, column) for column in table.columns),
        )
        for table in found.sorted_tables
        if table.name != "alembic_version"
    }


def _typed(table: Table, column: Column[Any]) -> Column[Any]:
    told = () if table.name in LEFT_OUT else fact_table(table).fields
    types = {each.name: each.type for each in told if each.longest is None}
    own = _OWN.get(FieldType.ID if column.name == READER else types.get(column.name))
    return Column(
        column.name,
        column.type if own is None else own,
        primary_key=column.primary_key,
        nullable=column.nullable,
    )
