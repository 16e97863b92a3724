"""The rows of a table as plain values, whatever way the store handed its columns over.

Plain are words, numbers, true and false, None, and lists of parts; an id, a day and an instant
are the words they are written with everywhere.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import UTC, date, datetime
from typing import TypeAlias
from uuid import UUID

from service.use_cases.exporting_columns import Column, Holds
from service.use_cases.exporting_records import Batch, Beside, Packed, Table, Value

Plain: TypeAlias = str | int | float | bool | list[dict[str, str | int | None]] | None

_ZERO = "+00:00"
_MADE: dict[Holds, Callable[[str], Plain]] = {
    Holds.WHOLE: int,
    Holds.NUMBER: float,
    Holds.FLAG: "1".__eq__,
    Holds.INSTANT: lambda said: said.replace(_ZERO, "Z"),
}
"""What a packed value of a type becomes; words stay words."""


def rows_of(table: Table) -> Iterator[tuple[Plain, ...]]:
    """Yield the rows of a table, their values in the order of its columns."""
    columns = table.described.columns
    beside = _beside(table)
    places = {} if table.beside is None else _places(table.beside)
    for batch in table.batches:
        at = [] if table.beside is None else [places[key] for key in _keys(table.beside, batch)]
        yield from zip(
            *(
                [beside[column.name][place] for place in at]
                if column.name in beside
                else plain_column(column, batch.columns[column.name])
                for column in columns
            ),
            strict=True,
        )


def _beside(table: Table) -> dict[str, list[Plain]]:
    """Return the plain values of what stands beside the rows, by the name of the column."""
    if table.beside is None or not table.beside.rows.count:
        return {}
    return {
        name: plain_column(table.described.column(name), values)
        for name, values in table.beside.rows.columns.items()
        if name != table.beside.key
    }


def _places(beside: Beside) -> dict[bytes, int]:
    return {key: place for place, key in enumerate(_keys(beside, beside.rows))}


def _keys(beside: Beside, batch: Batch) -> list[bytes]:
    keys = batch.columns[beside.key]
    assert isinstance(keys, Packed)
    return keys.apart()


def plain_column(column: Column, values: Packed | Sequence[Value]) -> list[Plain]:
    """Return the values of a column as plain ones."""
    if not isinstance(values, Packed):
        return [plain(each) for each in values]
    apart = values.apart()
    if column.holds is Holds.ID:
        return [id_text(each.hex()) for each in apart]
    made = _marked if values.marked else _MADE.get(column.holds, str)
    if column.absent:
        return [made(each) if each else None for each in map(bytes.decode, apart)]
    return [made(each.decode()) for each in apart]


def plain(value: Value) -> Plain:
    """Return a value as a plain one."""
    match value:
        case UUID():
            return str(value)
        case datetime():
            return value.astimezone(UTC).isoformat(timespec="microseconds").replace(_ZERO, "Z")
        case date():
            return value.isoformat()
        case str() | int() | float() | None:
            return value
        case _:
            return [_plain_part(part) for part in value]


def _plain_part(part: Mapping[str, UUID | str | int | None]) -> dict[str, str | int | None]:
    return {name: str(each) if isinstance(each, UUID) else each for name, each in part.items()}


def id_text(digits: str) -> str:
    """Return a UUID as RFC 9562 writes it, of its 32 hexadecimal digits."""
    return f"{digits[:8]}-{digits[8:12]}-{digits[12:16]}-{digits[16:20]}-{digits[20:]}"


def _marked(said: str) -> str:
    return said[1:]


def lines_of(parts: list[dict[str, str | int | None]]) -> str:
    """Return parts one a line, each with its locator in brackets."""
    return "\n".join(
        f"{part['text']} ({part['locator']})" if part.get("locator") else str(part["text"])
        for part in parts
    )
