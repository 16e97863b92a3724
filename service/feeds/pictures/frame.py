"""The frame of a drawing over two axes: thin rules, few ticks, and what is measured, in words.

What the axis up measures stands above it and level, for nobody reads sideways; the axis across
is named at its right end.
"""

from dataclasses import dataclass

from service.feeds.pictures.canvas import Canvas
from service.feeds.pictures.manners import FAINT, TITLE
from service.feeds.pictures.scales import Ruler, Tick

_BESIDE = 6.0
"""Units between a tick's words and the drawing."""
_TICK = 4.5
"""Units a tick is long."""


@dataclass(frozen=True, slots=True)
class Frame:
    """Where values stand on the sheet.

    Attributes:
        left, top, right, bottom: the edges of the drawing.
    """

    left: float
    top: float
    right: float
    bottom: float
    across: Ruler
    up: Ruler

    def x(self, value: float) -> float:
        """Return where a value across stands."""
        return self.left + self.across.along(value) * (self.right - self.left)

    def y(self, value: float) -> float:
        """Return at what height a value stands."""
        return self.bottom - self.up.along(value) * (self.bottom - self.top)


def framed(
    canvas: Canvas,
    across: Ruler,
    up: Ruler,
    *,
    height: float,
    beside: float = 0.0,
    square: bool = False,
) -> Frame:
    """Draw the frame and set the sheet's height.

    Args:
        canvas: the sheet.
        across: the axis along the foot.
        up: the other.
        height: of the drawing itself.
        beside: units kept free on the right, for labels.
        square: whether both axes are to be as long as each other, the height going by the width.
    """
    line = canvas.form.line
    left = round(max(canvas.width_of(tick.words) for tick in up.ticks) + _BESIDE, 1)
    right = canvas.form.width - max(beside, _overhang(canvas, across.ticks))
    top = round(line + canvas.size * 0.8, 1)
    if square:
        side = min(height, right - left)
        right, height = left + side, side
    frame = Frame(left, top, right, top + height, across, up)
    canvas.words((0, canvas.size), up.label, manner=TITLE, room=canvas.form.width)
    for tick in up.ticks:
        y = frame.y(tick.value)
        canvas.stroke((left, y), (right, y), "rule", 0.75)
        canvas.words((left - _BESIDE, canvas.middle(y)), tick.words, manner=FAINT, anchor="end")
    floor(canvas, frame)
    return frame


def floor(canvas: Canvas, frame: Frame) -> None:
    """Draw the axis across along the bottom, and set the sheet's height."""
    canvas.stroke((frame.left, frame.bottom), (frame.right, frame.bottom), "line", 1)
    base = frame.bottom + _TICK + canvas.size * 1.1
    free, lines = 0.0, 1
    for tick in frame.across.ticks:
        words = tick.words.split("\n")
        x, half = frame.x(tick.value), max(map(canvas.width_of, words)) / 2
        if x - half < free:
            continue
        canvas.stroke((x, frame.bottom), (x, frame.bottom + _TICK), "line", 1)
        for n, each in enumerate(words):
            canvas.words((x, base + canvas.form.line * n), each, manner=FAINT, anchor="middle")
        free, lines = x + half + canvas.size / 2, max(lines, len(words))
    base += canvas.form.line * (lines - 1)
    canvas.height = base + canvas.size * 0.4
    if frame.across.label:
        fits = canvas.width_of(frame.across.label) <= frame.right
        right = frame.right if fits else canvas.form.width
        at = (right, base + canvas.form.line)
        canvas.words(at, frame.across.label, manner=TITLE, anchor="end", room=right)
        canvas.height += canvas.form.line


def _overhang(canvas: Canvas, ticks: tuple[Tick, ...]) -> float:
    """Return how far the last tick's words reach over the right end."""
    return canvas.width_of(ticks[-1].words) / 2 if ticks else 0.0
