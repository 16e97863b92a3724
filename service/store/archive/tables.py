"""Which tables go into an archive, which do not and why, and what each field of them says.

Every table and every column stands in one of the two lists, which a test holds; what a field
means is in `fields.txt`, which the archive carries along.
"""

from collections.abc import Iterable, Mapping
from functools import cache
from importlib import resources

from sqlalchemy import Column, Table
from sqlalchemy.dialects import sqlite

from service.store.tables import metadata
from service.use_cases.archiving_records import FactTable, Field, FieldType

READER = "reader_id"
"""The column no fact carries: an archive is one reader's, and is restored as another's perhaps."""

LEFT_OUT: Mapping[str, str] = {
    "feed_addresses": "Addresses that open the calendar. Each is a secret that stays where it was "
    "made; make a new one for the new library.",
    "mails": "Which mails were sent, with the secrets that end them. They belong to the machine "
    "that sent them.",
    "tallies": "Sums of the answers, kept to be quick. They follow from the answers and are made "
    "anew.",
    "tallied": "How far these sums reach. It is made anew with them.",
}
"""The tables that are left out, each with the reason."""
COLUMNS_LEFT_OUT: Mapping[tuple[str, str], str] = {
    ("book_texts", "content"): "The text of a book is its author’s, and stays on the reader’s "
    "machine. Its file’s name and SHA-256 go along, and so does where each quotation stands in it."
}
"""The columns that are left out of a table that goes along, each with the reason."""
SETTINGS = frozenset({"readers", "reminders", "heading_words", "sitting_days"})
"""What a reader may have set before an archive is restored; its own takes the place of that."""
DERIVED = frozenset({"tallies", "tallied"})
"""What follows from the facts, and would be wrong of others than it was made from."""

_JSON = frozenset(
    {
        ("readers", "weights"),
        ("versions", "kept"),
        ("fittings", "weights"),
        ("fittings", "verdicts"),
        ("commitments", "measure"),
        ("decisions", "measure"),
        ("rereadings", "concerned"),
        ("sheets", "lines"),
        ("drafts", "typed"),
        ("drafts", "sources"),
        ("drafts", "left_out"),
        ("drafts", "notices"),
    }
)
"""The columns of text that hold JSON."""
_INSTANT = 32
"""Characters of an instant on SQLite; no column of words is as wide."""
_DIALECT = sqlite.dialect()


def archived(tables: Iterable[Table] | None = None) -> tuple[FactTable, ...]:
    """Return what goes into an archive, each table after those it refers to.

    Args:
        tables: those of an earlier revision, as SQLite tells of them; those of this one if None.
    """
    found = metadata.sorted_tables if tables is None else tables
    return tuple(fact_table(table) for table in found if table.name not in LEFT_OUT)


def fact_table(table: Table) -> FactTable:
    """Return a table as the archive sees it."""
    told = meanings().get(table.name, {})
    return FactTable(
        table.name,
        told.get("", ""),
        tuple(column.name for column in table.primary_key if column.name != READER),
        tuple(
            _field(table.name, column, told.get(column.name, ""))
            for column in table.columns
            if column.name != READER and (table.name, column.name) not in COLUMNS_LEFT_OUT
        ),
    )


def _field(table: str, column: Column[object], meaning: str) -> Field:
    kept_as = column.type.compile(dialect=_DIALECT)
    holds = _type(table, column.name, kept_as)
    longest = getattr(column.type, "length", None) if holds is FieldType.WORDS else None
    return Field(column.name, holds, bool(column.nullable), longest, meaning)


def _type(table: str, name: str, kept_as: str) -> FieldType:
    """Return what a column holds, from the type SQLite has for it: the same at every revision."""
    if (table, name) in _JSON:
        return FieldType.JSON
    if kept_as == "BLOB":
        return FieldType.FILE if name == "content" else FieldType.ID
    if kept_as == f"VARCHAR({_INSTANT})":
        return FieldType.INSTANT
    if kept_as == "TEXT" or kept_as.startswith("VARCHAR"):
        return FieldType.WORDS
    return _PLAIN[kept_as]


_PLAIN = {
    "INTEGER": FieldType.WHOLE,
    "DOUBLE": FieldType.NUMBER,
    "BOOLEAN": FieldType.FLAG,
    "DATE": FieldType.DAY,
}


@cache
def meanings() -> Mapping[str, Mapping[str, str]]:
    """Return by table what its fields say; under "", what one of its facts is."""
    told: dict[str, dict[str, str]] = {}
    file = resources.files("service.store.archive") / "fields.txt"
    table: dict[str, str] = {}
    for line in file.read_text(encoding="utf-8").splitlines():
        name, meaning = line.strip().split(": ", 1)
        if line.startswith(" "):
            table[name] = meaning
        else:
            table = told[name] = {"": meaning}
    return told
