"""Curves over two axes, with what was observed; and what survives, step by step."""

from dataclasses import dataclass
from enum import StrEnum

from service.use_cases.picture_records.checks import (
    MOST_MARKS,
    check,
    check_finite,
    check_interval,
    check_rising,
)
from service.use_cases.picture_records.table import Unit

MOST_LINES = 6
"""Lines of one drawing: as many as dashes tell apart."""


class Scale(StrEnum):
    """How an axis is divided."""

    LINEAR = "linear"
    LOG = "log"


@dataclass(frozen=True, slots=True)
class Axis:
    """One direction of a drawing.

    Attributes:
        label: what it measures, in a few words.
        start, end: where it begins and ends, or None to go by the values. Values beyond an end
            that is given widen the axis; nothing is cut off.
    """

    label: str
    unit: Unit = Unit.NUMBER
    scale: Scale = Scale.LINEAR
    start: float | None = None
    end: float | None = None

    def __post_init__(self) -> None:
        """Check that the ends are finite, and above 0 on a logarithmic axis."""
        ends = [end for end in (self.start, self.end) if end is not None]
        check_finite(ends)
        check(self.scale is not Scale.LOG or all(end > 0 for end in ends), "a log axis is over 0")
        check(self.unit not in {Unit.TEXT, Unit.DATE}, "an axis counts something")


@dataclass(frozen=True, slots=True)
class Line:
    """One curve: its points as (across, up), from left to right."""

    label: str
    points: tuple[tuple[float, float], ...]

    def __post_init__(self) -> None:
        """Check that the points are finite and in their order."""
        check(len(self.points) <= MOST_MARKS, "too many points")
        check_finite(value for point in self.points for value in point)
        check_rising(across for across, _ in self.points)


@dataclass(frozen=True, slots=True)
class Dot:
    """What was observed.

    Attributes:
        across, up: where.
        low, high: its interval, both or neither.
        label: written beside it; empty for nothing.
    """

    across: float
    up: float
    low: float | None = None
    high: float | None = None
    label: str = ""

    def __post_init__(self) -> None:
        """Check that everything is finite and the interval holds the dot."""
        low = self.up if self.low is None else self.low
        high = self.up if self.high is None else self.high
        check((self.low is None) is (self.high is None), "an interval has two ends")
        check_finite((self.across,))
        check_interval(self.up, low, high)


@dataclass(frozen=True, slots=True)
class Curves:
    """Lines, each named where it ends, and dots for what was observed.

    Attributes:
        across, up: what is measured; only across may be logarithmic. Up begins at 0 unless it
            measures shares or says otherwise.
        observed: what the dots are, in a few words; written at the last of them.
    """

    across: Axis
    up: Axis
    lines: tuple[Line, ...]
    dots: tuple[Dot, ...] = ()
    observed: str = ""

    def __post_init__(self) -> None:
        """Check how many there are, and that only the axis across is logarithmic, over 0."""
        check(len(self.lines) <= MOST_LINES and len(self.dots) <= MOST_MARKS, "too many marks")
        check(self.up.scale is Scale.LINEAR, "only the axis across is logarithmic")
        if self.across.scale is Scale.LOG:
            across = [x for line in self.lines for x, _ in line.points]
            across += [dot.across for dot in self.dots]
            check(all(x > 0 for x in across), "a log axis is over 0")


@dataclass(frozen=True, slots=True)
class StepLine:
    """One survival curve.

    Attributes:
        label: whose.
        steps: as (across, share from there on), from left to right. Before the first the share
            is 1.
        censored: where something was last seen, still surviving.
        end: how far it is known, at or after the last of both.
    """

    label: str
    steps: tuple[tuple[float, float], ...]
    censored: tuple[float, ...]
    end: float

    def __post_init__(self) -> None:
        """Check that the shares fall and nothing stands after the end."""
        check(max(len(self.steps), len(self.censored)) <= MOST_MARKS, "too many steps")
        across = [at for at, _ in self.steps]
        check_finite((*across, *self.censored, self.end))
        check_rising(across)
        check_rising(-share for _, share in self.steps)
        check(all(0 <= share <= 1 for _, share in self.steps), "a share is of 1")
        check(all(0 <= at <= self.end for at in (*across, *self.censored)), "after the end")


@dataclass(frozen=True, slots=True)
class Steps:
    """Shares that survive, after Kaplan and Meier; ticks where something was last seen."""

    across: Axis
    up: str
    lines: tuple[StepLine, ...]

    def __post_init__(self) -> None:
        """Check the number of lines."""
        check(len(self.lines) <= MOST_LINES, "too many lines")
