"""What goes into an archive and what does not: every table, every column, at every revision."""

from pathlib import Path

import pytest
from sqlalchemy.dialects import sqlite

from cards.errors import InvalidArchive
from service.store.archive.earlier import raised
from service.store.archive.facts import SqlFacts
from service.store.archive.tables import (
    COLUMNS_LEFT_OUT,
    DERIVED,
    LEFT_OUT,
    SETTINGS,
    archived,
    meanings,
)
from service.store.columns import INSTANT
from service.store.migrations import HEAD
from service.store.tables import metadata
from service.use_cases.archiving_records import FactTable, FieldType

ARCHIVED = {table.name: table for table in archived()}


def test_every_table_goes_along_or_is_left_out_with_a_reason() -> None:
    """None is forgotten, none is both, and what is left out says why in a sentence."""
    assert set(ARCHIVED) | set(LEFT_OUT) == set(metadata.tables)
    assert not set(ARCHIVED) & set(LEFT_OUT)
    assert set(ARCHIVED) >= SETTINGS
    assert set(LEFT_OUT) >= DERIVED
    assert all(why.endswith(".") for why in [*LEFT_OUT.values(), *COLUMNS_LEFT_OUT.values()])


@pytest.mark.parametrize("table", ARCHIVED.values(), ids=ARCHIVED)
def test_every_field_says_what_it_means(table: FactTable) -> None:
    """Every column is a field with a meaning or left out with a reason; no meaning is of none."""
    left = {name for of, name in COLUMNS_LEFT_OUT if of == table.name}
    fields = {field.name for field in table.fields}
    assert fields | left == {column.name for column in metadata.tables[table.name].c} - {
        "reader_id"
    }
    assert set(meanings()[table.name]) == {"", *fields}
    assert all(meaning.endswith(".") for meaning in meanings()[table.name].values())
    assert set(table.key) <= fields
    assert set(meanings()) == set(ARCHIVED)


def test_every_table_comes_after_those_it_refers_to() -> None:
    """So that it can be read back in one go under foreign keys."""
    seen: set[str] = set()
    for name in ARCHIVED:
        refers = {key.column.table.name for key in metadata.tables[name].foreign_keys}
        assert refers <= seen | {name}
        seen.add(name)


def test_sqlite_tells_the_same_of_its_tables(tmp_path: Path) -> None:
    """What an earlier revision held is told by SQLite alone, and at this one it tells no less."""
    told: list[tuple[FactTable, ...]] = []
    with raised(HEAD, lambda facts: told.append(facts.tables), SqlFacts):
        pass
    (found,) = told
    assert {table.name: table for table in found} == ARCHIVED


def test_no_words_are_as_wide_as_an_instant() -> None:
    """An instant is told by its width on SQLite, so nothing else may have it."""
    wide = INSTANT.compile(dialect=sqlite.dialect())
    for table in ARCHIVED.values():
        columns = metadata.tables[table.name].c
        for field in table.fields:
            as_wide = columns[field.name].type.compile(dialect=sqlite.dialect()) == wide
            assert as_wide == (field.type is FieldType.INSTANT), (table.name, field.name)


@pytest.mark.parametrize("revision", ["0000", "7", "0007 ", "abcd", "", "../1"])
def test_a_state_that_never_was_is_refused(revision: str) -> None:
    """Whatever an archive says it comes from, nothing but our own revisions is looked for."""
    with pytest.raises(InvalidArchive, match="no state"), raised(revision, _never, SqlFacts):
        pass


def test_a_later_state_is_refused() -> None:
    """What only a later Catchword can know is told from what is broken."""
    with pytest.raises(InvalidArchive, match="later version"), raised("9999", _never, SqlFacts):
        pass


def _never(_: object) -> None:
    raise AssertionError("nothing is to be filled")
