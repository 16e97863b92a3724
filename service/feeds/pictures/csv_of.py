"""The figures of a picture as CSV (RFC 4180), in UTF-8."""

import csv
import io
from datetime import date

from service.feeds.exports.disarming import disarmed
from service.use_cases.picture_records import Cell, Table


def csv_of(table: Table) -> bytes:
    """Return a table as CSV: a row of the columns' names, then its rows, figures unrounded.

    Words that a spreadsheet would take for a formula have an apostrophe before them.
    """
    written = io.StringIO()
    writer = csv.writer(written)
    writer.writerow([column.name for column in table.columns])
    writer.writerows([[_cell(cell) for cell in row] for row in table.rows])
    return written.getvalue().encode()


def _cell(cell: Cell) -> str | int | float | None:
    if isinstance(cell, date):
        return cell.isoformat()
    return disarmed(cell) if isinstance(cell, str) else cell
