"""Ebbinghaus's own retention curve, drawn and read back from the drawing.

Source: H. Ebbinghaus, Memory (1885; tr. Ruger and Bussenius 1913), pp. 76-78: savings after
seven delays, his formula b = 100 k / ((log10 t)^c + k) with k = 1.84, c = 1.25 and t in minutes
from one minute before the end of learning, and the values he printed beside the observed ones.
"""

import math

import pytest

from service.use_cases.picture_records import Axis, Curves, Dot, Line, Scale, Unit
from tests.feeds.pictures.reading import FORMS, across, at, drawn, marks, points, up

MINUTES = (20, 64, 526, 1440, 2880, 8640, 44640)
PRINTED = (57.0, 46.7, 34.5, 30.4, 28.1, 24.9, 21.2)
SAVED = (58.2, 44.2, 35.8, 33.7, 27.8, 25.4, 21.1)


def formula(minutes: float) -> float:
    """Return the percentage saved after so many minutes, by his formula."""
    return 184 / (math.log10(minutes) ** 1.25 + 1.84)


CURVES = Curves(
    Axis("since the learning", Unit.MINUTES, Scale.LOG),
    Axis("% saved", Unit.NUMBER, start=0, end=100),
    (Line("his formula", tuple((float(t), formula(t)) for t in MINUTES)),),
    tuple(Dot(t, saved) for t, saved in zip(MINUTES, SAVED, strict=True)),
    "his savings",
)


@pytest.mark.parametrize("form", FORMS)
def test_his_printed_fits_are_read_from_the_curve(form: str):
    """At his seven delays the drawn curve is at the values he printed, to 0.1."""
    svg = drawn(CURVES, form)
    x_scale, y_scale = across(svg, log=True), up(svg)
    read = points(marks(svg, "path")[0])
    assert [x_scale(x) for x, _ in read] == pytest.approx(MINUTES, rel=0.01)
    assert [y_scale(y) for _, y in read] == pytest.approx(PRINTED, abs=0.1)


@pytest.mark.parametrize("form", FORMS)
def test_his_savings_are_the_dots(form: str):
    """The seven dots are at the savings he observed, and are not the fit."""
    svg = drawn(CURVES, form)
    scale = up(svg)
    read = [scale(at(dot, "cy")[0]) for dot in marks(svg, "circle")[:7]]
    assert read == pytest.approx(SAVED, abs=0.1)
    assert read != pytest.approx(PRINTED, abs=0.1)
