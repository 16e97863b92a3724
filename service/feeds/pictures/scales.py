"""Where a value stands on an axis, and the few round values that are written along it."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Final

from service.use_cases.picture_records import Axis, Scale, Unit

_STEPS: Final = (1.0, 2.0, 5.0)
"""Round steps between ticks, times a power of ten."""
_QUARTER: Final = 0.25
"""Shares are read in quarters too."""
_HOURS: Final = 60
_DURATIONS: Final = (
    (1, "1 min"),
    (10, "10 min"),
    (_HOURS, "1 hour"),
    (24 * _HOURS, "1 day"),
    (7 * 24 * _HOURS, "1 week"),
    (30 * 24 * _HOURS, "1 month"),
    (365 * 24 * _HOURS, "1 year"),
    (3650 * 24 * _HOURS, "10 years"),
)
"""What is round among spans of time, in minutes; a month is of 30 days, a year of 365."""
_MINUTES_OF: Final = {Unit.MINUTES: 1, Unit.DAYS: 1440, Unit.YEARS: 365 * 1440}
_STARTS: Final = (0.8, 0.6, 0.5, 0.0)
"""Where axes of shares begin; all are round to any number of ticks."""
_HAIR: Final = 1e-9


@dataclass(frozen=True, slots=True)
class Tick:
    """A value written along an axis."""

    value: float
    words: str


@dataclass(frozen=True, slots=True)
class Ruler:
    """An axis, divided.

    Attributes:
        start, end: its values at both ends; the end is above the start.
        ticks: from start to end.
    """

    label: str
    start: float
    end: float
    log: bool
    ticks: tuple[Tick, ...]

    def along(self, value: float) -> float:
        """Return where a value stands: 0 at the start, 1 at the end."""
        if self.log:
            whole = math.log(self.end / self.start)
            return math.log(value / self.start) / whole
        return (value - self.start) / (self.end - self.start)


def ruler(axis: Axis, values: Iterable[float], most: int, *, snug: bool = False) -> Ruler:
    """Divide an axis that holds all values, with at most so many ticks.

    It begins and ends at ticks, or when it is to be snug at the outermost values.

    Args:
        axis: what it measures, and where it is to begin and end.
        values: what stands on it.
        most: ticks, at least 3: below and above 0 there is one more at 0.
        snug: whether it begins and ends at the values.
    """
    ends = [*values, *(end for end in (axis.start, axis.end) if end is not None)] or [0.0, 1.0]
    low, high = min(ends), max(ends)
    if axis.scale is Scale.LOG:
        return _logarithmic(axis, low, high, most)
    if high - low <= _HAIR * max(1.0, abs(high)):
        low, high = (0.0, 1.0) if low == 0 or axis.unit is Unit.SHARE else (low - 0.5, low + 0.5)
    step = next(step for step in _rising(high - low, axis.unit) if _count(low, high, step) <= most)
    first, last = math.floor(low / step + _HAIR), math.ceil(high / step - _HAIR)
    start, end = (low, high) if snug else (first * step, last * step)
    ticks = tuple(
        Tick(n * step, said(n * step, axis.unit, step))
        for n in range(first, last + 1)
        if start - _HAIR * step <= n * step <= end + _HAIR * step
    )
    return Ruler(axis.label, start, end, log=False, ticks=ticks)


def start_of_shares(lowest: float) -> float:
    """Return where an axis of shares begins: so near below the lowest that differences are seen."""
    return next(start for start in _STARTS if start <= lowest)


def said(value: float, unit: Unit, step: float) -> str:
    """Return a tick's value, with as many decimals as its step asks for."""
    if unit is Unit.SHARE:
        value, step = 100 * value, 100 * step
    decimals = next((n for n in range(6) if abs(step * 10**n - round(step * 10**n)) < _HAIR), 6)
    written = f"{abs(value):,.{decimals}f}{'%' if unit is Unit.SHARE else ''}"
    return f"−{written}" if value < 0 and round(value, decimals) else written


def _logarithmic(axis: Axis, low: float, high: float, most: int) -> Ruler:
    if high / low < 1 + _HAIR:
        low, high = low / 2, high * 2
    minutes = _MINUTES_OF.get(axis.unit)
    if minutes is None:
        round_values = _round_values(low, high, axis.unit)
    else:
        round_values = [Tick(span / minutes, words) for span, words in _DURATIONS]
    ticks = [tick for tick in round_values if low * (1 - _HAIR) <= tick.value <= high * (1 + _HAIR)]
    kept = ticks[:: math.ceil(len(ticks) / most)] if ticks else [Tick(low, f"{low:g}")]
    return Ruler(axis.label, low, high, log=True, ticks=tuple(kept))


def _round_values(low: float, high: float, unit: Unit) -> list[Tick]:
    """Return powers of ten between two values; where they are few, twice and five times them too.

    Of a span below two powers hardly one would be written otherwise.
    """
    powers = range(math.floor(math.log10(low)), math.floor(math.log10(high) + _HAIR) + 1)
    steps = (1.0,) if high / low >= 100 else _STEPS
    values = ((step * 10.0**power, 10.0**power) for power in powers for step in steps)
    return [Tick(value, said(value, unit, power)) for value, power in values]


def _rising(span: float, unit: Unit) -> Iterator[float]:
    """Go through round steps from a tenth of a span, or from 1 where things are counted."""
    power = 10.0 ** (math.floor(math.log10(span)) - 1)
    if unit is Unit.COUNT:
        power = max(1.0, power)
    while True:
        for step in _STEPS:
            if unit is Unit.SHARE and math.isclose(step * power, 2 * _QUARTER):
                yield _QUARTER
            yield step * power
        power *= 10


def _count(low: float, high: float, step: float) -> int:
    return math.ceil(high / step - _HAIR) - math.floor(low / step + _HAIR) + 1
