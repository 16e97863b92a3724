"""Pictures of every kind, of an invented reader's books."""

import math
from datetime import date, timedelta

from service.use_cases.picture_records import (
    Axis,
    Calibration,
    Column,
    Curves,
    DayBar,
    Days,
    Dot,
    Drawing,
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
)

HOSTILE = "<script>alert(1)</script> & “quoted” 'title' \x00\x1b]]>\u202e <b style=\"x\">"
"""A title no page should take at its word."""
LONG = (
    "The Anatomy of Melancholy, What It Is, With All the Kinds, Causes, Symptoms, Prognostics, "
    "and Several Cures of It"
)
TABLE = Table(
    (
        Column("book", "Book", Unit.TEXT),
        Column("share", "Came back", Unit.SHARE),
        Column("low", "From", Unit.SHARE),
        Column("high", "To", Unit.SHARE),
        Column("n", "Answers", Unit.COUNT),
    ),
    (
        ("Middlemarch", 0.8472, 0.8, 0.9, 305),
        (HOSTILE, None, None, None, 0),
        ("W" * 300, 1.0, 0.51, 1.0, 4),
    ),
)

SHARES = Shares(
    (
        Share("Middlemarch", 0.92, 0.88, 0.95, 262),
        Share(LONG, 0.62, 0.44, 0.77, 29),
        Share(HOSTILE, 0.9, 0.6, 0.98, 10),
        Share("Meditations", 0.0, 0.0, 0.49, 4),
        Share("W" * 300, 1.0, 0.51, 1.0, 1_234_567),
    ),
    target=0.85,
)
CALIBRATION = Calibration(
    (
        Foreseen(0.15, 0.22, 0.06, 0.55, 9),
        Foreseen(0.745, 0.7625, 0.66, 0.84, 80),
        Foreseen(0.86, 0.88, 0.84, 0.91, 352),
        Foreseen(0.95, 0.964, 0.94, 0.98, 309),
        Foreseen(0.99, 1.0, 0.96, 1.0, 90),
    )
)
CURVES = Curves(
    Axis("since it was last asked", Unit.DAYS, Scale.LOG, start=1, end=730),
    Axis("share that came back", Unit.SHARE, start=0.4),
    (
        Line("your weights", tuple((t, (1 + t / 60) ** -0.2) for t in (1, 3, 9, 27, 81, 243, 730))),
        Line("published weights", tuple((t, (1 + t / 30) ** -0.2) for t in (1, 9, 81, 730))),
    ),
    (Dot(2, 0.97, 0.95, 0.99), Dot(34, 0.91, 0.88, 0.94, "n = 120"), Dot(400, 0.66, 0.5, 0.82)),
    "what came back",
)
STEPS = Steps(
    Axis("days since it was first asked", Unit.DAYS),
    "not yet blank",
    (
        StepLine("quotations to complete", ((20, 0.9), (90, 0.7), (200, 0.4)), (30, 150), 300),
        StepLine("commitments to restate", ((60, 0.95),), (70, 70, 210), 210),
    ),
)
FIRST = date(2026, 11, 27)
DAYS = Days(
    tuple(DayBar(FIRST + timedelta(n), min(20.0, 9.0 + n), max(0.0, n - 11.0)) for n in range(28)),
    "minutes a day",
    Unit.MINUTES,
    20,
    "your 20 minutes",
    "more than fits",
)
YEAR = Days(
    tuple(
        DayBar(FIRST + timedelta(n), 12 + 8 * math.sin(n), 1.0) for n in range(365) if n % 50 != 7
    ),
    "minutes a day",
    Unit.MINUTES,
)
_GRADES = ("blank", "hazy", "clear", "vivid")
GRID = Grid(
    "suggested",
    "your own grade",
    _GRADES,
    _GRADES,
    ((61, 14, 3, 0), (12, 88, 41, 2), (1, 19, 400, 57), (0, 2, 38, 211)),
)
MONTHS = Months(
    tuple(
        Month(date(2025 + (5 + n) // 12, (5 + n) % 12 + 1, 1), 4 + n % 7, n % 4, n % 3, n % 2)
        for n in range(18)
    )
)
DRAWINGS: dict[str, Drawing] = {
    "shares": SHARES,
    "calibration": CALIBRATION,
    "curves": CURVES,
    "steps": STEPS,
    "days": DAYS,
    "year": YEAR,
    "grid": GRID,
    "months": MONTHS,
}
NOTHING: dict[str, Drawing] = {
    "shares": Shares(()),
    "calibration": Calibration(()),
    "curves": Curves(CURVES.across, CURVES.up, (Line("nothing", ()),)),
    "steps": Steps(STEPS.across, STEPS.up, ()),
    "days": Days((DayBar(FIRST, 0),), "minutes a day", Unit.MINUTES),
    "grid": Grid("suggested", "your own grade", ("blank",), ("blank",), ((0,),)),
    "months": Months((Month(FIRST, 0, 0, 0, 0),)),
}


def picture(drawing: Drawing, name: str = "by-book", title: str = "What came back") -> Picture:
    """Return a picture of a drawing."""
    return Picture(name, title, "Of 305 answers, 267 came back.", TABLE, drawing)
