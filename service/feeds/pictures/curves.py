"""Curves over two axes, and dots for what was observed."""

from collections.abc import Iterator
from typing import Final

from service.feeds.pictures.canvas import Canvas
from service.feeds.pictures.frame import Frame, framed
from service.feeds.pictures.labels import Area, Taken
from service.feeds.pictures.line_ends import DASHES, End, name_ends, room_beside
from service.feeds.pictures.manners import NAME
from service.feeds.pictures.scales import ruler
from service.use_cases.picture_records import Curves, Dot, Line, Unit

HEIGHTS: Final = {"wide": 260.0, "narrow": 210.0}
"""Units of the drawing itself, without words."""
_DOT: Final = 3.5
_BESIDE: Final = 8.0
"""Units between a dot and its words above the drawing."""
_PACE: Final = 6.0
"""Units from one piece of a line to the next that labels keep off."""


def draw_curves(curves: Curves, canvas: Canvas) -> None:
    """Draw the lines with the names at their ends, and the dots with theirs beside them."""
    lines = [line for line in curves.lines if line.points]
    points = [point for line in lines for point in line.points]
    xs = [x for x, _ in points] + [dot.across for dot in curves.dots]
    ys = [y for _, y in points]
    ys += [y for dot in curves.dots for y in (dot.up, dot.low, dot.high) if y is not None]
    if curves.up.unit is Unit.SHARE:
        ys = [min(1.0, max(0.0, y)) for y in ys]
    elif curves.up.start is None:
        ys.append(0.0)
    narrow = canvas.form.narrow
    frame = framed(
        canvas,
        ruler(curves.across, xs, 4 if narrow else 8, snug=True),
        ruler(curves.up, ys, 5 if narrow else 6),
        height=HEIGHTS[canvas.form.name],
        beside=room_beside(canvas, [line.label for line in lines]),
    )
    taken = Taken(Area(frame.left, frame.top - canvas.size / 2, frame.right, frame.bottom))
    for line, dash in zip(lines, DASHES, strict=False):
        canvas.path([(frame.x(x), frame.y(y)) for x, y in line.points], dash=dash)
        for piece in _along(frame, line):
            taken.take(piece)
    name_ends(canvas, frame, [End(*line.points[-1], line.label) for line in lines])
    for dot in curves.dots:
        for piece in _draw_dot(canvas, frame, dot):
            taken.take(piece)
    for dot in curves.dots:
        if dot.label:
            _label(canvas, frame, taken, dot, dot.label)
    if curves.observed and curves.dots:
        _observed(canvas, frame, taken, curves)


def _draw_dot(canvas: Canvas, frame: Frame, dot: Dot) -> Iterator[Area]:
    x, y = frame.x(dot.across), frame.y(dot.up)
    if dot.low is not None and dot.high is not None:
        low, high = frame.y(dot.low), frame.y(dot.high)
        canvas.stroke((x, low), (x, high), "ink", 1.25)
        yield Area(x - 1, high, x + 1, low)
    canvas.dot((x, y), _DOT, "ground", "ink")
    yield Area(x - _DOT, y - _DOT, x + _DOT, y + _DOT)


def _along(frame: Frame, line: Line) -> Iterator[Area]:
    """Return a line as small areas."""
    x1, y1 = frame.x(line.points[0][0]), frame.y(line.points[0][1])
    for point in line.points[1:]:
        x2, y2 = frame.x(point[0]), frame.y(point[1])
        pieces = int(max(abs(x2 - x1), abs(y2 - y1)) / _PACE)
        if not pieces:
            continue
        for n in range(pieces):
            x, y = x1 + (x2 - x1) * n / pieces, y1 + (y2 - y1) * n / pieces
            yield Area(x - 1, y - 2, x + 1, y + 2)
        x1, y1 = x2, y2


def _observed(canvas: Canvas, frame: Frame, taken: Taken, curves: Curves) -> None:
    """Say what the dots are at the last one that has room for it, or else above the drawing."""
    for dot in sorted(curves.dots, key=lambda dot: dot.across, reverse=True):
        if _label(canvas, frame, taken, dot, curves.observed):
            return
    left = canvas.width_of(curves.up.label) + 2 * canvas.size
    room = canvas.form.width - left - _BESIDE
    x = canvas.form.width - min(room, canvas.width_of(curves.observed))
    canvas.dot((x - _BESIDE, canvas.size * 0.7), _DOT, "ground", "ink")
    canvas.words((x, canvas.size), curves.observed, room=room)


def _label(canvas: Canvas, frame: Frame, taken: Taken, dot: Dot, label: str) -> bool:
    """Write a label above, below or beside a dot, and say whether there was room for it."""
    x, y = frame.x(dot.across), frame.y(dot.up)
    wide, high, off = canvas.width_of(label), canvas.size, _DOT + 3
    offered = [
        Area(left, top, left + wide, top + high)
        for far in (0.0, high)
        for left, top in (
            (x - wide / 2, y - off - high - far),
            (x - wide / 2, y + off + far),
            (x + off, y - high / 2 - far),
            (x - off - wide, y - high / 2 + far),
            (x + off, y - high / 2 + far),
            (x - off - wide, y - high / 2 - far),
        )
    ]
    free = taken.first_free(offered)
    if free is None:
        return False
    canvas.words((free.left, canvas.middle(free.top + high / 2)), label, manner=NAME)
    return True
