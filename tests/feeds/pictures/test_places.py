"""Every figure stands where its axis says, read back from the SVG to half a unit of the sheet.

The outside check is the drawing itself: scales are worked out from the ticks' own words.
"""

import math
from datetime import timedelta
from itertools import pairwise

import pytest

from tests.feeds.pictures import samples
from tests.feeds.pictures.reading import (
    FORMS,
    across,
    at,
    drawn,
    half_unit,
    marks,
    points,
    up,
    words,
)


@pytest.fixture(params=FORMS)
def form(request: pytest.FixtureRequest) -> str:
    """Both forms of a picture."""
    return request.param


def test_shares_and_their_intervals_stand_on_the_axis(form: str):
    """A row's dot is at its share, its line runs from low to high, the target is at its value."""
    svg = drawn(samples.SHARES, form)
    scale = across(svg)
    dots = marks(svg, "circle")
    lines = marks(svg, "line", "s-ink")
    for row, dot, line in zip(samples.SHARES.rows, dots, lines, strict=True):
        x, y = at(dot, "cx", "cy")
        assert scale(x) == pytest.approx(row.share, abs=half_unit(scale, x))
        low, high, y1, y2 = at(line, "x1", "x2", "y1", "y2")
        assert scale(low) == pytest.approx(row.low, abs=half_unit(scale, low))
        assert scale(high) == pytest.approx(row.high, abs=half_unit(scale, high))
        assert y == y1 == y2
    target = marks(svg, "line", "s-rubric")[0]
    assert scale(at(target, "x1")[0]) == pytest.approx(0.85, abs=half_unit(scale, 0))


def test_the_share_and_its_number_are_written_in_each_row(form: str):
    """Each row says its share and of how many."""
    said = [words(text) for text in marks(drawn(samples.SHARES, form), "text")]
    assert {"92% of 262", "62% of 29", "0% of 4", "100% of 1,234,567"} <= set(said)


def test_foresight_stands_on_both_axes(form: str):
    """A dot is at its prediction and its share, its area in proportion to its answers."""
    svg = drawn(samples.CALIBRATION, form)
    x_scale, y_scale = across(svg), up(svg)
    dots, lines = marks(svg, "circle"), marks(svg, "line", "s-ink")
    for point, dot, line in zip(samples.CALIBRATION.points, dots, lines, strict=True):
        x, y = at(dot, "cx", "cy")
        assert x_scale(x) == pytest.approx(point.predicted, abs=half_unit(x_scale, x))
        assert y_scale(y) == pytest.approx(point.share, abs=half_unit(y_scale, y))
        low, high = at(line, "y1", "y2")
        assert y_scale(low) == pytest.approx(point.low, abs=half_unit(y_scale, low))
        assert y_scale(high) == pytest.approx(point.high, abs=half_unit(y_scale, high))
    third, fourth = at(dots[2], "r")[0], at(dots[3], "r")[0]
    assert (third / fourth) ** 2 == pytest.approx(352 / 309, rel=0.01)


def test_the_diagonal_is_perfect_foresight(form: str):
    """Both ends of the dashed line are as foretold, and the square is a square."""
    svg = drawn(samples.CALIBRATION, form)
    x_scale, y_scale = across(svg), up(svg)
    dashed = next(line for line in marks(svg, "line") if line.get("stroke-dasharray"))
    x1, y1, x2, y2 = at(dashed, "x1", "y1", "x2", "y2")
    assert x_scale(x1) == pytest.approx(y_scale(y1), abs=1e-3)
    assert x_scale(x2) == pytest.approx(y_scale(y2), abs=1e-3)
    assert x2 - x1 == pytest.approx(y1 - y2, abs=0.1)


def test_curves_and_dots_stand_on_a_logarithmic_axis(form: str):
    """Every point of every line, and every dot with its interval, is at its day and share."""
    svg = drawn(samples.CURVES, form)
    x_scale, y_scale = across(svg, log=True), up(svg)
    for line, path in zip(samples.CURVES.lines, marks(svg, "path"), strict=True):
        for (day, share), (x, y) in zip(line.points, points(path), strict=True):
            assert x_scale(x) / 1440 == pytest.approx(day, abs=half_unit(x_scale, x) / 1440)
            assert y_scale(y) == pytest.approx(share, abs=half_unit(y_scale, y))
    for dot, circle in zip(samples.CURVES.dots, marks(svg, "circle"), strict=False):
        x, y = at(circle, "cx", "cy")
        assert x_scale(x) / 1440 == pytest.approx(dot.across, abs=half_unit(x_scale, x) / 1440)
        assert y_scale(y) == pytest.approx(dot.up, abs=half_unit(y_scale, y))


def test_lines_are_told_apart_without_colour_and_named_where_they_end(form: str):
    """No two lines share a dash, and each name stands right of the drawing, nearest its line."""
    svg = drawn(samples.CURVES, form)
    paths = marks(svg, "path")
    assert len({path.get("stroke-dasharray") for path in paths}) == len(paths)
    heights = [points(path)[-1][1] for path in paths]
    said = {words(text).split()[0]: at(text, "y")[0] for text in marks(svg, "text", "f-ink")}
    assert (said["your"] < said["published"]) is (heights[0] < heights[1])


