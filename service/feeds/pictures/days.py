"""A thin bar a day, and on it, hatched, what is over the limit."""

from collections.abc import Iterator
from datetime import date
from typing import Final

from service.feeds.pictures.canvas import Canvas
from service.feeds.pictures.dates import marked_days
from service.feeds.pictures.frame import Frame, framed
from service.feeds.pictures.line_ends import End, name_ends, room_beside
from service.feeds.pictures.manners import FAINT, RUBRIC
from service.feeds.pictures.scales import Ruler, Tick, ruler
from service.use_cases.picture_records import Axis, DayBar, Days

_HEIGHTS: Final = {"wide": 200.0, "narrow": 170.0}
_THICK: Final = 0.55
"""Part of a day's room that its bar takes."""
_THICKEST: Final = 12.0
_FINEST: Final = 3.5
"""Units a day needs to have a bar of its own; below it the days stand as one body."""
_SWATCH: Final = 11.0


def draw_days(days: Days, canvas: Canvas) -> None:
    """Draw the bars, the limit across them, and what the hatched part is."""
    first, last = days.days[0].day, days.days[-1].day
    values = [bar.within + bar.over for bar in days.days]
    limits = [] if days.limit is None else [days.limit]
    beside = room_beside(canvas, [days.limit_label]) if limits else 0.0
    frame = framed(
        canvas,
        _calendar(canvas, first, last, canvas.form.width * 0.9 - beside),
        ruler(Axis(days.label, days.unit, start=0.0), [*values, *limits], 5),
        height=_HEIGHTS[canvas.form.name],
        beside=beside,
    )
    room = (frame.right - frame.left) / ((last - first).days + 1)
    if room < _FINEST:
        _body(canvas, frame, days)
    else:
        for bar in days.days:
            _bar(canvas, frame, bar, min(_THICKEST, room * _THICK))
    if any(bar.over for bar in days.days):
        _over(canvas, days.over_label)
    for limit in limits:
        y = frame.y(limit)
        canvas.stroke((frame.left, y), (frame.right, y), "rubric", 1.25, "5 3")
        name_ends(canvas, frame, [End(frame.across.end, limit, days.limit_label)], RUBRIC)


def _bar(canvas: Canvas, frame: Frame, bar: DayBar, thick: float) -> None:
    x = frame.x(bar.day.toordinal()) - thick / 2
    low, high = frame.y(bar.within), frame.y(bar.within + bar.over)
    if bar.within:
        canvas.box((x, low), (thick, frame.bottom - low))
    if bar.over:
        canvas.box((x, high), (thick, low - high), edge="ink", hatch="close")


def _body(canvas: Canvas, frame: Frame, days: Days) -> None:
    within = [(bar.day, bar.within) for bar in days.days]
    whole = [(bar.day, bar.within + bar.over) for bar in days.days]
    foot = [(days.days[0].day, 0.0), (days.days[-1].day, 0.0)]
    canvas.area([*_outline(frame, within), *reversed(list(_outline(frame, foot)))])
    if whole != within:
        back = reversed(list(_outline(frame, within)))
        canvas.area([*_outline(frame, whole), *back], "close")


def _outline(frame: Frame, values: list[tuple[date, float]]) -> Iterator[tuple[float, float]]:
    """Go along the tops of days, each as wide as a day; a day that is not there is empty."""
    before = values[0][0].toordinal()
    for day, value in values:
        start = day.toordinal()
        if start > before + 1:
            yield from ((frame.x(before + 0.5), frame.bottom), (frame.x(start - 0.5), frame.bottom))
        yield from ((frame.x(start - 0.5), frame.y(value)), (frame.x(start + 0.5), frame.y(value)))
        before = start


def _calendar(canvas: Canvas, first: date, last: date, wide: float) -> Ruler:
    room = wide / ((last - first).days + 1)
    ticks = tuple(
        Tick(day.toordinal(), words)
        for day, words in marked_days(first, last, room, canvas.width_of)
    )
    return Ruler("", first.toordinal() - 0.5, last.toordinal() + 0.5, log=False, ticks=ticks)


def _over(canvas: Canvas, label: str) -> None:
    """Say above the drawing, at its right end, what is hatched."""
    room = canvas.form.width / 2 - _SWATCH - 6
    left = canvas.form.width - min(room, canvas.width_of(label)) - _SWATCH - 6
    canvas.box((left, canvas.size - _SWATCH + 1), (_SWATCH, _SWATCH), edge="ink", hatch="close")
    canvas.words((left + _SWATCH + 6, canvas.size), label, manner=FAINT, room=room)
