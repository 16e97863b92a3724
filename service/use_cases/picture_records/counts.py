"""What is counted: day by day, one thing against another, month by month."""

from dataclasses import dataclass
from datetime import date

from service.use_cases.picture_records.checks import MOST_MARKS, check, check_finite, check_rising
from service.use_cases.picture_records.table import Unit

MOST_MONTHS = 60
"""Months side by side: five years."""
MOST_CELLS = 8
"""Rows or columns of a grid."""


@dataclass(frozen=True, slots=True)
class DayBar:
    """One day: what it holds, and what it holds beyond the limit."""

    day: date
    within: float
    over: float = 0.0

    def __post_init__(self) -> None:
        """Check that both are finite and not below 0."""
        check_finite((self.within, self.over))
        check(min(self.within, self.over) >= 0, "a bar is not below 0")


@dataclass(frozen=True, slots=True)
class Days:
    """A thin bar a day, what is over the limit told apart.

    Attributes:
        label: what the bars measure, in a few words.
        unit: of the values.
        limit: a line across, or None; `limit_label` names it.
        over_label: what the overflow is, in a few words.
    """

    days: tuple[DayBar, ...]
    label: str
    unit: Unit
    limit: float | None = None
    limit_label: str = ""
    over_label: str = ""

    def __post_init__(self) -> None:
        """Check the number of days and their order."""
        check(len(self.days) <= MOST_MARKS, "too many days")
        check_rising(float(bar.day.toordinal()) for bar in self.days)
        if self.days:
            span = self.days[-1].day.toordinal() - self.days[0].day.toordinal()
            check(span < MOST_MARKS, "days too far apart")
        check_finite(() if self.limit is None else (self.limit,))


@dataclass(frozen=True, slots=True)
class Grid:
    """How often each of one thing met each of another.

    Attributes:
        down, across: what the rows and what the columns are.
        rows, columns: their names.
        counts: row by row.
    """

    down: str
    across: str
    rows: tuple[str, ...]
    columns: tuple[str, ...]
    counts: tuple[tuple[int, ...], ...]

    def __post_init__(self) -> None:
        """Check that the counts fill the grid."""
        check(max(len(self.rows), len(self.columns)) <= MOST_CELLS, "too large a grid")
        check([len(row) for row in self.counts] == [len(self.columns)] * len(self.rows), "gaps")
        check(all(count >= 0 for row in self.counts for count in row), "a count is not below 0")


@dataclass(frozen=True, slots=True)
class Month:
    """What became of one month's windows; the month is named by any of its days."""

    month: date
    kept: int
    partly: int
    missed: int
    silent: int

    def __post_init__(self) -> None:
        """Check that nothing is below 0."""
        counts = (self.kept, self.partly, self.missed, self.silent)
        check(min(counts) >= 0, "a count is not below 0")


@dataclass(frozen=True, slots=True)
class Months:
    """A bar a month, stacked: kept, partly, missed, silent."""

    months: tuple[Month, ...]

    def __post_init__(self) -> None:
        """Check the number of months and their order."""
        check(len(self.months) <= MOST_MONTHS, "too many months")
        check_rising(float(month.month.toordinal()) for month in self.months)