def test_survival_falls_in_steps_with_ticks_where_something_was_last_seen(form: str):
    """The corners are at the steps; a tick is at each censoring, at the share there."""
    svg = drawn(samples.STEPS, form)
    x_scale, y_scale = across(svg), up(svg)
    corners = [(x_scale(x), y_scale(y)) for x, y in points(marks(svg, "path")[0])]
    expected = [
        (0, 1),
        (20, 1),
        (20, 0.9),
        (90, 0.9),
        (90, 0.7),
        (200, 0.7),
        (200, 0.4),
        (300, 0.4),
    ]
    for (day, share), (wanted_day, wanted_share) in zip(corners, expected, strict=True):
        assert day == pytest.approx(wanted_day, abs=1)
        assert share == pytest.approx(wanted_share, abs=0.002)
    ticks = [at(line, "x1", "y1", "y2") for line in marks(svg, "line", "s-ink")]
    seen = [(x_scale(x), y_scale((y1 + y2) / 2)) for x, y1, y2 in ticks]
    wanted = [(30, 0.9), (150, 0.7), (70, 0.95), (210, 0.95)]
    assert [day for day, _ in seen] == pytest.approx([day for day, _ in wanted], abs=1)
    assert [share for _, share in seen] == pytest.approx([s for _, s in wanted], abs=0.002)


def test_days_are_bars_with_their_overflow_hatched(form: str):
    """A bar is as high as its minutes, and what is over the limit is hatched on top of it."""
    svg = drawn(samples.DAYS, form)
    scale = up(svg)
    solid = marks(svg, "rect", "f-ink")
    hatched = [box for box in marks(svg, "rect") if "url(" in box.get("fill", "")][:-1]
    for bar, box in zip(samples.DAYS.days, solid, strict=True):
        top, high = at(box, "y", "height")
        assert scale(top) == pytest.approx(bar.within, abs=half_unit(scale, top))
        assert scale(top + high) == pytest.approx(0, abs=half_unit(scale, top))
    over = [bar for bar in samples.DAYS.days if bar.over]
    for bar, box in zip(over, hatched, strict=True):
        top = at(box, "y")[0]
        assert scale(top) == pytest.approx(bar.within + bar.over, abs=half_unit(scale, top))
    limit = marks(svg, "line", "s-rubric")[0]
    assert scale(at(limit, "y1")[0]) == pytest.approx(20, abs=half_unit(scale, 0))


def test_bars_stand_at_their_days(form: str):
    """Bars are equally far apart, and a Monday's stands over the words that name it."""
    svg = drawn(samples.DAYS, form)
    places = [
        x + wide / 2 for x, wide in (at(b, "x", "width") for b in marks(svg, "rect", "f-ink"))
    ]
    steps = {round(b - a, 1) for a, b in pairwise(places)}
    assert max(steps) - min(steps) <= 0.11
    named = {
        words(t): at(t, "x")[0] for t in marks(svg, "text") if t.get("text-anchor") == "middle"
    }
    monday = samples.FIRST + timedelta(3)
    if f"{monday.day} {monday:%b}" in named:
        assert named[f"{monday.day} {monday:%b}"] == pytest.approx(places[3], abs=0.5)
    else:
        assert form == "narrow"


def test_a_year_of_days_is_one_body_as_high_as_each_day(form: str):
    """Where a day is too narrow for a bar, the outline goes over its minutes; a gap is empty."""
    svg = drawn(samples.YEAR, form)
    scale = up(svg)
    outline = points(marks(svg, "path", "f-ink")[0])
    tops = [scale(y) for _, y in outline]
    assert max(tops) == pytest.approx(max(bar.within for bar in samples.YEAR.days), abs=0.1)
    assert scale(outline[0][1]) == pytest.approx(samples.YEAR.days[0].within, abs=0.1)
    gap = outline[2 * 7]
    assert scale(gap[1]) == pytest.approx(0, abs=0.1)


def test_squares_have_the_areas_of_their_counts_and_the_numbers_below(form: str):
    """A square's area is as its count, the diagonal is full, and every count is written."""
    svg = drawn(samples.GRID, form)
    counts = [count for row in samples.GRID.counts for count in row]
    boxes = marks(svg, "rect")
    largest = max(at(box, "width")[0] for box in boxes)
    drawn_counts = [400 * (at(box, "width")[0] / largest) ** 2 for box in boxes]
    assert drawn_counts == pytest.approx([count for count in counts if count], rel=0.02, abs=0.1)
    assert sum("f-ink" in box.get("class") for box in boxes) == 4
    written = [words(text) for text in marks(svg, "text", "f-faint")]
    assert [word for word in written if word.isdigit()] == [str(count) for count in counts]


def test_months_are_stacked_from_the_foot_and_told_apart_by_hatching(form: str):
    """Each layer is as high as its count and begins where the one below ends."""
    svg = drawn(samples.MONTHS, form)
    scale = up(svg)
    named = {"kept", "partly", "missed", "silent"}
    assert named <= {words(text) for text in marks(svg, "text")}
    boxes = marks(svg, "rect")[:-4]
    layers = [
        count
        for month in samples.MONTHS.months
        for count in (month.kept, month.partly, month.missed, month.silent)
        if count
    ]
    for count, box in zip(layers, boxes, strict=True):
        top, high = at(box, "y", "height")
        assert scale(top) - scale(top + high) == pytest.approx(count, abs=half_unit(scale, top) * 2)
    fills = {(box.get("fill"), box.get("class")) for box in marks(svg, "rect")[-4:]}
    assert len(fills) == 4
    assert not math.isclose(scale(0), scale(1))
