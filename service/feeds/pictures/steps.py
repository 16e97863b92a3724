"""What survives, step by step, with a tick where something was last seen surviving."""

from bisect import bisect_right
from typing import Final

from service.feeds.pictures.canvas import Canvas
from service.feeds.pictures.curves import HEIGHTS
from service.feeds.pictures.frame import Frame, framed
from service.feeds.pictures.line_ends import DASHES, End, name_ends, room_beside
from service.feeds.pictures.scales import ruler
from service.use_cases.picture_records import Axis, StepLine, Steps, Unit

_TICK: Final = 3.5
"""Units a tick reaches above and below its line."""


def draw_steps(steps: Steps, canvas: Canvas) -> None:
    """Draw the lines from 1 downwards, their ticks, and the names at their ends."""
    narrow = canvas.form.narrow
    frame = framed(
        canvas,
        ruler(
            steps.across, [0.0, *(line.end for line in steps.lines)], 4 if narrow else 8, snug=True
        ),
        ruler(Axis(steps.up, Unit.SHARE, start=0.0, end=1.0), (), 5),
        height=HEIGHTS[canvas.form.name],
        beside=room_beside(canvas, [line.label for line in steps.lines]),
    )
    for line, dash in zip(steps.lines, DASHES, strict=False):
        canvas.path([(frame.x(x), frame.y(y)) for x, y in _corners(line)], dash=dash)
        _ticks(canvas, frame, line)
    ends = [End(line.end, _share_at(line, line.end), line.label) for line in steps.lines]
    name_ends(canvas, frame, ends)


def _ticks(canvas: Canvas, frame: Frame, line: StepLine) -> None:
    for at in sorted(set(line.censored)):
        x, y = frame.x(at), frame.y(_share_at(line, at))
        canvas.stroke((x, y - _TICK), (x, y + _TICK), "ink", 1)


def _corners(line: StepLine) -> list[tuple[float, float]]:
    corners, share = [(0.0, 1.0)], 1.0
    for at, after in line.steps:
        corners += [(at, share), (at, after)]
        share = after
    return [*corners, (line.end, share)]


def _share_at(line: StepLine, at: float) -> float:
    before = bisect_right(line.steps, at, key=lambda step: step[0])
    return line.steps[before - 1][1] if before else 1.0
