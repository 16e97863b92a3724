"""Blocks of rows packed by the database itself: each column of a block comes as one value.

So a million rows cost the process a few thousand values, and what the database does meanwhile
holds no lock of Python's. Both databases join values by an aggregate of their own, which is all
they differ in. A block is found by the key it begins after, so no cursor stays open between two.
"""

from collections.abc import Generator, Sequence
from typing import Any, Protocol, TypeAlias
from uuid import UUID

from sqlalchemy import (
    ColumnElement,
    Connection,
    Executable,
    Integer,
    LargeBinary,
    Select,
    Text,
    bindparam,
    cast,
    func,
    literal_column,
    select,
    type_coerce,
)
from sqlalchemy.dialects.postgresql import aggregate_order_by

from service.store.columns import ID
from service.use_cases.exporting_columns import Column, Holds
from service.use_cases.exporting_records import Batch, Packed
from service.use_cases.records import ReaderId

_Expression: TypeAlias = ColumnElement[Any]
_WIDTHS = {Holds.ID: 16, Holds.INSTANT: 32, Holds.DAY: 10, Holds.FLAG: 1}
"""Bytes of a value that is never absent; see `Packed`."""
_MARK: ColumnElement[str] = literal_column("'='")


class Packing:
    """Reads the rows of a statement in blocks, by their ids.

    Args:
        columns: what the statement selects, in its order; the first is the id its rows are told
            apart by.
        rows: the statement, with `reader` to be bound.
        block: rows of a block.
    """

    def __init__(self, columns: Sequence[Column], rows: Select[Any], block: int) -> None:
        self._columns = columns
        key = rows.selected_columns[0]
        first = rows.order_by(key).limit(block)
        beyond = first.where(key > bindparam("last", type_=ID))
        self._statements = {
            name: (_packed(columns, first, way), _packed(columns, beyond, way))
            for name, way in (("sqlite", _Sqlite()), ("postgresql", _Postgresql()))
        }

    def batches(self, connection: Connection, reader: ReaderId) -> Generator[Batch]:
        """Yield all rows, block after block."""
        statement, beyond = self._statements[connection.dialect.name]
        values: dict[str, object] = {"reader": reader}
        while True:
            count, *packed = connection.execute(statement, values).one()
            if not count:
                return
            yield Batch(
                count,
                {
                    column.name: Packed(data, _width(column), _marked(column))
                    for column, data in zip(self._columns, packed, strict=True)
                },
            )
            statement, values = beyond, values | {"last": UUID(bytes=packed[0][-16:])}


def _width(column: Column) -> int | None:
    return None if column.absent else _WIDTHS.get(column.holds)


def _marked(column: Column) -> bool:
    return column.absent and column.holds is Holds.TEXT


class _Way(Protocol):
    """How a database turns values into bytes, and joins those of a column."""

    def as_bytes(self, column: Column, value: _Expression) -> _Expression: ...

    def joined(self, value: _Expression, key: _Expression, *, parted: bool) -> _Expression: ...


def _packed(columns: Sequence[Column], block: Select[Any], way: _Way) -> Executable:
    values = block.subquery().c
    key = values[0]
    return select(
        func.count(),
        *(
            way.joined(way.as_bytes(column, value), key, parted=_width(column) is None)
            for column, value in zip(columns, values, strict=True)
        ),
    )


class _Sqlite:
    """Joins by `group_concat`, which takes bytes as they are.

    It goes through the rows as the block orders them: one with a limit is never flattened away.
    """

    def as_bytes(self, column: Column, value: _Expression) -> _Expression:
        plain: _Expression = type_coerce(value, Text)
        if column.holds is Holds.NUMBER:
            # By itself SQLite cuts a number at 15 digits; 17 tell any two of 64 bits apart.
            plain = func.iif(value.is_(None), None, func.printf("%!.17g", value))
        if _marked(column):
            plain = _MARK.op("||")(plain)
        return func.coalesce(plain, "") if column.absent else plain

    def joined(self, value: _Expression, key: _Expression, *, parted: bool) -> _Expression:
        del key
        between: _Expression = literal_column("char(0)" if parted else "''")
        return cast(func.group_concat(value, between), LargeBinary)


class _Postgresql:
    """Joins by `string_agg` over bytes, in the order of the ids."""

    def as_bytes(self, column: Column, value: _Expression) -> _Expression:
        said: _Expression
        match column.holds:
            case Holds.ID:
                return func.uuid_send(value)
            case Holds.INSTANT:
                said = func.to_char(value, 'YYYY-MM-DD"T"HH24:MI:SS.US"+00:00"')
            case Holds.DAY:
                said = func.to_char(value, "YYYY-MM-DD")
            case Holds.FLAG:
                said = cast(cast(value, Integer), Text)
            case _:
                said = cast(value, Text)
        if _marked(column):
            said = _MARK.op("||")(said)
        return func.convert_to(func.coalesce(said, "") if column.absent else said, "UTF8")

    def joined(self, value: _Expression, key: _Expression, *, parted: bool) -> _Expression:
        between: _Expression = literal_column(r"'\x00'::bytea" if parted else "''::bytea")
        return func.string_agg(value, aggregate_order_by(between, key), type_=LargeBinary())
