"""Predictions against shares: of what was given a probability, so much should come back."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import sqrt

from cards.retention.losses import Cells
from cards.retention.shares import Share
from cards.retention.tally import BILLION, Tally, total


@dataclass(frozen=True, slots=True)
class Bin:
    """Answers with much the same prediction, or the same history.

    Attributes:
        predicted: the mean recall predicted, 0 to 1.
        share: what came back of them; never of nothing.
    """

    predicted: float
    share: Share

    @property
    def error(self) -> float:
        """How far the share lies above what was predicted."""
        return self.share.recalled / self.share.asked - self.predicted


def bin_of(tally: Tally) -> Bin:
    """Return the answers of a tally that had a prediction as one bin; at least one must."""
    n = tally.foreseen
    return Bin(tally.predicted / n / BILLION, Share(tally.came, n))


def by_width(cells: Cells, most: int) -> tuple[Bin, ...]:
    """Return bins that are equally wide, those without an answer left out.

    A prediction on a border belongs to the bin below it, as scikit-learn has it.
    """
    found: dict[int, list[Tally]] = {}
    for thousandth, tally in cells.items():
        place = max(0, -(-thousandth * most // 1000) - 1)
        found.setdefault(place, []).append(tally)
    return tuple(bin_of(total(found[place])) for place in sorted(found))


def by_count(cells: Cells, most: int) -> tuple[Bin, ...]:
    """Return at most so many bins of about as many answers each; no thousandth is split.

    Predictions crowd near the target: bins of equal width would hold all or nothing.
    """
    wanted = sum(tally.foreseen for tally in cells.values())
    bins: list[Bin] = []
    held: list[Tally] = []
    seen = 0
    for thousandth in sorted(cells):
        held.append(cells[thousandth])
        seen += cells[thousandth].foreseen
        if seen * most >= wanted * (len(bins) + 1):
            bins.append(bin_of(total(held)))
            held = []
    return tuple(bins)


def expected_error(bins: Iterable[Bin]) -> float | None:
    """Return the expected calibration error: the mean of |share - predicted|, by answers.

    Naeini, Cooper & Hauskrecht 2015, AAAI 29 (from memory). None of no bins.
    """
    weights = [(each.share.asked, abs(each.error)) for each in bins]
    n = sum(asked for asked, _ in weights)
    return sum(asked * error for asked, error in weights) / n if n else None


def root_error(bins: Iterable[Bin]) -> float | None:
    """Return the root of the mean of (share - predicted)², by answers; None of no bins.

    Over bins of like history this is the RMSE in bins of the FSRS packages, which weigh what
    was answered lately more; here every answer weighs the same.
    """
    weights = [(each.share.asked, each.error**2) for each in bins]
    n = sum(asked for asked, _ in weights)
    return sqrt(sum(asked * square for asked, square in weights) / n) if n else None
