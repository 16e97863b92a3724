"""Workbooks, read by openpyxl."""

import errno
import io
import tempfile
from datetime import date
from pathlib import Path
from unittest.mock import Mock

import openpyxl
import pytest
import xlsxwriter

from service.feeds.exports import xlsx_form
from service.use_cases.exporting_columns import What
from service.use_cases.exporting_described import DESCRIBED
from service.use_cases.exporting_records import ExportForm
from tests.feeds.exports.tables import check_in, packed_answers, table_of, written

ARMED = ("=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "  =1", '"=1', "＝1")


def opened(content: bytes) -> openpyxl.Workbook:
    """Read a workbook."""
    return openpyxl.load_workbook(io.BytesIO(content))


def test_cells_are_typed() -> None:
    """Numbers are numbers, yes and no booleans, days and instants dates; words are words."""
    sheet = opened(written(packed_answers(4), ExportForm.XLSX))["answers"]
    header, first, second, *_ = sheet.iter_rows()
    names = [cell.value for cell in header]
    assert names == [column.name for column in DESCRIBED[What.ANSWERS].columns]
    row = dict(zip(names, second, strict=True))
    assert (row["predicted"].value, row["seconds"].value) == (0.9, 12)
    assert row["came_back"].value is True
    assert row["day"].value.isoformat() == "2026-03-01T00:00:00"
    assert row["answered_at"].value.isoformat() == "2026-03-01T21:40:01"
    assert (row["day"].is_date, row["attempt"].value) == (True, "A clerk.")
    assert dict(zip(names, first, strict=True))["predicted"].value is None


@pytest.mark.parametrize("words", [*ARMED, "http://example.org/", "mailto:a@example.org", "1e5"])
def test_no_cell_is_a_formula_or_a_link(words: str) -> None:
    """What a spreadsheet could run begins with an apostrophe, and nothing becomes a link or number.

    Source of what could be run: OWASP, “CSV Injection” (from memory).
    """
    row = table_of(What.CHECK_INS, [check_in(note=words)])
    (_, (*cells,)) = opened(written(row, ExportForm.XLSX))["check-ins"].iter_rows()
    (note,) = (cell for cell in cells if words in str(cell.value))
    assert (note.data_type, note.hyperlink) == ("s", None)
    assert note.value == (f"'{words}" if words in ARMED else words)


def test_a_sheet_that_is_full_is_followed_by_another(monkeypatch: pytest.MonkeyPatch) -> None:
    """Each has the header; the last is followed by the sheet that says what the columns hold."""
    monkeypatch.setattr(xlsx_form, "MOST_ROWS", 3)
    rows = table_of(What.CHECK_INS, [check_in(number) for number in range(1, 8)])
    book = opened(written(rows, ExportForm.XLSX))
    assert book.sheetnames == ["check-ins", "check-ins 2", "check-ins 3", "columns"]
    assert [sheet.max_row - 1 for sheet in book.worksheets[:3]] == [3, 3, 1]
    assert {sheet["A1"].value for sheet in book.worksheets[:3]} == {"id"}
    told = {row[0]: row[3] for row in book["columns"].iter_rows(values_only=True, min_row=2)}
    assert told == {each.name: each.meaning for each in DESCRIBED[What.CHECK_INS].columns}


def test_words_too_long_for_a_cell_are_cut() -> None:
    """A cell has at most 32,767 characters, the last an ellipsis; beyond U+FFFF one counts as two.

    Source: Microsoft, “Excel specifications and limits” (from memory).
    """
    for words in ("a" * 40_000, "\U0001f4d6" * 20_000, "a" * 32_767):
        row = table_of(What.CHECK_INS, [check_in(note=words)])
        (_, cells) = opened(written(row, ExportForm.XLSX))["check-ins"].iter_rows(values_only=True)
        (note,) = (cell for cell in cells if str(cell).startswith(words[:9]))
        assert len(str(note).encode("utf-16-le")) // 2 <= 32_767
        assert note == words or str(note).endswith("…")


def test_days_before_workbooks_begin_are_words() -> None:
    """Workbooks count from 1900; an earlier day is written as it is everywhere else."""
    row = table_of(What.CHECK_INS, [check_in(day=date(1869, 12, 31))])
    (_, cells) = opened(written(row, ExportForm.XLSX))["check-ins"].iter_rows(values_only=True)
    assert "1869-12-31" in cells


def test_nothing_stays_behind(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """The temporary files are gone when the last piece is out, and when somebody goes away."""
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    written(packed_answers(4), ExportForm.XLSX)
    pieces = xlsx_form.to_xlsx(packed_answers(4))
    next(pieces)
    assert list(tmp_path.iterdir())
    pieces.close()
    with pytest.raises(ValueError, match="month"):
        written(table_of(What.CHECK_INS, [check_in(), check_in(day="2026-13-99")]), ExportForm.XLSX)
    assert list(tmp_path.iterdir()) == []


def test_a_disk_that_fills_at_the_end_is_told_as_one(monkeypatch: pytest.MonkeyPatch) -> None:
    """What the system refuses is an error of the system's, whatever its library makes of it."""
    full = OSError(errno.ENOSPC, "No space left on device")
    monkeypatch.setattr(xlsxwriter.Workbook, "_store_workbook", Mock(side_effect=full))
    with pytest.raises(OSError, match="No space left") as refused:
        written(packed_answers(4), ExportForm.XLSX)
    assert refused.value.errno == errno.ENOSPC
