"""An export as JSON: one array, one object a line."""

import json
from collections.abc import Generator, Iterable

from service.feeds.exports.rows import rows_of
from service.use_cases.exporting_records import Table

AT_ONCE = 500
"""Objects that are handed on together."""


def to_json(table: Table) -> Generator[bytes]:
    """Yield a table as an array of objects, their members named as the columns."""
    names = [column.name for column in table.described.columns]
    return array_of(dict(zip(names, row, strict=True)) for row in rows_of(table))


def array_of(objects: Iterable[object]) -> Generator[bytes]:
    """Yield an array in UTF-8, one of its objects a line; valid, and `[]`, without any."""
    before, lines = "[\n", []
    for each in objects:
        lines.append(f"{before}{json.dumps(each, ensure_ascii=False, separators=(',', ':'))}")
        before = ",\n"
        if len(lines) == AT_ONCE:
            yield "".join(lines).encode()
            lines.clear()
    yield ("".join(lines) + ("[]\n" if before == "[\n" else "\n]\n")).encode()
