"""Everything at once: what passes between the use cases, the store and the archive's format."""

from collections.abc import Callable, Generator, Iterable, Iterator, Mapping
from contextlib import AbstractContextManager
from dataclasses import dataclass
from enum import StrEnum
from typing import Protocol, Self, TypeAlias
from uuid import UUID

Row: TypeAlias = dict[str, object]
"""A fact, its values by the names of its fields: UUID, aware datetime, date, str, int, float, bool
or None. JSON is the text the store keeps; a file is its bytes where they are there at all."""


class FieldType(StrEnum):
    """What a field of a fact holds."""

    ID = "id"
    INSTANT = "instant"
    DAY = "day"
    WORDS = "words"
    WHOLE = "whole number"
    NUMBER = "number"
    FLAG = "true or false"
    JSON = "JSON"
    FILE = "file"


@dataclass(frozen=True, slots=True)
class Field:
    """A field of a fact.

    Attributes:
        optional: whether it may be absent (null).
        longest: characters of words at the most, or None where nothing bounds them.
        meaning: what it says, in words a reader of the archive understands.
    """

    name: str
    type: FieldType
    optional: bool
    longest: int | None
    meaning: str


@dataclass(frozen=True, slots=True)
class FactTable:
    """A sort of facts.

    Attributes:
        meaning: what one of them is.
        key: the fields that tell one from another, and order them.
        fields: in the order they are written.
    """

    name: str
    meaning: str
    key: tuple[str, ...]
    fields: tuple[Field, ...]


@dataclass(frozen=True, slots=True)
class Located:
    """A fact read from an archive; `place` names its file and its line."""

    row: Row
    place: str


@dataclass(frozen=True, slots=True)
class Contents:
    """What goes into an archive.

    Attributes:
        revision: of the store the facts come from.
        tables: the sorts of facts, each after those it refers to.
        left_out: what is not in it, with the reason.
        rows: the facts of one sort in the order of their keys, without files.
        files: those of a sort that have a file, with its bytes.
        digests: the digests to be read by people: a stem for the file's name, and Markdown.
    """

    revision: str
    tables: tuple[FactTable, ...]
    left_out: Mapping[str, str]
    rows: Callable[[FactTable], Iterator[Row]]
    files: Callable[[FactTable], Iterator[tuple[Row, bytes]]]
    digests: Iterable[tuple[str, bytes]]


class Archive(Protocol):
    """An archive that is open to be read back."""

    @property
    def revision(self) -> str:
        """The revision of the store its facts come from."""
        ...

    def hold_to(self, tables: Iterable[FactTable]) -> None:
        """Check that it has the facts of each of these sorts, and of no other.

        Raises:
            InvalidArchive: one is missing, or one is not known.
        """
        ...

    def rows(self, table: FactTable) -> Iterator[Located]:
        """Yield the facts of one sort, each value typed as its field says, files with their bytes.

        Raises:
            InvalidArchive: a line is none of them.
        """
        ...

    def place(self, table: str, key: Row) -> str:
        """Return the file and the line a fact stands on."""
        ...

    def __enter__(self) -> Self: ...

    def __exit__(self, *_: object) -> None: ...


class Facts(Protocol):
    """The facts of one store, sort by sort, as they are kept."""

    @property
    def revision(self) -> str:
        """The revision of the store."""
        ...

    @property
    def tables(self) -> tuple[FactTable, ...]:
        """The sorts of facts that are archived, each after those it refers to."""
        ...

    @property
    def left_out(self) -> Mapping[str, str]:
        """What is not archived, with the reason."""
        ...

    def rows(self, reader: UUID, table: FactTable) -> Generator[Row]:
        """Yield a reader's facts of one sort in the order of their keys, without files."""
        ...

    def files(self, reader: UUID, table: FactTable) -> Generator[tuple[Row, bytes]]:
        """Yield those that have a file with its bytes, one at a time."""
        ...

    def taken(self, reader: UUID) -> bool:
        """Tell whether the reader has anything but settings."""
        ...

    def clear(self, reader: UUID) -> None:
        """Forget a reader's settings, which an archive brings, and what followed from facts."""
        ...

    def put(self, reader: UUID, table: FactTable, found: Iterable[Located]) -> None:
        """Keep facts as a reader's.

        Raises:
            InvalidArchive: one breaks a rule of the store; names its place.
        """
        ...

    def raised(
        self, revision: str, fill: Callable[["Facts"], None]
    ) -> AbstractContextManager["Facts"]:
        """Lend a store of an earlier revision, filled by `fill` and brought up to date.

        Raises:
            InvalidArchive: there is no such revision, or only a later Catchword knows it.
        """
        ...
