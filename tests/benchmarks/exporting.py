"""An export of all answers to Parquet, against DuckDB copying the same table of the same file.

DuckDB reads the library through its own scanner of SQLite, in C++ throughout, and writes the table
as it is kept: ids as bytes, instants as words. Ours writes instants as instants and ids as UUIDs,
puts book and kind beside each answer, and comes from one transaction on the store.

Memory is the high water of a process of its own that does nothing but this export.
"""

import importlib.resources
import subprocess
import sys
from pathlib import Path

import duckdb

from service.store.sql_store import SqlStore
from service.use_cases.exporting import export
from service.use_cases.exporting_columns import What
from service.use_cases.exporting_records import ExportForm
from service.use_cases.ports import Desk
from tests.benchmarks.many_answers import NOW, library
from tests.benchmarks.nothing_to_read import bare_desk
from tests.benchmarks.paired import Ratio, paired

LIMIT = 2.0
MEMORY_LIMIT = 200
"""Megabytes."""
ANSWERS = 1_000_000


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
    file = folder / "exporting.db"
    with library(file, answers) as store:
        desk = bare_desk(store, lambda: NOW)

        def exported() -> None:
            write(desk, ours)

        with copying(store) as connection:

            def copied() -> None:
                connection.execute(
                    f"COPY library.answers TO '{theirs}' (FORMAT parquet, COMPRESSION zstd)"
                )

            ratio = paired(exported, copied, rounds, warm=1)
            for written in (ours, theirs):
                found = connection.execute(f"SELECT count(*) FROM '{written}'").fetchone()
                if found != (answers,):
                    raise RuntimeError(f"{written.name} holds {found} answers, not {answers}.")
        return ratio, peak(f"sqlite:///{file}", ours)


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
