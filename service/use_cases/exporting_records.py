"""What passes between store, use case and writer of an export: rows in batches, never all."""

from collections.abc import Generator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum
from typing import Protocol, TypeAlias
from uuid import UUID

from cards.items import KeptItem
from service.use_cases.exporting_columns import Described, What
from service.use_cases.records import ReaderId


class ExportForm(StrEnum):
    """What an export is written as."""

    CSV = "csv"
    JSON = "json"
    PARQUET = "parquet"
    XLSX = "xlsx"
    XAPI = "xapi"


PartValue: TypeAlias = Mapping[str, UUID | str | int | None]
Value: TypeAlias = UUID | str | int | float | bool | date | datetime | Sequence[PartValue] | None
"""A value of a column; None where it is absent."""


@dataclass(frozen=True, slots=True)
class Packed:
    """The values of a column packed into one string of bytes, as a store hands them over fast.

    A million rows made into objects one by one take longer than all the rest of an export. So a
    store joins what a block of rows holds in a column, and who writes tables column by column
    takes it as it is.

    Attributes:
        data: the values, joined. Ids are their 16 bytes; everything else is UTF-8, instants and
            days as ISO 8601 writes them, yes and no as 1 and 0.
        width: of every value, in bytes; None where they are parted by NUL. Parted by NUL, an
            absent value is empty.
        marked: whether words that are there begin with "=", to tell empty ones from absent ones.
    """

    data: bytes
    width: int | None = None
    marked: bool = False

    def apart(self) -> list[bytes]:
        """Return the values one by one, of at least one row."""
        if self.width is None:
            return self.data.split(b"\0")
        return [self.data[at : at + self.width] for at in range(0, len(self.data), self.width)]


@dataclass(frozen=True, slots=True)
class Batch:
    """Some rows of an export, column by column.

    Attributes:
        count: how many rows.
        columns: their values by the name of the column, in the order of the rows.
    """

    count: int
    columns: Mapping[str, Packed | Sequence[Value]]


@dataclass(frozen=True, slots=True)
class Beside:
    """Columns that are the same for every row with the same key, so they are handed over once.

    Attributes:
        key: the name of the column with the key, a packed one of ids, here as in every batch.
        rows: each key once, with what stands beside it.
    """

    key: str
    rows: Batch


@dataclass(frozen=True, slots=True)
class Table:
    """What is to be exported.

    Attributes:
        what: which export it is.
        described: its columns, each of them in every batch or in `beside`.
        batches: its rows; they can be gone through once.
        beside: what is looked up for every row, or None.
        reader: whose it is.
        at: the instant of the export, aware, in UTC.
        home: the address that the reader's id belongs to in statements of xAPI.
    """

    what: What
    described: Described
    batches: Generator[Batch]
    reader: ReaderId
    at: datetime
    home: str
    beside: Beside | None = None


@dataclass(frozen=True, slots=True)
class ItemRow:
    """An item with what is said of it in words."""

    kept: KeptItem
    title: str
    text: str


class ExportRows(Protocol):
    """What the store hands over to be exported: all of a reader's rows, few at a time."""

    def answers(self, reader: ReaderId) -> Generator[Batch]:
        """Yield every answer, taken back or not, in blocks, by id."""
        ...

    def beside_answers(self, reader: ReaderId) -> Beside:
        """Return what is said of each item beside its answers."""
        ...

    def items(self, reader: ReaderId) -> Generator[Sequence[ItemRow]]:
        """Yield every item, retired or not, in blocks, book by book."""
        ...

    def digests(self, reader: ReaderId) -> Sequence[tuple[UUID, datetime]]:
        """Return the ids of all digests, removed ones too, with when each was added; by that."""
        ...

    def check_ins(self, reader: ReaderId) -> Generator[Batch]:
        """Yield every check-in, taken back or not, in blocks, by commitment, day and id."""
        ...
