"""What plain guesses would have cost, beside the predictions of the memory model."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum
from itertools import accumulate

from cards.retention.calibration import Bin, bin_of, expected_error, root_error
from cards.retention.losses import Cells, loss, standard_error
from cards.retention.shares import Share
from cards.retention.tally import Tally, total


class Guess(StrEnum):
    """A plain way to guess whether an item comes back."""

    TARGET = "always the target"
    EVEN = "always one in two"
    SO_FAR = "the share of all earlier months"
    MONTH_BEFORE = "the share of the month before"
    HINDSIGHT = "the share there turned out to be"


@dataclass(frozen=True, slots=True)
class Beside:
    """What a plain guess would have cost.

    Attributes:
        guess: which one.
        value: the probability it gives every answer; None where it changes by the month.
        log_loss, brier: as in `cards.retention.losses.Losses`.
        rmse_bins, ece: of one that is always the same: root error in bins of like history,
            and expected calibration error.
        gain: its log loss above that of the predictions: above 0, the predictions were better.
        gain_error: the standard error of that, answers paired; None where it changes.
    """

    guess: Guess
    value: float | None
    log_loss: float
    brier: float
    rmse_bins: float | None
    ece: float | None
    gain: float
    gain_error: float | None


def plain_guesses(
    cells: Cells,
    months: Mapping[str, Tally],
    bins: Mapping[str, Tally],
    target: float,
    log_loss: float,
) -> tuple[Beside, ...]:
    """Return what each plain guess would have cost; none where nothing was predicted.

    Args:
        cells: what is counted by thousandths predicted.
        months: by month, in order.
        bins: by history.
        target: the retention aimed for now.
        log_loss: of the predictions.
    """
    whole = total(cells.values())
    if not whole.foreseen:
        return ()
    fixed = {
        Guess.TARGET: target,
        Guess.EVEN: 0.5,
        Guess.HINDSIGHT: whole.came / whole.foreseen,
    }
    foreseen = [each for each in months.values() if each.foreseen]
    changing = {
        Guess.SO_FAR: accumulate(foreseen, lambda so_far, each: total((so_far, each))),
        Guess.MONTH_BEFORE: iter(foreseen),
    }
    return tuple(
        _always(guess, fixed[guess], cells, bins, log_loss)
        if guess in fixed
        else _by_month(guess, foreseen, changing[guess], log_loss)
        for guess in Guess
    )


def _always(
    guess: Guess, value: float, cells: Cells, bins: Mapping[str, Tally], log_loss: float
) -> Beside:
    whole = total(cells.values())
    lost, squares = _cost(whole, value)
    alike = [Bin(value, bin_of(each).share) for each in bins.values() if each.foreseen]
    return Beside(
        guess,
        value,
        lost / whole.foreseen,
        squares / whole.foreseen,
        root_error(alike),
        expected_error([Bin(value, Share(whole.came, whole.foreseen))]),
        lost / whole.foreseen - log_loss,
        standard_error(cells, value),
    )


def _by_month(
    guess: Guess, months: list[Tally], before: Iterator[Tally], log_loss: float
) -> Beside:
    """Return the cost of guessing, in each month, from what was known before it.

    The guess is (came + 1) / (n + 2) of what is known, Laplace's rule of succession (1774): in
    the first month one in two, and never certain.
    """
    lost = squares = 0.0
    n, known = 0, Tally()
    for month, after in zip(months, before, strict=True):
        cost = _cost(month, (known.came + 1) / (known.foreseen + 2))
        lost, squares = lost + cost[0], squares + cost[1]
        n += month.foreseen
        known = after
    return Beside(guess, None, lost / n, squares / n, None, None, lost / n - log_loss, None)


def _cost(tally: Tally, value: float) -> tuple[float, float]:
    """Return the summed log loss and squared error of one probability given to every answer."""
    came, gone = tally.came, tally.foreseen - tally.came
    lost = came * loss(value, came=True) + gone * loss(value, came=False)
    return lost, came * (1 - value) ** 2 + gone * value**2
