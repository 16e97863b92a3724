"""What every drawing is held to: finite values, shares of 1, right order, bounded numbers.

A `ValueError` is a fault of the program that made a drawing, never of a reader.
"""

import math
from collections.abc import Iterable
from itertools import pairwise

MOST_MARKS = 400
"""Rows, points, days or steps of one drawing: more would be a smear."""
_SLACK = 1e-9
"""By which a bound may miss its share through rounding."""


def check(holds: bool, what: str) -> None:
    """Raise ValueError, saying what, unless it holds."""
    if not holds:
        raise ValueError(what)


def check_finite(values: Iterable[float]) -> None:
    """Raise ValueError unless all values are finite."""
    check(all(math.isfinite(value) for value in values), "a value is not finite")


def check_rising(values: Iterable[float]) -> None:
    """Raise ValueError when a value is below the one before it."""
    check(all(a <= b for a, b in pairwise(values)), "values out of order")


def check_interval(value: float, low: float, high: float) -> None:
    """Raise ValueError unless an interval is finite and holds its value."""
    check_finite((value, low, high))
    check(low - _SLACK <= value <= high + _SLACK, "an interval holds its value")


def check_share(share: float, low: float, high: float) -> None:
    """Raise ValueError unless an interval of shares of 1 holds its share."""
    check_interval(share, low, high)
    check(low >= -_SLACK and high <= 1 + _SLACK, "an interval is of shares of 1")
