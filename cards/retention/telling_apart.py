"""Whether what came back had been given more than what did not."""

from dataclasses import dataclass

from cards.retention.losses import Cells


@dataclass(frozen=True, slots=True)
class Auc:
    """The area under the curve of hits against false alarms.

    Attributes:
        area: how often one that came back had the greater prediction than one that did not,
            ties counted half (Hanley & McNeil 1982, from memory); 0.5 tells nothing apart.
        within: how far at most that is from the area of the unrounded predictions: two in one
            thousandth are counted as tied, and may be wrong by a half.
    """

    area: float
    within: float


def auc(cells: Cells) -> Auc | None:
    """Return the area; None where all came back, or nothing did."""
    came = sum(tally.came for tally in cells.values())
    gone = sum(tally.foreseen - tally.came for tally in cells.values())
    if not came or not gone:
        return None
    below = twice = tied = 0
    for thousandth in sorted(cells):
        tally = cells[thousandth]
        blank = tally.foreseen - tally.came
        twice += tally.came * (2 * below + blank)
        tied += tally.came * blank
        below += blank
    pairs = came * gone
    return Auc(twice / (2 * pairs), tied / (2 * pairs))
