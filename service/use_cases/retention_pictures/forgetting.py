"""The forgetting curve fitted to what happened."""

from math import exp, log, sqrt

from cards.retention.ages import AgeClass
from cards.retention.forgetting import Curve
from service.use_cases.picture_records import (
    Axis,
    Column,
    Curves,
    Dot,
    Line,
    Picture,
    Scale,
    Table,
    Unit,
)
from service.use_cases.retaining import Retained
from service.use_cases.retention_pictures.words import listed, percent

_COLUMNS = (
    Column("age", "Days since it was asked before", Unit.TEXT),
    Column("asked", "Asked", Unit.COUNT),
    Column("came_back", "Came back", Unit.COUNT),
    Column("share", "Share", Unit.SHARE),
    Column("low", "From", Unit.SHARE),
    Column("high", "To", Unit.SHARE),
    Column("predicted", "Foretold, on average", Unit.SHARE),
    Column("power", "Power curve", Unit.SHARE),
    Column("exponential", "Exponential", Unit.SHARE),
)
_POINTS = 80
_OLDEST = 1_460
"""Where the open class of over two years is drawn to: four years."""
_FEWEST_AHEAD = 30
_TOLD = (("a day", 1), ("a week", 7), ("a month", 30), ("a year", 365))


def forgetting(retained: Retained) -> Picture:
    """Return what came back by the age of the memory, and the curves that lie closest to it."""
    found = retained.figures.forgetting
    told = (
        "A curve is fitted from fifty answers of different ages on, some of which came back and "
        "some did not."
    )
    lines: tuple[Line, ...] = ()
    if found.power is not None and found.exponential is not None:
        end = max(_FEWEST_AHEAD, *(_middle(each.age) for each in found.ages)) * 1.25
        lines = (
            _line("power curve", found.power, end),
            _line("exponential", found.exponential, end),
        )
        oldest = found.ages[-1].age
        told = _told(found.power, found.exponential, oldest)
    return Picture(
        "forgetting",
        "The forgetting curve, against what happened",
        told,
        Table(
            _COLUMNS,
            tuple(
                (
                    each.age.words,
                    each.share.asked,
                    each.share.recalled,
                    each.share.share,
                    *each.share.bounds,
                    each.predicted,
                    None if found.power is None else found.power.at(_middle(each.age)),
                    None if found.exponential is None else found.exponential.at(_middle(each.age)),
                )
                for each in found.ages
            ),
        ),
        Curves(
            Axis("days since it was asked before", Unit.DAYS, Scale.LOG, start=1.0),
            Axis("share that came back", Unit.SHARE),
            lines,
            tuple(
                Dot(_middle(each.age), each.share.recalled / each.share.asked, *each.share.bounds)
                for each in found.ages
            ),
            "what came back",
        ),
    )


def _middle(age: AgeClass) -> float:
    """Return the age a class is drawn at: the geometric mean of its days."""
    return sqrt(age.first * (_OLDEST if age.last is None else age.last))


def _line(label: str, curve: Curve, end: float) -> Line:
    days = [exp(log(end) * place / (_POINTS - 1)) for place in range(_POINTS)]
    return Line(label, tuple((each, curve.at(each)) for each in days))


def _told(power: Curve, exponential: Curve, oldest: AgeClass) -> str:
    """Return what the curves say of ages that were asked, and which of them lies closer."""
    better, other = ("power curve", "exponential")
    if exponential.log_loss < power.log_loss:
        better, other = other, better
    reached = [
        f"{percent(power.at(days))} after {words}"
        for words, days in _TOLD
        if days <= (oldest.last or days)
    ]
    return (
        f"By the power curve what comes back is {listed(reached)}. The {better} lies closer to "
        f"what happened than the {other}."
    )
