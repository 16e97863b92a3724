"""How well the memory model predicted: judged on what it said before each answer."""

from dataclasses import dataclass

from cards.kinds.base import KindName
from cards.retention.calibration import Bin, bin_of, by_count, expected_error, root_error
from cards.retention.guesses import Beside, plain_guesses
from cards.retention.losses import Losses, losses_of, standard_error
from cards.retention.reading import Sorted
from cards.retention.tally import total
from cards.retention.telling_apart import Auc, auc

BINS = 10
"""Bins of the calibration curve, at most: of a hundred answers, ten each."""


@dataclass(frozen=True, slots=True)
class Quality:
    """How well recall was predicted.

    Attributes:
        losses: of all answers with a prediction.
        log_loss_error: the standard error of the log loss, or None of a single answer.
        rmse_bins: the root of the mean squared error over bins of like history.
        ece: the expected calibration error over the bins of the curve.
        auc: whether what came back had been given more; None where all or nothing did.
        curve: the calibration curve, in bins of about as many answers each.
        guesses: what plain guesses would have cost on the same answers.
        by_kind, by_month: the losses of each with a prediction, in order.
    """

    losses: Losses
    log_loss_error: float | None
    rmse_bins: float
    ece: float
    auc: Auc | None
    curve: tuple[Bin, ...]
    guesses: tuple[Beside, ...]
    by_kind: tuple[tuple[KindName, Losses], ...]
    by_month: tuple[tuple[str, Losses], ...]


def quality_of(sorts: Sorted, target: float) -> Quality | None:
    """Return how well recall was predicted; None where nothing was."""
    cells = sorts.thousandths
    losses = losses_of(total(cells.values()))
    curve = by_count(cells, BINS)
    rmse, ece = root_error(map(bin_of, sorts.bins.values())), expected_error(curve)
    if losses is None or rmse is None or ece is None:
        return None
    kinds = ((kind, losses_of(sorts.of_kind(kind))) for kind in KindName)
    months = ((month, losses_of(tally)) for month, tally in sorts.months.items())
    return Quality(
        losses,
        standard_error(cells),
        rmse,
        ece,
        auc(cells),
        curve,
        plain_guesses(cells, sorts.months, sorts.bins, target, losses.log_loss),
        tuple((kind, each) for kind, each in kinds if each is not None),
        tuple((month, each) for month, each in months if each is not None),
    )
