"""The names of lines, each where its line ends: no legend to look up."""

from dataclasses import dataclass
from typing import Final

from service.feeds.pictures.canvas import Canvas
from service.feeds.pictures.frame import Frame
from service.feeds.pictures.labels import spread
from service.feeds.pictures.lettering import broken, clean
from service.feeds.pictures.manners import PLAIN, Manner

DASHES: Final = ("", "7 3", "2 3", "11 3 2 3", "1 4", "14 4")
"""What tells lines apart in black and white; the first is drawn through."""
_APART: Final = 20.0
"""Units between the drawing and the names, for leaders."""
_ROOM_WIDE: Final = 150.0
_ROOM_NARROW: Final = 100.0
_MOST_LINES: Final = 3
_BETWEEN: Final = 4.0
"""Units between two names, so that neither is read into the other."""
_NEAR: Final = 3.0
"""Units a line may end before the drawing does and still need no leader to its name."""


@dataclass(frozen=True, slots=True)
class End:
    """Where a line ends, and its name."""

    across: float
    up: float
    label: str


def room_beside(canvas: Canvas, names: list[str]) -> float:
    """Return the units that names take on the right of a drawing; 0 without any."""
    widest = max(
        (canvas.width_of(line) for name in names for line in _lines(canvas, name)), default=0
    )
    return widest + _APART if widest else 0.0


def name_ends(canvas: Canvas, frame: Frame, ends: list[End], manner: Manner = PLAIN) -> None:
    """Write the names beside the drawing, and lead to those that do not stand at their lines."""
    named = [(end, _lines(canvas, end.label)) for end in ends if end.label]
    high = canvas.form.line
    middles = spread(
        [frame.y(end.up) for end, _ in named],
        [high * len(lines) + _BETWEEN for _, lines in named],
        frame.top - high / 2,
        frame.bottom + high / 2,
    )
    left = frame.right + _APART - 2
    for (end, lines), middle in zip(named, middles, strict=True):
        x, y = frame.x(end.across), frame.y(end.up)
        if abs(middle - y) > high * len(lines) / 2 or frame.right - x > _NEAR:
            canvas.stroke((max(x + 3, frame.right + 2), y), (left - 4, middle), "line", 0.75)
        if frame.right - x > _NEAR:
            canvas.stroke((x + 3, y), (frame.right + 2, y), "line", 0.75)
        for n, words in enumerate(lines):
            at = middle + high * (n - (len(lines) - 1) / 2)
            canvas.words((left, canvas.middle(at)), words, manner=manner, whole=end.label)


def _lines(canvas: Canvas, name: str) -> list[str]:
    room = _ROOM_NARROW if canvas.form.narrow else _ROOM_WIDE
    return broken(clean(name), canvas.size, room, _MOST_LINES) if name else []
