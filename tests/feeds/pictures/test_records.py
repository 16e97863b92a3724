"""What a picture is made of is checked when it is made: a fault of a view is found at once."""

from collections.abc import Callable
from datetime import date

import pytest

from service.use_cases.picture_records import (
    Axis,
    Calibration,
    Column,
    Curves,
    DayBar,
    Days,
    Dot,
    Foreseen,
    Grid,
    Line,
    Month,
    Months,
    Picture,
    Scale,
    Share,
    Shares,
    StepLine,
    Steps,
    Table,
    Unit,
    shown,
)
from tests.feeds.pictures.samples import SHARES, TABLE

NAN, DAY = float("nan"), date(2026, 1, 7)
AXIS = Axis("x")
ROW = Share("x", 0.5, 0.4, 0.6, 10)
LINE = StepLine("x", (), (), 1)


@pytest.mark.parametrize(
    "made",
    [
        lambda: Share("x", 0.5, 0.6, 0.7, 1),
        lambda: Share("x", NAN, 0, 1, 1),
        lambda: Share("x", 1.2, 0, 1.3, 1),
        lambda: Share("x", 0.5, 0, 1, 0),
        lambda: Shares((ROW,) * 401),
        lambda: Shares((), target=90),
        lambda: Foreseen(1.1, 0.5, 0, 1, 1),
        lambda: Foreseen(0.5, 0.5, 0, 1, 0),
        lambda: Calibration((Foreseen(0.5, 0.5, 0, 1, 1),) * 401),
        lambda: Axis("x", scale=Scale.LOG, start=0),
        lambda: Axis("x", Unit.DATE),
        lambda: Axis("x", start=NAN),
        lambda: Line("x", ((1, 0), (0, 0))),
        lambda: Line("x", ((0, NAN),)),
        lambda: Line("x", ((0, 0),) * 401),
        lambda: Dot(0, 0, low=0),
        lambda: Dot(0, 0, low=1, high=2),
        lambda: Curves(Axis("x", scale=Scale.LOG), AXIS, (Line("x", ((0, 1),)),)),
        lambda: Curves(AXIS, Axis("y", scale=Scale.LOG), ()),
        lambda: Curves(AXIS, AXIS, (Line("x", ()),) * 7),
        lambda: StepLine("x", ((1, 0.5), (2, 0.6)), (), 3),
        lambda: StepLine("x", ((1, 0.5),), (), 0.5),
        lambda: StepLine("x", ((1, 1.5),), (), 2),
        lambda: Steps(AXIS, "y", (LINE,) * 7),
        lambda: DayBar(DAY, -1),
        lambda: Days((DayBar(DAY, 1), DayBar(date(2026, 1, 6), 1)), "x", Unit.MINUTES),
        lambda: Days((DayBar(DAY, 1), DayBar(date(2028, 1, 6), 1)), "x", Unit.MINUTES),
        lambda: Grid("x", "y", ("a",), ("b", "c"), ((1,),)),
        lambda: Grid("x", "y", ("a",), ("b",), ((-1,),)),
        lambda: Grid("x", "y", ("a",) * 9, ("b",), ((1,),) * 9),
        lambda: Month(DAY, 1, 0, -1, 0),
        lambda: Months((Month(DAY, 1, 0, 0, 0),) * 61),
        lambda: Table((Column("a", "A", Unit.TEXT),), (("x", "y"),)),
        lambda: Picture("Not a slug", "x", "y", TABLE, SHARES),
        lambda: Picture("a" * 61, "x", "y", TABLE, SHARES),
    ],
)
def test_a_faulty_picture_cannot_be_made(made: Callable[[], object]):
    """What is not finite, out of order, out of bounds or too much is a ValueError."""
    with pytest.raises(ValueError, match=r"\w"):
        made()


def test_an_interval_may_miss_its_share_by_rounding():
    """A bound worked out in floating point is no fault."""
    assert Share("x", 0.0, 1e-17, 0.2, 20).low == 1e-17


@pytest.mark.parametrize(
    ("cell", "unit", "said"),
    [
        (None, Unit.SHARE, "–"),
        (0.8472, Unit.SHARE, "84.7%"),
        (1, Unit.SHARE, "100.0%"),
        (12_345, Unit.COUNT, "12,345"),
        (7.25, Unit.MINUTES, "7.2"),
        (0.21616, Unit.NUMBER, "0.216"),
        (date(2026, 1, 7), Unit.DATE, "7 Jan 2026"),
        ("theme", Unit.TEXT, "theme"),
    ],
)
def test_figures_are_shown_as_they_are_read(cell: object, unit: Unit, said: str):
    """A figure is written in its unit, with as many decimals as mean something."""
    assert shown(cell, unit) == said
