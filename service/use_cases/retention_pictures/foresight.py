"""What was foretold before each answer, against what came back."""

from service.use_cases.picture_records import (
    Calibration,
    Column,
    Foreseen,
    Picture,
    Table,
    Unit,
)
from service.use_cases.retaining import Retained
from service.use_cases.retention_pictures.words import counted, percent

NOTHING = "No answer has a prediction yet: recall is foretold from the second asking of an item on."
_COLUMNS = (
    Column("predicted", "Foretold, on average", Unit.SHARE),
    Column("asked", "Answers", Unit.COUNT),
    Column("came_back", "Came back", Unit.COUNT),
    Column("share", "Share", Unit.SHARE),
    Column("low", "From", Unit.SHARE),
    Column("high", "To", Unit.SHARE),
)
_FEW = 100
"""Answers below which a curve tells little: ten bins of ten."""


def calibration(retained: Retained) -> Picture:
    """Return the shares that came back over what was foretold, in bins of about as many."""
    quality = retained.figures.quality
    bins = () if quality is None else quality.curve
    told = NOTHING
    if quality is not None:
        losses = quality.losses
        told = (
            f"Foretold was that {percent(losses.predicted)} would come back; "
            f"{percent(losses.share)} did, of {counted(losses.n, 'answer')}. On the diagonal the "
            "two agree; below it, less came back than was foretold."
        )
        if losses.n < _FEW:
            told += f" With fewer than {_FEW} answers chance still draws most of this."
    return Picture(
        "calibration",
        "What was foretold, and what came back",
        told,
        Table(
            _COLUMNS,
            tuple(
                (
                    each.predicted,
                    each.share.asked,
                    each.share.recalled,
                    each.share.share,
                    *each.share.bounds,
                )
                for each in bins
            ),
        ),
        Calibration(
            tuple(
                Foreseen(
                    each.predicted,
                    each.share.recalled / each.share.asked,
                    *each.share.bounds,
                    each.share.asked,
                )
                for each in bins
            )
        ),
    )
