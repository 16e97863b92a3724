"""The figures of a picture: columns with units, and rows."""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

MOST_ROWS = 10_000
"""Rows of a picture's table."""

Cell = str | int | float | date | None
"""One figure, in the unit of its column; None where there is none."""


class Unit(StrEnum):
    """What a figure counts; shares are of 1."""

    TEXT = "text"
    SHARE = "share"
    COUNT = "count"
    NUMBER = "number"
    MINUTES = "minutes"
    DAYS = "days"
    YEARS = "years"
    DATE = "date"


@dataclass(frozen=True, slots=True)
class Column:
    """One column of a table.

    Attributes:
        name: what programs call it, in small letters and underscores.
        head: what stands above it.
        unit: of all its cells.
    """

    name: str
    head: str
    unit: Unit


@dataclass(frozen=True, slots=True)
class Table:
    """The figures of a picture, as wide as its columns."""

    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]

    def __post_init__(self) -> None:
        """Check that every row has a cell a column."""
        if any(len(row) != len(self.columns) for row in self.rows):
            raise ValueError("a row is not as wide as the columns")
        if len(self.rows) > MOST_ROWS:
            raise ValueError("too many rows")

    @property
    def shown(self) -> tuple[tuple[str, ...], ...]:
        """The rows as they are read on a page."""
        units = [column.unit for column in self.columns]
        return tuple(
            tuple(shown(cell, unit) for cell, unit in zip(row, units, strict=True))
            for row in self.rows
        )


def shown(cell: Cell, unit: Unit) -> str:
    """Return a figure as a reader reads it; an en dash where there is none."""
    if cell is None:
        return "–"
    if isinstance(cell, date):
        return f"{cell.day} {cell:%b %Y}"
    if isinstance(cell, str):
        return cell
    if unit is Unit.SHARE:
        return f"{cell:.1%}"
    if unit is Unit.COUNT or isinstance(cell, int):
        return f"{cell:,.0f}"
    return f"{cell:,.{1 if unit in {Unit.MINUTES, Unit.DAYS, Unit.YEARS} else 3}f}"
