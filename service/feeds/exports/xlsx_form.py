"""An export as a workbook: typed cells, no formulas, no links; a sheet that explains the columns.

A sheet has 1,048,576 rows (Microsoft, "Excel specifications and limits", from memory), the first
of them the header; what is beyond goes on in the next sheet. Rows are written straight to
temporary files, so that none is held.
"""

from collections.abc import Generator
from contextlib import ExitStack
from datetime import UTC, date, datetime
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import xlsxwriter
from xlsxwriter.exceptions import FileCreateError

from service.feeds.exports.disarming import disarmed
from service.feeds.exports.rows import Plain, lines_of, rows_of
from service.use_cases.exporting_columns import HOLDS, Column, Holds
from service.use_cases.exporting_records import Table

MOST_ROWS = 1_048_575
"""Rows of a sheet below its header."""
LONGEST = 32_767
"""Characters of a cell (the same source); longer words are cut there, with an ellipsis."""
_FIRST_YEAR = 1900
"""Workbooks count days from it; an earlier date is written in words."""
_EXPLAINED = ("name", "type", "unit", "meaning")
_PIECE = 64 * 1024


def to_xlsx(table: Table) -> Generator[bytes]:
    """Yield a table as a workbook, once all of it is written to a temporary folder."""
    with TemporaryDirectory(prefix="catchword-export-") as folder:
        path = Path(folder) / "export.xlsx"
        options = {
            "constant_memory": True,
            "tmpdir": folder,
            "strings_to_formulas": False,
            "strings_to_urls": False,
            "strings_to_numbers": False,
            "use_zip64": True,
        }
        book = xlsxwriter.Workbook(str(path), options)
        with ExitStack() as given_up:
            given_up.callback(_let_go, book)
            book.set_properties({"title": table.described.title, "created": table.at})
            sheets = _Sheets(book, table)
            for row in rows_of(table):
                sheets.write(row)
            _explain(book, table)
            _close(book)
            given_up.pop_all()
        with path.open("rb") as written:
            while piece := written.read(_PIECE):
                yield piece


def _let_go(book: Any) -> None:  # noqa: ANN401 - xlsxwriter has no types
    """Close what a workbook holds open that is given up half-way."""
    for sheet in book.worksheets():
        sheet.row_data_fh.close()


def _close(book: Any) -> None:  # noqa: ANN401
    try:
        book.close()
    except FileCreateError as error:
        # Its library wraps what the system refused, such as a full disk.
        raise OSError(*error.args[0].args) from error


class _Sheets:
    """The sheets of a table, a new one where the last is full."""

    def __init__(self, book: Any, table: Table) -> None:  # noqa: ANN401
        self._book = book
        self._columns = table.described.columns
        self._name = table.what.value
        self._bold = book.add_format({"bold": True})
        self._day = book.add_format({"num_format": "yyyy-mm-dd"})
        self._instant = book.add_format({"num_format": "yyyy-mm-dd hh:mm:ss.000"})
        self._begun = 0
        self._begin()

    def _begin(self) -> None:
        self._begun += 1
        name = self._name if self._begun == 1 else f"{self._name} {self._begun}"
        self._sheet = self._book.add_worksheet(name)
        self._sheet.freeze_panes(1, 0)
        for place, column in enumerate(self._columns):
            self._sheet.write_string(0, place, column.name, self._bold)
        self._line = 0

    def write(self, row: tuple[Plain, ...]) -> None:
        """Write the next row."""
        if self._line == MOST_ROWS:
            self._begin()
        self._line += 1
        for place, (column, value) in enumerate(zip(self._columns, row, strict=True)):
            self._write(place, column, value)

    def _write(self, place: int, column: Column, value: Plain) -> None:
        match value:
            case None:
                return
            case bool():
                self._sheet.write_boolean(self._line, place, value)
            case int() | float():
                self._sheet.write_number(self._line, place, value)
            case str() if column.holds is Holds.DAY and _counted(value):
                day = date.fromisoformat(value)
                self._sheet.write_datetime(self._line, place, day, self._day)
            case str() if column.holds is Holds.INSTANT and _counted(value):
                instant = datetime.fromisoformat(value).astimezone(UTC).replace(tzinfo=None)
                self._sheet.write_datetime(self._line, place, instant, self._instant)
            case str():
                self._sheet.write_string(self._line, place, _cell(value))
            case _:
                self._sheet.write_string(self._line, place, _cell(lines_of(value)))


def _counted(said: str) -> bool:
    return int(said[:4]) >= _FIRST_YEAR


def _cell(words: str) -> str:
    said = disarmed(words)
    return said if _length(said) <= LONGEST else f"{_cut(said)}…"


def _length(words: str) -> int:
    """Return how many characters a workbook counts: those beyond U+FFFF are two."""
    return len(words) + sum(letter > "\uffff" for letter in words)


def _cut(words: str) -> str:
    """Return the beginning of words that leaves room for one character more in a cell."""
    kept = words[: LONGEST - 1]
    return kept[: LONGEST - 1 - (_length(kept) - len(kept))]


def _explain(book: Any, table: Table) -> None:  # noqa: ANN401
    """Add the sheet that says what each column holds."""
    sheet = book.add_worksheet("columns")
    for place, heading in enumerate(_EXPLAINED):
        sheet.write_string(0, place, heading)
    for line, column in enumerate(table.described.columns, 1):
        for place, words in enumerate(
            (column.name, HOLDS[column.holds], column.unit, column.meaning)
        ):
            sheet.write_string(line, place, words)
