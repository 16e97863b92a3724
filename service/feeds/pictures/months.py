"""A bar a month: kept, partly, missed, silent, from the foot upwards, told apart by hatching."""

from typing import Final, NamedTuple

from service.feeds.pictures.canvas import Canvas
from service.feeds.pictures.dates import month_words
from service.feeds.pictures.frame import framed
from service.feeds.pictures.labels import spread
from service.feeds.pictures.manners import Ink
from service.feeds.pictures.scales import Ruler, Tick, ruler
from service.use_cases.picture_records import Axis, Month, Months, Unit

_HEIGHTS: Final = {"wide": 220.0, "narrow": 190.0}
_THICK: Final = 0.66
_THICKEST: Final = 34.0
_SWATCH: Final = 11.0
_APART: Final = 10.0


class _Outcome(NamedTuple):
    """One layer of a bar, and what fills it."""

    name: str
    fill: Ink
    hatch: str


_OUTCOMES: Final = (
    _Outcome("kept", "ink", ""),
    _Outcome("partly", "ground", "close"),
    _Outcome("missed", "ground", "open"),
    _Outcome("silent", "ground", ""),
)
"""From the foot upwards; each has less ink than the one below it."""


def draw_months(months: Months, canvas: Canvas) -> None:
    """Draw the bars, and the names of their layers beside the last."""
    bars = [_layers(month) for month in months.months]
    beside = max(canvas.width_of(each.name) for each in _OUTCOMES) + _SWATCH + 2 * _APART
    room = (canvas.form.width - beside) * 0.9 / len(bars)
    axis = Axis("windows", Unit.COUNT, start=0.0)
    frame = framed(
        canvas,
        _calendar(canvas, months, room),
        ruler(axis, [max(2, *map(sum, bars))], 5),
        height=_HEIGHTS[canvas.form.name],
        beside=beside,
    )
    thick = min(_THICKEST, room * _THICK)
    for n, bar in enumerate(bars):
        below = 0
        for outcome, count in zip(_OUTCOMES, bar, strict=True):
            low, high = frame.y(below), frame.y(below + count)
            if count:
                corner = (frame.x(n) - thick / 2, high)
                canvas.box(corner, (thick, low - high), outcome.fill, "ink", outcome.hatch)
            below += count
    used = [n for n in range(len(_OUTCOMES)) if any(bar[n] for bar in bars)]
    last = bars[-1]
    line = canvas.form.line
    middles = spread(
        [frame.y(sum(last[:n]) + last[n] / 2) for n in used],
        [line] * len(used),
        frame.top,
        frame.bottom,
    )
    left = frame.right + _APART
    for n, middle in zip(reversed(used), sorted(middles), strict=True):
        _name(canvas, _OUTCOMES[n], left, middle)


def _name(canvas: Canvas, outcome: _Outcome, left: float, middle: float) -> None:
    corner = (left, middle - _SWATCH / 2)
    canvas.box(corner, (_SWATCH, _SWATCH), outcome.fill, "ink", outcome.hatch)
    canvas.words((left + _SWATCH + 6, canvas.middle(middle)), outcome.name)


def _layers(month: Month) -> tuple[int, int, int, int]:
    return (month.kept, month.partly, month.missed, month.silent)


def _calendar(canvas: Canvas, months: Months, room: float) -> Ruler:
    """Return the months as a ruler, each its own unit wide, written as often as there is room."""
    days = [month.month for month in months.months]
    widest = max(canvas.width_of(f"{day:%b}") for day in days) + canvas.size
    every = max(1, -int(-widest // room))
    shown = range(0, len(days), every)
    words = month_words([days[n] for n in shown])
    ticks = tuple(Tick(n, each) for n, each in zip(shown, words, strict=True))
    return Ruler("", -0.5, len(days) - 0.5, log=False, ticks=ticks)
