"""The parameters under which a curve lies closest to what happened."""

from collections.abc import Callable, Sequence
from typing import NamedTuple

Parameters = tuple[float, ...]

_STEPS = 100
"""Steps at most; ten or twenty are usual."""
_CLOSE = 1e-10
"""A step that gains less than this share of the loss is the last."""


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
        damped = [
            [each * (1 + damping) + 1e-12 if row == column else each for column, each in line]
            for row, line in enumerate(map(enumerate, slope.curvature))
        ]
        step = solved(damped, [-each for each in slope.gradient])
        there = tuple(
            min(max(value + by, low), high)
            for value, by, (low, high) in zip(here, step, bounds, strict=True)
        )
        found = at(there)
        if found.loss >= slope.loss:
            if damping > 1e9:
                break
            damping *= 8
            continue
        gained = slope.loss - found.loss
        here, slope, damping = there, found, damping / 8
        if gained <= _CLOSE * abs(slope.loss):
            break
    return here


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
