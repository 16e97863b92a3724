"""An export as Parquet: typed, compressed with Zstandard, its columns documented within."""

import io
from collections.abc import Generator
from contextlib import closing
from typing import Any

import pyarrow as pa
import pyarrow.parquet as pq

from service.feeds.exports.arrow_columns import Looked, arrow_column, type_of
from service.use_cases.exporting_columns import HOLDS, Column, Described, Holds
from service.use_cases.exporting_records import Batch, Table

ROW_GROUP = 50_000
"""Rows of a row group: some ten megabytes of answers, which is what is held at a time."""
_REPEATED = frozenset({Holds.ID, Holds.TEXT, Holds.WHOLE, Holds.DAY})
_SINGLE = frozenset({"id", "attempt", "text", "note", "theme", "judgement"})
"""Columns that hardly say the same twice: a dictionary of their values would only cost."""


pa.set_memory_pool(pa.system_memory_pool())
# Arrow's own allocator keeps a dozen megabytes for itself, and is no quicker here.


class _Pieces(io.RawIOBase):
    """What a writer writes to: it is handed on piece by piece, and none of it is kept."""

    def __init__(self) -> None:
        super().__init__()
        self._pieces: list[bytes] = []
        self._at = 0

    def writable(self) -> bool:
        return True

    def write(self, data: Any) -> int:  # noqa: ANN401 - any buffer
        piece = bytes(data)
        self._pieces.append(piece)
        self._at += len(piece)
        return len(piece)

    def tell(self) -> int:
        return self._at

    def taken(self) -> list[bytes]:
        """Return what was written since this was asked last."""
        found, self._pieces = self._pieces, []
        return found


def to_parquet(table: Table) -> Generator[bytes]:
    """Yield a table as Parquet, a row group at a time."""
    columns = {column.name: column for column in table.described.columns}
    beside = table.beside
    looked = None if beside is None or not beside.rows.count else Looked(beside, columns)
    schema = schema_of(table.described)
    pieces = _Pieces()
    repeated: Any = [name for name, each in columns.items() if _repeats(each)]
    sink: Any = pieces
    writer = pq.ParquetWriter(sink, schema, compression="zstd", use_dictionary=repeated)
    with closing(writer):
        waiting: list[pa.RecordBatch] = []
        for batch in table.batches:
            waiting.append(_record_batch(batch, schema, columns, looked))
            if sum(each.num_rows for each in waiting) >= ROW_GROUP:
                writer.write_table(pa.Table.from_batches(waiting), row_group_size=ROW_GROUP)
                waiting.clear()
                yield from pieces.taken()
        if waiting:
            writer.write_table(pa.Table.from_batches(waiting), row_group_size=ROW_GROUP)
    yield from pieces.taken()


def schema_of(described: Described) -> pa.Schema:
    """Return the columns of an export with their types; unit and meaning as metadata of each."""
    return pa.schema(
        [
            pa.field(
                column.name, type_of(column), nullable=column.absent, metadata=_metadata(column)
            )
            for column in described.columns
        ],
        metadata={"title": described.title, "holds": described.holds},
    )


def _repeats(column: Column) -> bool:
    return column.holds in _REPEATED and column.name not in _SINGLE


def _metadata(column: Column) -> dict[str, str]:
    unit = {"unit": column.unit} if column.unit else {}
    return {"meaning": column.meaning, "type": HOLDS[column.holds], **unit}


def _record_batch(
    batch: Batch, schema: pa.Schema, columns: dict[str, Column], looked: Looked | None
) -> pa.RecordBatch:
    beside = {} if looked is None else looked.up(batch)
    return pa.RecordBatch.from_arrays(
        [
            beside[name]
            if name in beside
            else arrow_column(column, batch.columns[name], batch.count)
            for name, column in columns.items()
        ],
        schema=schema,
    )
