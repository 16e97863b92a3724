"""The columns of a batch as Arrow's, typed, without an object a value where they come packed."""

from array import array
from collections.abc import Mapping, Sequence
from functools import lru_cache
from typing import Any
from uuid import UUID

import pyarrow as pa
import pyarrow.compute as pc

from service.feeds.exports.rows import plain
from service.use_cases.exporting_columns import Column, Holds
from service.use_cases.exporting_records import Batch, Beside, Packed, Value

_STRING = pa.string()
_ID_BYTES = pa.binary(16)
_NO_WORDS = pa.scalar(None, _STRING)
_EMPTY, _YES = pa.scalar("", _STRING), pa.scalar("1", _STRING)
_TYPES: dict[Holds, pa.DataType] = {
    Holds.ID: pa.uuid(),
    Holds.TEXT: _STRING,
    Holds.WHOLE: pa.int64(),
    Holds.NUMBER: pa.float64(),
    Holds.FLAG: pa.bool_(),
    Holds.DAY: pa.date32(),
    Holds.INSTANT: pa.timestamp("us", "UTC"),
}


def type_of(column: Column) -> pa.DataType:
    """Return the type of a column's values."""
    if column.holds is Holds.PARTS:
        # A UUID within a list is no type of its own to many readers yet: words there.
        return pa.list_(
            pa.struct(
                [
                    (each.name, _STRING if each.holds is Holds.ID else _TYPES[each.holds])
                    for each in column.fields
                ]
            )
        )
    return _TYPES[column.holds]


class Looked:
    """What stands beside the rows of a table, looked up for each of them."""

    def __init__(self, beside: Beside, columns: Mapping[str, Column]) -> None:
        self._key = beside.key
        self._keys = self._of(beside.rows)
        self._columns = {
            name: arrow_column(columns[name], values, beside.rows.count)
            for name, values in beside.rows.columns.items()
            if name != beside.key
        }

    def _of(self, batch: Batch) -> Any:  # noqa: ANN401
        keys = batch.columns[self._key]
        assert isinstance(keys, Packed)
        return _ids(keys, batch.count)

    def up(self, batch: Batch) -> dict[str, Any]:
        """Return the columns beside the rows of a batch."""
        places = pc.index_in(self._of(batch), value_set=self._keys)
        return {name: _taken(values, places) for name, values in self._columns.items()}


def arrow_column(column: Column, values: Packed | Sequence[Value], count: int) -> Any:  # noqa: ANN401
    """Return the values of a column as an Arrow array of its type."""
    if not isinstance(values, Packed):
        return _of_values(column, values)
    if column.holds is Holds.ID:
        return _as_uuids(_ids(values, count))
    words = _words(values, count)
    if column.holds is Holds.FLAG:
        return pc.equal(words, _YES)
    if column.absent:
        words = pc.if_else(pc.equal(words, _EMPTY), _NO_WORDS, words)
    if values.marked:
        return pc.utf8_slice_codeunits(words, 1)
    return words if column.holds is Holds.TEXT else words.cast(_TYPES[column.holds])


def _of_values(column: Column, values: Sequence[Value]) -> Any:  # noqa: ANN401
    if column.holds is Holds.ID:
        return _as_uuids(
            pa.array([each.bytes for each in values if isinstance(each, UUID)], _ID_BYTES)
        )
    if column.holds is Holds.PARTS:
        return pa.array([plain(each) for each in values], type_of(column))
    return pa.array(values, _TYPES[column.holds])


def _taken(values: Any, places: Any) -> Any:  # noqa: ANN401
    if isinstance(values, pa.ExtensionArray):
        return _as_uuids(values.storage.take(places))
    return values.take(places)


def _as_uuids(stored: Any) -> Any:  # noqa: ANN401
    return pa.ExtensionArray.from_storage(pa.uuid(), stored)


def _ids(packed: Packed, count: int) -> Any:  # noqa: ANN401
    return pa.Array.from_buffers(_ID_BYTES, count, [None, pa.py_buffer(packed.data)])


def _words(packed: Packed, count: int) -> Any:  # noqa: ANN401
    if packed.width is None:
        return pa.array(packed.data.split(b"\0"), _STRING)
    edges = _edges(packed.width, count)
    return pa.Array.from_buffers(_STRING, count, [None, edges, pa.py_buffer(packed.data)])


@lru_cache(maxsize=16)
def _edges(width: int, count: int) -> pa.Buffer:
    """Return where values of one width begin and end, as Arrow's words of 32 bits."""
    return pa.py_buffer(array("i", range(0, width * (count + 1), width)))
