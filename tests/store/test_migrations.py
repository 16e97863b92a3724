"""The migrations make what the tables say, once, whoever starts first."""

import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing
from pathlib import Path

import pytest
from alembic import command
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Column, Engine, MetaData, Table, inspect, text

from service.store.columns import ID, INSTANT, WORDS
from service.store.engine import open_engines
from service.store.errors import StoreNewer
from service.store.migrations import HEAD, alembic_config
from service.store.migrations.__main__ import begin
from service.store.sql_store import SqlStore
from service.store.tables import metadata
from service.use_cases.records import Reader, ReaderId

REVISIONS = ("0001", "0002", "0003", "0004", "0005", "0006", "0007")

START = """
import sys
from service.store.sql_store import SqlStore
store = SqlStore(sys.argv[1])
store.migrate()
store.close()
print("alembic" in sys.modules)
"""


def described(engine: Engine) -> dict[str, object]:
    """Return everything a database tells of its tables: columns, keys, indexes and checks."""
    tables: dict[str, object] = {}
    with engine.connect() as connection:
        seen = inspect(connection)
        for name in sorted(set(seen.get_table_names()) - {"alembic_version"}):
            tables[name] = {
                "columns": [
                    (column["name"], str(column["type"]), column["nullable"])
                    for column in seen.get_columns(name)
                ],
                "primary key": seen.get_pk_constraint(name),
                "unique": seen.get_unique_constraints(name),
                "foreign keys": sorted(
                    seen.get_foreign_keys(name), key=lambda key: str(key["name"])
                ),
                "checks": sorted(
                    (check["name"], " ".join(check["sqltext"].split()))
                    for check in seen.get_check_constraints(name)
                ),
                "indexes": [
                    (index["name"], index["column_names"], where(index["dialect_options"]))
                    for index in seen.get_indexes(name)
                ],
            }
    return tables


def where(options: dict[str, object]) -> str:
    """Return the condition of a partial index, or an empty text."""
    found = options.get("sqlite_where", options.get("postgresql_where", ""))
    return " ".join(str(found).split())


def test_the_migrations_make_what_the_tables_say(empty: str, tmp_path: Path) -> None:
    """What the migrations make and what the tables say do not differ in any respect."""
    with closing(SqlStore(empty)) as store:
        store.migrate()
        engine = store.engines.writing
        with engine.connect() as connection:
            compared = MigrationContext.configure(
                connection, opts={"compare_type": True, "compare_server_default": True}
            )
            assert compare_metadata(compared, metadata) == []
        migrated = described(engine)
        with engine.begin() as connection:
            metadata.drop_all(connection)
            metadata.create_all(connection)
        assert described(engine) == migrated
    assert set(migrated) == set(metadata.tables)


def test_the_head_is_the_latest_script(store: SqlStore) -> None:
    """The revision a store is brought to is the one and only latest."""
    with store.engines.reading.connect() as connection:
        scripts = ScriptDirectory.from_config(alembic_config(connection))
    assert scripts.get_heads() == [HEAD] == [REVISIONS[-1]]


def test_migrating_again_changes_nothing(store: SqlStore, reader: ReaderId) -> None:
    """A store that is up to date is left as it is, with everything in it."""
    with store.writing() as work:
        work.readers.put(Reader(reader, unasked_a_day=1))
        work.commit()
    before = described(store.engines.writing)
    store.migrate()
    assert described(store.engines.writing) == before
    with store.reading() as work:
        assert work.readers.get(reader).unasked_a_day == 1


def test_a_start_without_migrations_is_light(address: str) -> None:
    """A store that is up to date is opened without importing what runs migrations."""
    assert started(address) == "False"


def test_four_processes_may_start_at_once(empty: str) -> None:
    """Processes that open a new store at the same moment all succeed, and find it up to date."""
    with ThreadPoolExecutor(4) as threads:
        assert len(list(threads.map(started, [empty] * 4))) == 4
    with closing(SqlStore(empty)) as store:
        assert set(described(store.engines.reading)) == set(metadata.tables)
    assert started(empty) == "False"


def started(address: str) -> str:
    """Open a store in a process of its own and bring it up to date."""
    ended = subprocess.run(
        [sys.executable, "-W", "error", "-c", START, address],
        capture_output=True,
        text=True,
        check=False,
    )
    assert ended.returncode == 0, ended.stderr
    return ended.stdout.strip()


def test_a_later_catchwords_store_is_refused(address: str) -> None:
    """A store that a later version has changed is left alone, and its reader told so."""
    engines = open_engines(address)
    with engines.writing.begin() as connection:
        connection.execute(text("UPDATE alembic_version SET version_num = '9999'"))
    engines.close()
    with closing(SqlStore(address)) as store, pytest.raises(StoreNewer):
        store.migrate()


def test_a_failed_migration_leaves_nothing_behind(
    empty: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A migration that fails half-way leaves no table, and can be run again."""
    with closing(SqlStore(empty)) as store:
        with monkeypatch.context() as patched:
            patched.setattr("alembic.op.create_index", fail)
            with pytest.raises(ZeroDivisionError):
                store.migrate()
        assert described(store.engines.reading) == {}
        store.migrate()
        assert set(described(store.engines.reading)) == set(metadata.tables)


def fail(*_: object, **__: object) -> None:
    """Fail as no database does."""
    raise ZeroDivisionError


def test_a_migration_can_be_undone(empty: str) -> None:
    """Each migration, undone, leaves the tables of the one before, and can be run again."""
    with closing(SqlStore(empty)) as store:
        engine = store.engines.writing
        made = {}
        for revision in REVISIONS:
            upgraded(engine, revision)
            made[revision] = described(engine)
        for revision in reversed(REVISIONS):
            assert described(engine) == made[revision]
            with engine.begin() as connection:
                command.downgrade(alembic_config(connection), "-1")
        assert described(engine) == {}
        store.migrate()
        assert described(engine) == made[HEAD]


def upgraded(engine: Engine, revision: str) -> None:
    """Bring an empty store to a revision."""
    with engine.begin() as connection:
        command.upgrade(alembic_config(connection), revision)


def test_a_migration_begins_with_the_difference(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A new revision follows the latest and holds what the tables say more, in our own types."""
    grown = MetaData(naming_convention=metadata.naming_convention)
    for table in metadata.tables.values():
        table.to_metadata(grown)
    grown.tables["digests"].append_column(Column("motto", WORDS))
    Table("mottos", grown, Column("said", WORDS), Column("said_at", INSTANT), Column("by", ID))
    monkeypatch.setattr("service.store.tables.metadata", grown)
    written = begin("Keep a motto", tmp_path)
    assert written.name == f"{int(HEAD) + 1:04}_keep_a_motto.py"
    script = written.read_text()
    assert f"down_revision = {HEAD!r}" in script
    assert "service.store.columns." not in script
    for name in ("ID", "INSTANT", "WORDS"):
        assert f"from service.store.columns import {name}" in script
    assert "add_column(sa.Column('motto', WORDS, nullable=True))" in script
    compile(script, written, "exec")
