"""What came back over what was foretold: perfect foresight is the diagonal."""

import math
from typing import Final

from service.feeds.pictures.canvas import Canvas
from service.feeds.pictures.frame import Frame, framed
from service.feeds.pictures.labels import Area, Taken
from service.feeds.pictures.lettering import broken
from service.feeds.pictures.manners import FAINT, OVER
from service.feeds.pictures.scales import ruler, start_of_shares
from service.use_cases.picture_records import Axis, Calibration, Foreseen, Unit

_SIDE: Final = 380.0
"""Units of the square on a wide sheet."""
_LARGEST: Final = 6.5
_SMALLEST: Final = 3.0
"""The radius of the dot of most answers, and the least at which a dot is seen."""
_KEY: Final = "The larger a dot, the more answers; beside it, how many."
_DIAGONAL: Final = "as foretold"


def draw_calibration(calibration: Calibration, canvas: Canvas) -> None:
    """Draw the diagonal and the dots, the area of each as the number of its answers."""
    points = calibration.points
    lowest = min(min(point.low, point.predicted) for point in points)
    start = start_of_shares(max(0.0, lowest))
    most = 3 if canvas.form.narrow else 6
    across = ruler(Axis("recall foretold", Unit.SHARE, start=start, end=1.0), (), most)
    up = ruler(Axis("share that came back", Unit.SHARE, start=start, end=1.0), (), most)
    frame = framed(canvas, across, up, height=_SIDE, square=True)
    canvas.stroke((frame.x(start), frame.y(start)), (frame.x(1), frame.y(1)), "line", 1.25, "5 3")
    taken = Taken(Area(frame.left, frame.top, canvas.form.width, frame.bottom))
    marks = [(point, _radius(point.n, max(each.n for each in points))) for point in points]
    for point, radius in marks:
        _mark(canvas, frame, point, radius)
        x, y = frame.x(point.predicted), frame.y(point.share)
        taken.take(Area(x - radius, y - radius, x + radius, y + radius))
        taken.take(Area(x - 1, frame.y(point.high), x + 1, frame.y(point.low)))
    _key(canvas, frame, taken)
    for point, radius in marks:
        _number(canvas, frame, taken, point, radius)


def _mark(canvas: Canvas, frame: Frame, point: Foreseen, radius: float) -> None:
    x = frame.x(point.predicted)
    low, high = max(0.0, point.low), min(1.0, point.high)
    canvas.stroke((x, frame.y(low)), (x, frame.y(high)), "ink", 1.25)
    canvas.dot((x, frame.y(point.share)), radius)


def _radius(n: int, most: int) -> float:
    return max(_SMALLEST, _LARGEST * math.sqrt(n / most))


def _number(canvas: Canvas, frame: Frame, taken: Taken, point: Foreseen, radius: float) -> None:
    """Write how many answers a dot is of, where there is room beside it; the table has them all."""
    words = f"{point.n:,}"
    x, y, wide = frame.x(point.predicted), frame.y(point.share), canvas.width_of(words)
    high, off = canvas.size, radius + 3
    # First where the diagonal is not, for most dots lie near it.
    offered = [(x + off, y), (x - off - wide, y - high), (x + off, y - high / 2)]
    free = taken.first_free([Area(left, top, left + wide, top + high) for left, top in offered])
    if free is not None:
        at = (free.left, canvas.middle(free.top + high / 2))
        canvas.words(at, words, manner=OVER)


def _key(canvas: Canvas, frame: Frame, taken: Taken) -> None:
    """Say what the line and the dots are: beside a wide square, below a narrow one."""
    if canvas.form.narrow:
        lines = broken(f"Dashes: {_DIAGONAL}. {_KEY}", canvas.size, canvas.form.width, 4)
        for n, words in enumerate(lines, 1):
            base = canvas.height + canvas.form.line * n
            canvas.words((0, base), words, manner=FAINT)
        canvas.height += canvas.form.line * len(lines) + canvas.size * 0.4
        return
    left, top = frame.right + 16, frame.y(1)
    canvas.words((left, canvas.middle(top)), _DIAGONAL, manner=FAINT)
    half = canvas.size / 2
    taken.take(Area(left, top - half, canvas.form.width, top + half))
    lines = broken(_KEY, canvas.size, canvas.form.width - left, 4)
    for n, words in enumerate(reversed(lines)):
        canvas.words((left, frame.bottom - 4 - canvas.form.line * n), words, manner=FAINT)
