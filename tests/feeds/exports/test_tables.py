"""CSV, JSON and Parquet, read by DuckDB and Arrow: programs that know nothing of ours."""

import io
import subprocess
from collections.abc import Iterator
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from uuid import UUID

import duckdb
import openpyxl
import pyarrow.parquet as pq
import pytest

from service.feeds.exports import parquet_form
from service.use_cases.exporting_columns import What
from service.use_cases.exporting_described import DESCRIBED
from service.use_cases.exporting_records import ExportForm
from tests.feeds.exports.tables import (
    DIGEST,
    ITEM,
    NOW,
    check_in,
    packed_answers,
    table_of,
    written,
)
from tests.office import libreoffice


@pytest.fixture
def reading() -> Iterator[duckdb.DuckDBPyConnection]:
    """A connection of DuckDB's, in UTC."""
    with duckdb.connect() as connection:
        connection.execute("SET TimeZone = 'UTC'")
        yield connection


TYPES = {
    "id": "UUID",
    "item_id": "UUID",
    "digest_id": "UUID",
    "title": "VARCHAR",
    "kind": "VARCHAR",
    "grade": "VARCHAR",
    "came_back": "BOOLEAN",
    "answered_at": "TIMESTAMP WITH TIME ZONE",
    "day": "DATE",
    "predicted": "DOUBLE",
    "suggested": "VARCHAR",
    "graded_first": "BOOLEAN",
    "seconds": "BIGINT",
    "attempt": "VARCHAR",
    "ticked": "VARCHAR",
    "received_at": "TIMESTAMP WITH TIME ZONE",
    "taken_back_at": "TIMESTAMP WITH TIME ZONE",
}
"""Of the columns of answers, as DuckDB names types."""


def types(reading: duckdb.DuckDBPyConnection, source: str) -> dict[str, str]:
    """Return the columns DuckDB finds, with their types."""
    return {row[0]: row[1] for row in reading.execute(f"DESCRIBE FROM {source}").fetchall()}


def test_duckdb_finds_the_types_of_parquet(reading, tmp_path: Path) -> None:
    """Ids are UUIDs, instants have their zone, days are days, and values are what was packed."""
    file = tmp_path / "answers.parquet"
    file.write_bytes(written(packed_answers(8), ExportForm.PARQUET))
    assert types(reading, f"'{file}'") == TYPES
    first, second, *_, last = reading.execute(f"FROM '{file}' ORDER BY id").fetchall()
    assert first[:6] == (UUID(int=1), ITEM, DIGEST, "Silas Marner", "theme", "blank")
    assert first[6:] == (False, NOW, date(2026, 3, 1), None, None, False, None, "", None, NOW, None)
    assert second[9:15] == (0.9, "hazy", True, 12, "A clerk.", "")
    assert last[16] == NOW + timedelta(seconds=7)


def test_arrow_finds_units_and_meanings_in_parquet() -> None:
    """Every column says within the file what it holds, in which unit, and whether it can be absent.

    It is compressed, and laid in row groups.
    """
    file = pq.ParquetFile(io.BytesIO(written(packed_answers(8), ExportForm.PARQUET)))
    for column, field in zip(DESCRIBED[What.ANSWERS].columns, file.schema_arrow, strict=True):
        assert (field.name, field.nullable) == (column.name, column.absent)
        assert field.metadata[b"meaning"].decode() == column.meaning
        assert field.metadata.get(b"unit", b"").decode() == column.unit
    assert file.metadata.row_group(0).column(0).compression == "ZSTD"


def test_parquet_is_handed_on_row_group_by_row_group(monkeypatch: pytest.MonkeyPatch) -> None:
    """Rows beyond a row group begin another, and the first is out before the second is read."""
    monkeypatch.setattr(parquet_form, "ROW_GROUP", 4)
    table = table_of(What.CHECK_INS, [check_in(number) for number in range(1, 12)])
    pieces = parquet_form.to_parquet(table)
    begun = next(pieces)
    assert begun.startswith(b"PAR1")
    assert next(table.batches).count == 2
    file = pq.ParquetFile(io.BytesIO(begun + b"".join(pieces)))
    assert [file.metadata.row_group(each).num_rows for each in range(file.num_row_groups)] == [
        4,
        4,
        1,
    ]


def test_duckdb_sniffs_the_csv(reading, tmp_path: Path) -> None:
    """Its sniffer finds header, comma, quotation marks and types without being told any.

    Words that hold commas, quotation marks and line ends come back whole.
    """
    file = tmp_path / "answers.csv"
    words = 'He said "no", and\r\nleft.'
    file.write_bytes(written(packed_answers(40, words), ExportForm.CSV))
    words_to_it = ("id", "item_id", "digest_id", "ticked")  # it never takes words for a UUID
    found = types(reading, f"read_csv('{file}')")
    assert found == TYPES | dict.fromkeys(words_to_it, "VARCHAR")
    rows = reading.execute(f"SELECT * FROM read_csv('{file}') ORDER BY id").fetchall()
    assert len(rows) == 40
    assert {row[13] for row in rows} == {None, words}
    assert rows[0][7] == NOW
    assert rows[1][9] == 0.9


def test_duckdb_reads_the_json(reading, tmp_path: Path) -> None:
    """The array is read with its types; each of its objects stands on a line of its own."""
    file = tmp_path / "answers.json"
    content = written(packed_answers(8), ExportForm.JSON)
    file.write_bytes(content)
    assert types(reading, f"read_json('{file}')").keys() == TYPES.keys()
    rows = reading.execute(f"SELECT id, predicted, attempt FROM read_json('{file}')").fetchall()
    assert rows[1] == (UUID(int=2), 0.9, "A clerk.")
    assert len(content.splitlines()) == 8 + 2


def test_instants_of_any_zone_come_out_in_utc() -> None:
    """What is handed over as an object is written as what is packed: in UTC, to the microsecond."""
    east = datetime.fromisoformat("2026-03-01T23:40:00+02:00")
    content = written(table_of(What.CHECK_INS, [check_in(reported_at=east)]), ExportForm.CSV)
    assert b"2026-03-01T21:40:00.000000Z" in content
    assert east.astimezone(UTC) == NOW


def test_libreoffice_opens_the_csv(tmp_path: Path) -> None:
    """It finds every cell where it belongs and runs nothing, told only that it is UTF-8."""
    program = calc()
    words = ["=1+1", 'a "b", c', "line\nline", "café", "01"]
    rows = [check_in(number, note=note) for number, note in enumerate(words, 1)]
    file = tmp_path / "check-ins.csv"
    file.write_bytes(written(table_of(What.CHECK_INS, rows), ExportForm.CSV))
    subprocess.run(
        [
            *(program, "--headless", f"-env:UserInstallation=file://{tmp_path}/profile"),
            *("--infilter=CSV:44,34,76,1", "--convert-to", "xlsx", "--outdir", str(tmp_path)),
            str(file),
        ],
        check=True,
        capture_output=True,
    )
    sheet = openpyxl.load_workbook(tmp_path / "check-ins.xlsx").active
    header, *found = sheet.iter_rows(values_only=True)
    notes = [dict(zip(header, row, strict=True))["note"] for row in found]
    assert notes == ["'=1+1", *words[1:4], 1]


def calc() -> str:
    """Return LibreOffice; without its spreadsheet the test is skipped."""
    program = libreoffice()
    if not (Path(program).resolve().parent / "libsclo.so").exists():
        pytest.skip("LibreOffice has no Calc here, so no table was tried in it.")
    return program
