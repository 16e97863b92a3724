"""The parameters under which a curve lies closest to what happened."""

from collections.abc import Callable, Sequence
from typing import NamedTuple

Parameters = tuple[float, ...]

_STEPS = 100
"""Steps at most; ten or twenty are usual."""
_CLOSE = 1e-10
"""A step that gains less than this share of the loss is the last."""

_LEVEL = 1e-12
"""Added to each curvature: where the loss is level, there is still something to divide by."""


class Slope(NamedTuple):
    """How a loss lies at some parameters.

    Attributes:
        loss: what is to be least.
        gradient: how it grows with each parameter.
        curvature: how the gradient does, expected: a matrix that is never negative, such as the
            information of a likelihood, or Jᵀ·J of a sum of squares.
    """

    loss: float
    gradient: Sequence[float]
    curvature: Sequence[Sequence[float]]


def least(
    at: Callable[[Parameters], Slope],
    start: Parameters,
    bounds: Sequence[tuple[float, float]],
) -> Parameters:
    """Return the parameters, within bounds, at which a loss is least near a start.

    Levenberg 1944 and Marquardt 1963: steps by curvature, shortened while they do not gain.
    """
    here, slope, damping = start, at(start), 1e-3
    for _ in range(_STEPS):
        step = _step(here, slope, bounds, damping)
        there = tuple(
            min(max(value + by, low), high)
            for value, by, (low, high) in zip(here, step, bounds, strict=True)
        )
        found = at(there)
        gained = slope.loss - found.loss
        if gained < 0:
            damping *= 8
            continue
        here, slope = there, found
        # A step that was cut short gains little far from the least, too.
        if gained <= _CLOSE * abs(slope.loss) and damping < 1:
            break
        damping /= 8
    return here


def _step(
    here: Parameters, slope: Slope, bounds: Sequence[tuple[float, float]], damping: float
) -> list[float]:
    """Return the step by curvature; a parameter at its bound and drawn beyond it stays."""
    free = [
        low < value < high or (value <= low and by < 0) or (value >= high and by > 0)
        for value, by, (low, high) in zip(here, slope.gradient, bounds, strict=True)
    ]
    matrix = [
        [
            (each * (1 + damping) if row == column else each) if free[row] and free[column] else 0
            for column, each in enumerate(line)
        ]
        for row, line in enumerate(slope.curvature)
    ]
    for place, moves in enumerate(free):
        matrix[place][place] += _LEVEL if moves else 1
    downhill = [-by if moves else 0 for by, moves in zip(slope.gradient, free, strict=True)]
    return solved(matrix, downhill)


def solved(matrix: Sequence[Sequence[float]], right: Sequence[float]) -> list[float]:
    """Return x of matrix · x = right, the matrix symmetric and above zero (Gauss)."""
    rows = [[*line, value] for line, value in zip(matrix, right, strict=True)]
    size = len(rows)
    for place in range(size):
        for below in rows[place + 1 :]:
            share = below[place] / rows[place][place]
            below[:] = [b - share * a for b, a in zip(below, rows[place], strict=True)]
    found = [0.0] * size
    for place in reversed(range(size)):
        row = rows[place]
        known = sum(row[other] * found[other] for other in range(place + 1, size))
        found[place] = (row[size] - known) / row[place]
    return found
