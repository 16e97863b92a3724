"""What is exported, column by column: name, type, unit and meaning.

Headers, Parquet's schema, the sheet "columns" of a workbook, the documentation of the API, the
command line's and the page's tables: all are read from here.
"""

from dataclasses import dataclass
from enum import StrEnum


class What(StrEnum):
    """What can be exported."""

    ANSWERS = "answers"
    ITEMS = "items"
    DIGESTS = "digests"
    COMMITMENTS = "commitments"
    CHECK_INS = "check-ins"
    RETENTION = "retention"


class Holds(StrEnum):
    """What the values of a column are."""

    ID = "id"
    TEXT = "text"
    WHOLE = "whole number"
    NUMBER = "number"
    FLAG = "yes or no"
    DAY = "day"
    INSTANT = "instant"
    PARTS = "list of parts"


HOLDS: dict[Holds, str] = {
    Holds.ID: "a UUID (RFC 9562)",
    Holds.TEXT: (
        "words, in UTF-8; in CSV and in workbooks a cell that a spreadsheet could take for a "
        "formula begins with an apostrophe that is not the reader’s"
    ),
    Holds.WHOLE: "a whole number",
    Holds.NUMBER: "a number, to the 64 bits it is kept with",
    Holds.FLAG: "true or false",
    Holds.DAY: "a date of the reader’s, as in 2026-03-01: their day turns over at their own hour",
    Holds.INSTANT: "a moment in UTC to the microsecond, as in 2026-03-01T21:40:00.000000Z",
    Holds.PARTS: (
        "parts of a digest, each with the fields named; in CSV and in workbooks one a line, its "
        "locator in brackets"
    ),
}
"""What each type is, as it is documented."""


@dataclass(frozen=True, slots=True)
class Column:
    """One column of an export.

    Attributes:
        name: as the header says it.
        holds: what its values are.
        meaning: what they say, in a sentence or two.
        unit: of a number, or "".
        absent: whether a value can be absent: an empty cell, null.
        fields: of a list of parts: what each part has.
    """

    name: str
    holds: Holds
    meaning: str
    unit: str = ""
    absent: bool = False
    fields: tuple["Column", ...] = ()


@dataclass(frozen=True, slots=True)
class Described:
    """An export as it is documented.

    Attributes:
        title: its name on a page.
        holds: what its rows are, in a sentence.
        columns: in their order.
    """

    title: str
    holds: str
    columns: tuple[Column, ...]

    def column(self, name: str) -> Column:
        """Return the column of a name; KeyError where there is none."""
        for column in self.columns:
            if column.name == name:
                return column
        raise KeyError(name)
