"""Whether proposed weights foresee held-out answers better than those in force, beyond doubt."""

import numpy as np
from numpy.typing import NDArray

from cards.fitting.gradient import losses
from cards.fitting.model import predictions
from cards.fitting.records import Comparison
from cards.fitting.reviews import KINDS, Floats, Reviews, Whole
from cards.weighting import Weighting

Rows = NDArray[np.bool_]

CERTAINTY = 2.0
"""Standard errors by which a gain for every kind must lie above 0.

Measured with 100 simulated readers of each sort after three years and 300 books
(`python -m tests.benchmarks.recovery`): where the published weights describe the reader exactly
no gain was above 1.5 errors, where other weights of the same model do none was below 2.8, where
another model does none below 10."""
CERTAINTY_OF_A_KIND = 2.75
"""The same for one kind: 8 are tried, and one moved wrongly is to stay as rare."""


def compared(
    reviews: Reviews, held_out: Rows, in_force: Weighting, proposed: Weighting
) -> Comparison:
    """Compare how two weightings foresaw the held-out answers.

    Memories are carried over the whole history. The standard error is that of a mean of
    differences that hang together within an item and within a day (an item misunderstood, a
    day of fever): clustered by the one and by the other, and the larger taken. Source: the
    cluster-robust variance of a mean (Liang & Zeger 1986, doi 10.1093/biomet/73.1.13; from
    memory), with the correction C / (C - 1) for few clusters.

    Args:
        reviews: whole histories.
        held_out: whether each row is held out; at least one is.
        in_force: the weights they are compared with.
        proposed: the weights that would take their place.
    """
    before = _losses(reviews, in_force)[held_out]
    after = _losses(reviews, proposed)[held_out]
    difference = before - after
    items, days = reviews.items[held_out], reviews.days[held_out]
    return Comparison(
        int(days.min()),
        float(before.mean()),
        float(after.mean()),
        max(clustered_error(difference, items), clustered_error(difference, days)),
    )


def clustered_error(values: Floats, clusters: Whole) -> float:
    """Return the standard error of the mean of values that hang together within clusters.

    Infinite where all stand in one cluster: nothing is known then of how they differ.
    """
    _, places = np.unique(clusters, return_inverse=True)
    sums = np.bincount(places, values - values.mean())
    count = len(sums)
    if count < 2:
        return float("inf")
    return float(np.sqrt(sums @ sums * count / (count - 1)) / len(values))


def better(comparison: Comparison, certainty: float) -> bool:
    """Tell whether the proposed weights foresee better, beyond so many standard errors."""
    return comparison.gain > certainty * comparison.error


def _losses(reviews: Reviews, weighting: Weighting) -> Floats:
    """Return the log loss of each row; of no meaning in those that are not scored."""
    found = np.zeros(len(reviews))
    for weights in {weighting.of(kind) for kind in KINDS}:
        rows = np.isin(
            reviews.kinds, [n for n, kind in enumerate(KINDS) if weighting.of(kind) == weights]
        )
        some = reviews.only(rows)
        recall = np.where(some.first, 1.0, predictions(some, weights))
        found[rows] = losses(recall, some.came_back)
    return found
