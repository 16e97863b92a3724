"""What the tables are made of: the metadata they stand in, and their usual columns and keys."""

from collections.abc import Iterable
from datetime import date, datetime
from enum import StrEnum
from uuid import UUID

from sqlalchemy import (
    Boolean,
    CheckConstraint,
    Column,
    Date,
    ForeignKeyConstraint,
    Integer,
    MetaData,
    String,
)

from service.store.columns import ID, INSTANT, WORDS

metadata = MetaData(
    naming_convention={
        "pk": "%(table_name)s_pk",
        "fk": "%(table_name)s_to_%(referred_table_name)s",
        "uq": "%(table_name)s_%(column_1_name)s_once",
        "ck": "%(table_name)s_%(constraint_name)s",
    }
)
"""Every table, and how constraints are named."""


def reader_key() -> Column[UUID]:
    """Return the column every key begins with: whose row it is."""
    return Column("reader_id", ID, primary_key=True)


def id_key() -> Column[UUID]:
    """Return the column that tells a reader's rows apart."""
    return Column("id", ID, primary_key=True)


def key_to(name: str) -> Column[UUID]:
    """Return a column of the key that holds the id of another table's row."""
    return Column(name, ID, primary_key=True)


def words(name: str) -> Column[str]:
    """Return a column of text that is never absent."""
    return Column(name, WORDS, nullable=False)


def number(name: str) -> Column[int]:
    """Return a column of whole numbers that is never absent."""
    return Column(name, Integer, nullable=False)


def flag(name: str) -> Column[bool]:
    """Return a column of yes or no."""
    return Column(name, Boolean, nullable=False)


def instant(name: str) -> Column[datetime]:
    """Return a column of instants that is never absent."""
    return Column(name, INSTANT, nullable=False)


def day(name: str) -> Column[date]:
    """Return a column of days that is never absent."""
    return Column(name, Date, nullable=False)


def choice(name: str, values: Iterable[StrEnum]) -> Column[str]:
    """Return a column as wide as the longest of the values it is to hold; see `one_of`."""
    return Column(name, String(max(len(value) for value in values)), nullable=False)


def one_of(name: str, values: Iterable[StrEnum]) -> CheckConstraint:
    """Return the check that a column holds one of these values."""
    listed = ", ".join(f"'{value.value}'" for value in values)
    return CheckConstraint(f"{name} IN ({listed})", name=f"{name}_known")


def sha256_whole() -> CheckConstraint:
    """Return the check that `sha256` has its 64 hexadecimal digits."""
    return CheckConstraint("length(sha256) = 64", name="sha256_length")


def points_to(table: str, column: str, theirs: str = "id") -> ForeignKeyConstraint:
    """Return the reference to a row of another table, of the same reader."""
    return ForeignKeyConstraint(["reader_id", column], [f"{table}.reader_id", f"{table}.{theirs}"])


def to_reader() -> ForeignKeyConstraint:
    """Return the reference to the reader's own row."""
    return ForeignKeyConstraint(["reader_id"], ["readers.reader_id"])
