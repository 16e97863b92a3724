"""The facts of a store, read in the order of their keys and written as they are."""

from collections.abc import Callable, Generator, Iterable, Iterator, Mapping
from contextlib import AbstractContextManager, contextmanager
from typing import Any
from uuid import UUID

from sqlalchemy import (
    ColumnElement,
    Connection,
    Select,
    String,
    Table,
    delete,
    exists,
    insert,
    select,
    update,
)
from sqlalchemy.exc import SQLAlchemyError

from cards.errors import Invalid, InvalidArchive
from service.store.archive.earlier import raised
from service.store.archive.tables import (
    COLUMNS_LEFT_OUT,
    DERIVED,
    LEFT_OUT,
    READER,
    SETTINGS,
    archived,
)
from service.store.errors import StoreContradiction
from service.store.migrations import HEAD
from service.store.tables import metadata
from service.use_cases.archiving_records import Facts, FactTable, FieldType, Located, Row

AT_ONCE = 500
"""Rows read or written with one statement."""
MOST_BYTES = 4 * 1024 * 1024
"""Bytes of files written with one statement, but for the last of them."""


class SqlFacts:
    """The facts, in one transaction; satisfies `archiving_records.Facts`.

    Args:
        connection: in a transaction.
        tables: by their names; those of this revision unless others are given.
    """

    def __init__(self, connection: Connection, tables: Mapping[str, Table] | None = None) -> None:
        self._connection = connection
        self._tables = metadata.tables if tables is None else tables
        self._archived = archived(None if tables is None else tables.values())

    @property
    def revision(self) -> str:
        """The revision this Catchword works with."""
        return HEAD

    @property
    def tables(self) -> tuple[FactTable, ...]:
        """The sorts of facts that are archived, each after those it refers to."""
        return self._archived

    @property
    def left_out(self) -> Mapping[str, str]:
        """What is not archived, with the reason."""
        columns = {f"{table}.{name}": why for (table, name), why in COLUMNS_LEFT_OUT.items()}
        return {**LEFT_OUT, **columns}

    def rows(self, reader: UUID, table: FactTable) -> Generator[Row]:
        """Yield a reader's facts of one sort in the order of their keys, without files."""
        names = [each.name for each in table.fields if each.type is not FieldType.FILE]
        for row in self._read(self._select(reader, table, names), AT_ONCE):
            yield dict(zip(names, row, strict=True))

    def files(self, reader: UUID, table: FactTable) -> Generator[tuple[Row, bytes]]:
        """Yield those that have a file with its bytes, one at a time."""
        (file,) = (each.name for each in table.fields if each.type is FieldType.FILE)
        names = [each.name for each in table.fields if each.name != file]
        for row in self._read(self._select(reader, table, [*names, file]), 1):
            *values, content = row
            yield dict(zip(names, values, strict=True)), content

    def taken(self, reader: UUID) -> bool:
        """Tell whether the reader has anything but settings."""
        return any(
            self._connection.execute(
                select(exists().where(self._tables[table.name].c[READER] == reader))
            ).scalar_one()
            for table in self._archived
            if table.name not in SETTINGS
        )

    def clear(self, reader: UUID) -> None:
        """Forget a reader's settings, but for their row, and whatever followed from their facts."""
        for name in SETTINGS - {"readers"} | DERIVED:
            table = self._tables[name]
            self._connection.execute(delete(table).where(table.c[READER] == reader))

    def put(self, reader: UUID, table: FactTable, found: Iterable[Located]) -> None:
        """Keep facts as a reader's.

        Raises:
            InvalidArchive: one breaks a rule of the store; names its place.
        """
        if table.name == "readers":
            found = self._without_own(reader, found)
        for batch in _batches(found):
            try:
                self._insert(reader, table, batch)
            except (StoreContradiction, Invalid):
                for each in batch:
                    self._insert_one(reader, table, each)
                raise

    def raised(self, revision: str, fill: Callable[[Facts], None]) -> AbstractContextManager[Facts]:
        """Lend a store of an earlier revision, filled by `fill` and brought up to date.

        Raises:
            InvalidArchive: there is no such revision, or only a later Catchword knows it.
        """
        return raised(revision, fill, SqlFacts)

    def _select(self, reader: UUID, table: FactTable, names: list[str]) -> Select[Any]:
        columns = self._tables[table.name].c
        order: list[ColumnElement[Any]] = [columns[name] for name in table.key]
        if self._connection.dialect.name == "postgresql":
            # SQLite sorts by bytes, PostgreSQL as its locale says unless told.
            order = [
                column.collate("C") if isinstance(column.type, String) or name == "word" else column
                for name, column in zip(table.key, order, strict=True)
            ]
        return (
            select(*(columns[name] for name in names))
            .where(columns[READER] == reader)
            .order_by(*order)
        )

    def _read(self, statement: Select[Any], at_once: int) -> Generator[Any]:
        with self._connection.execution_options(yield_per=at_once).execute(statement) as rows:
            yield from rows

    def _without_own(self, reader: UUID, found: Iterable[Located]) -> Iterator[Located]:
        """Write the first line over the reader's own row where there is one; others refer to it."""
        own = self._tables["readers"]
        mine = own.c[READER] == reader
        facts = iter(found)
        for first in facts:
            if self._connection.execute(select(exists().where(mine))).scalar_one():
                with _told(first), self._connection.begin_nested():
                    self._connection.execute(update(own).where(mine).values(first.row))
            else:
                yield first
            yield from facts

    def _insert(self, reader: UUID, table: FactTable, batch: list[Located]) -> None:
        values = [{READER: reader, **each.row} for each in batch]
        with self._connection.begin_nested():
            self._connection.execute(insert(self._tables[table.name]), values)

    def _insert_one(self, reader: UUID, table: FactTable, each: Located) -> None:
        with _told(each):
            self._insert(reader, table, [each])


@contextmanager
def _told(each: Located) -> Iterator[None]:
    """Say of a fact that breaks a rule of the store where it stands."""
    try:
        yield
    except (StoreContradiction, Invalid, SQLAlchemyError) as error:
        raise InvalidArchive(
            f"{each.place}, cannot be kept: it is there twice, refers to something that is not "
            "there, or holds a value out of its range.",
            where=each.place,
        ) from error


def _batches(found: Iterable[Located]) -> Iterator[list[Located]]:
    batch: list[Located] = []
    weight = 0
    for each in found:
        batch.append(each)
        weight += sum(len(value) for value in each.row.values() if isinstance(value, bytes))
        if len(batch) >= AT_ONCE or weight >= MOST_BYTES:
            yield batch
            batch, weight = [], 0
    if batch:
        yield batch
