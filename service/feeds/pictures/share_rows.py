"""Shares one under another: a dot where it was found, a line as far as it may lie."""

from dataclasses import dataclass
from itertools import accumulate
from typing import Final

from service.feeds.pictures.canvas import Canvas
from service.feeds.pictures.frame import Frame, floor
from service.feeds.pictures.lettering import broken, clean
from service.feeds.pictures.manners import FAINT, RUBRIC, Ink
from service.feeds.pictures.scales import Ruler, ruler, start_of_shares
from service.use_cases.picture_records import Axis, Share, Shares, Unit

_LABELS: Final = 230.0
"""Units that labels take on a wide sheet at the most."""
_MOST_LINES: Final = 2
_APART: Final = 14.0
"""Units between the columns."""
_DOT: Final = 4.0
_STRIP: Final = 7.0
"""Half the height of a row's own strip of the rules on a narrow sheet."""
_NOTHING: Final = Ruler("", 0, 1, log=False, ticks=())
"""Rows have no axis up."""


@dataclass(frozen=True, slots=True)
class _Row:
    """A row on the sheet.

    Attributes:
        lines: its label.
        base: the baseline of the first of them.
        middle: where its dot stands.
    """

    share: Share
    lines: list[str]
    found: str
    base: float
    middle: float


def draw_shares(shares: Shares, canvas: Canvas) -> None:
    """Draw the rows, the target through them and the axis below.

    On a narrow sheet a row's label stands above its strip, and the rules stop before it.
    """
    form, rows = canvas.form, shares.rows
    found = [f"{row.share:.0%} of {row.n:,}" for row in rows]
    beside = max(map(canvas.width_of, found)) + _APART
    target = 1.0 if shares.target is None else shares.target
    start = start_of_shares(max(0.0, min(target, *(row.low for row in rows))))
    across = ruler(Axis("", Unit.SHARE, start=start, end=1.0), (), 3 if form.narrow else 6)
    labels = form.width - beside if form.narrow else _LABELS
    named = [broken(clean(row.label), form.size, labels, _MOST_LINES) for row in rows]
    half = canvas.width_of(across.ticks[-1].words) / 2
    left, right = half, form.width - half
    if not form.narrow:
        widest = max(canvas.width_of(line) for lines in named for line in lines)
        left, right = widest + _APART, form.width - beside
    top = form.line + 4 if shares.target is not None else 4.0
    below = form.line + 4 if form.narrow else 6.0
    feet = list(accumulate((form.line * len(lines) + below for lines in named), initial=top))
    placed = [
        _Row(row, lines, words, *_placed(canvas, head, len(lines)))
        for row, lines, words, head in zip(rows, named, found, feet, strict=False)
    ]
    frame = Frame(left, top, right, feet[-1] + 4, across, _NOTHING)
    strips = [(top, frame.bottom)]
    if form.narrow:
        strips = [(row.middle - _STRIP, row.middle + _STRIP) for row in placed]
    for tick in across.ticks:
        _upright(canvas, frame.x(tick.value), strips, "rule", 0.75)
    floor(canvas, frame)
    if shares.target is not None:
        _target(canvas, frame, shares.target, strips)
    for row in placed:
        _draw_row(canvas, frame, row)


def _placed(canvas: Canvas, head: float, lines: int) -> tuple[float, float]:
    """Return the first baseline and the middle of a row that begins at a height."""
    line = canvas.form.line
    if canvas.form.narrow:
        return head + canvas.size, head + line * lines + line / 2
    middle = head + line * lines / 2 + 3
    return canvas.middle(middle - line * (lines - 1) / 2), middle


def _draw_row(canvas: Canvas, frame: Frame, row: _Row) -> None:
    for n, words in enumerate(row.lines):
        canvas.words((0, row.base + canvas.form.line * n), words, whole=row.share.label)
    base = row.base if canvas.form.narrow else canvas.middle(row.middle)
    canvas.words((canvas.form.width, base), row.found, manner=FAINT, anchor="end")
    low, high = max(0.0, row.share.low), min(1.0, row.share.high)
    canvas.stroke((frame.x(low), row.middle), (frame.x(high), row.middle), "ink", 1.25)
    canvas.dot((frame.x(row.share.share), row.middle), _DOT)


def _target(canvas: Canvas, frame: Frame, target: float, strips: list[tuple[float, float]]) -> None:
    x, words = frame.x(target), f"target {target:.0%}"
    _upright(canvas, x, strips, "rubric", 1.25, "5 3")
    half = canvas.width_of(words) / 2
    middle = min(max(x, half), canvas.form.width - half)
    canvas.words((middle, frame.top - 7), words, manner=RUBRIC, anchor="middle")


def _upright(
    canvas: Canvas,
    x: float,
    spans: list[tuple[float, float]],
    ink: Ink,
    thick: float,
    dash: str = "",
) -> None:
    for top, bottom in spans:
        canvas.stroke((x, top), (x, bottom), ink, thick, dash)
