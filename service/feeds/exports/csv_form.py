"""An export as CSV: RFC 4180, in UTF-8, with a header; formulas disarmed."""

import csv
import io
from collections.abc import Generator

from service.feeds.exports.disarming import disarmed
from service.feeds.exports.rows import Plain, lines_of, rows_of
from service.use_cases.exporting_records import Table

PIECE = 64 * 1024
"""Characters after which what is written is handed on."""


def to_csv(table: Table) -> Generator[bytes]:
    """Yield a table as CSV. What is absent is an empty cell."""
    written = io.StringIO(newline="")
    rows = csv.writer(written, lineterminator="\r\n")
    rows.writerow(column.name for column in table.described.columns)
    for row in rows_of(table):
        rows.writerow(map(_cell, row))
        if written.tell() > PIECE:
            yield written.getvalue().encode()
            written.seek(0)
            written.truncate()
    yield written.getvalue().encode()


def _cell(value: Plain) -> object:
    if isinstance(value, str):
        return disarmed(value)
    if isinstance(value, bool):
        return "true" if value else "false"
    return disarmed(lines_of(value)) if isinstance(value, list) else value
