"""An export of all answers to Parquet, against DuckDB copying the same table of the same file.

DuckDB reads the library through its own scanner of SQLite, in C++ throughout, and writes the table
as it is kept: ids as bytes, instants as words. Ours writes instants as instants and ids as UUIDs,
puts book and kind beside each answer, and comes from one transaction on the store.

Memory is the high water of a process of its own that does nothing but this export.
"""

import importlib.resources
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path
from random import Random

import duckdb
from sqlalchemy import text

from service.main import THE_READER
from service.store.sql_store import SqlStore
from service.use_cases.exporting import export
from service.use_cases.exporting_columns import What
from service.use_cases.exporting_records import ExportForm
from service.use_cases.ports import Desk
from tests.benchmarks.nothing_to_read import bare_desk
from tests.benchmarks.paired import Ratio, paired

LIMIT = 2.0
MEMORY_LIMIT = 200
"""Megabytes."""
ANSWERS = 1_000_000
BOOKS, A_BOOK = 300, 30
NOW = datetime(2026, 6, 1, 19, tzinfo=UTC)

_KINDS = ("theme", "place", "restate", "next", "order", "complete", "source")
_GRADES = ("blank", "hazy", "clear", "vivid")
_WORDS = "the keeper of the light goes up at dusk and writes what ships he saw before sleep".split()
_ADDED = "2016-01-01T00:00:00.000000+00:00"
_DIGEST = """INSERT INTO digests (reader_id, id, title, removed, revision, key_title, key_author,
    added_at, care) VALUES (?, ?, ?, 0, 1, ?, '', ?, 'steady')"""
_PART = """INSERT INTO parts (reader_id, id, digest_id, kind, number, text, retired)
    VALUES (?, ?, ?, 'point', ?, 'A lamp is lit.', 0)"""
_ITEM = """INSERT INTO items (reader_id, id, digest_id, part_id, kind, number, retired, added_at,
    digest_added_at, care) VALUES (?, ?, ?, ?, ?, ?, 0, ?, ?, 'steady')"""
_ANSWER = """INSERT INTO answers (reader_id, id, item_id, grade, answered_at, day, attempt,
    suggested, predicted, received_at, seconds, graded_first)
    VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)"""


def address_of(folder: Path) -> str:
    """Return the address of the library."""
    return f"sqlite:///{folder / 'exporting.db'}"


@contextmanager
def library(folder: Path, answers: int) -> Iterator[SqlStore]:
    """Open a library of ten years, its answers to 9,000 items under ids as random as ours are."""
    store = SqlStore(address_of(folder))
    store.migrate()
    with store.writing() as work:
        work.readers.lock(THE_READER)
        work.commit()
    chance = Random(1876)
    reader = THE_READER.bytes
    with store.engines.writing.begin() as connection:
        connection.execute(text("PRAGMA cache_size = -400000"))  # kilobytes: laid in one go
        items = []
        for book in range(BOOKS):
            digest, title = chance.randbytes(16), f"Of Lighthouses, volume {book}"
            connection.exec_driver_sql(_DIGEST, (reader, digest, title, title, _ADDED))
            for number in range(1, A_BOOK + 1):
                part, item = chance.randbytes(16), chance.randbytes(16)
                kind = _KINDS[number % len(_KINDS)]
                connection.exec_driver_sql(_PART, (reader, part, digest, number))
                connection.exec_driver_sql(
                    _ITEM, (reader, item, digest, part, kind, number, _ADDED, _ADDED)
                )
                items.append(item)
        connection.exec_driver_sql(_ANSWER, list(_answers(reader, items, answers, chance)))
    yield store
    store.close()


def _answers(
    reader: bytes, items: list[bytes], answers: int, chance: Random
) -> Iterator[tuple[object, ...]]:
    step = timedelta(days=3650) / answers
    for number in range(answers):
        at = (NOW - step * (answers - number)).isoformat(timespec="microseconds")
        yield (
            *(reader, chance.randbytes(16), chance.choice(items), chance.choice(_GRADES)),
            *(at, at[:10], " ".join(chance.choices(_WORDS, k=8)), chance.choice(_GRADES)),
            *(chance.random(), at, chance.randrange(1, 90), number % 10 == 0),
        )


def copying(store: SqlStore) -> duckdb.DuckDBPyConnection:
    """Return a connection of DuckDB's with the library attached as `library`, offline."""
    found = importlib.resources.files("duckdb_extension_sqlite_scanner") / "extensions"
    (extension,) = Path(str(found)).rglob("*.duckdb_extension")
    connection = duckdb.connect()
    connection.execute(f"LOAD '{extension}'")
    connection.execute(
        f"ATTACH '{store.engines.reading.url.database}' AS library (TYPE sqlite, READ_ONLY)"
    )
    return connection


def measure(folder: Path, answers: int = ANSWERS, rounds: int = 3) -> tuple[Ratio, int]:
    """Measure the export against the copy, and the megabytes a process of its own takes for it."""
    ours, theirs = folder / "ours.parquet", folder / "theirs.parquet"
    with library(folder, answers) as store:
        desk = bare_desk(store, lambda: NOW)

        def exported() -> None:
            write(desk, ours)

        with copying(store) as connection:

            def copied() -> None:
                connection.execute(
                    f"COPY library.answers TO '{theirs}' (FORMAT parquet, COMPRESSION zstd)"
                )

            ratio = paired(exported, copied, rounds, warm=1)
            for file in (ours, theirs):
                found = connection.execute(f"SELECT count(*) FROM '{file}'").fetchone()
                if found != (answers,):
                    raise RuntimeError(f"{file.name} holds {found} answers, not {answers}.")
        return ratio, peak(address_of(folder), ours)


def write(desk: Desk, target: Path) -> None:
    """Write all answers as Parquet."""
    with target.open("wb") as file:
        file.writelines(export(desk, What.ANSWERS, ExportForm.PARQUET).pieces)


def peak(database: str, target: Path) -> int:
    """Return the most megabytes a process held that did nothing but this export."""
    told = subprocess.run(
        [sys.executable, "-m", "tests.benchmarks.exporting_alone", database, str(target)],
        check=True,
        capture_output=True,
        text=True,
    )
    return int(told.stdout)
