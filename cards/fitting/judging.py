"""Whether proposed weights foresee held-out answers better than those in force, beyond doubt."""

from math import log

import numpy as np
from numpy.typing import NDArray

from cards.fitting.gradient import LEAST_SURPRISE, losses
from cards.fitting.model import predictions
from cards.fitting.records import Comparison
from cards.fitting.reviews import KINDS, Floats, Reviews, Whole
from cards.weighting import Weighting

Rows = NDArray[np.bool_]

CERTAINTY, ODDS = 2.0, 100.0
"""Standard errors, and odds, beyond which a gain for every kind must lie.

Measured with 100 simulated readers of each sort after three years and 300 books
(`python -m tests.benchmarks.recovery`): where the published weights describe the reader exactly
the gain was at most 1.6 errors and 30 to 1, where other weights of the same model do at least
2.7 errors and a million to 1, where another model does at least 10 errors. The error alone is
not enough: of 17 exact readers considered each time they had given a tenth more answers, three
had a gain above 2 errors once, and none of those came near 100 to 1 of odds."""
CERTAINTY_OF_A_KIND, ODDS_OF_A_KIND = 2.75, 800.0
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
    came_back = reviews.came_back[held_out]
    foreseen = [_foreseen(reviews, each)[held_out] for each in (in_force, proposed)]
    before, after = (losses(recall, came_back) for recall in foreseen)
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


def better(comparison: Comparison, answers: int, *, kind: bool = False) -> bool:
    """Tell whether the proposed weights foresee better, beyond doubt.

    Their gain lies far enough above 0 for its error, and all of it together makes the proposed
    likelier than those in force at enough odds: were these true, the likelihood ratio of weights
    fixed beforehand would reach odds of k in at most one case of k, however few answers there
    are and however few of them by luck came back blank, which the error does not know. Source:
    Ville 1939, Étude critique de la notion de collectif (from memory).

    Args:
        comparison: of the two over the held-out answers.
        answers: how many those are.
        kind: whether they are of one kind, of which several are tried.
    """
    certainty, odds = (CERTAINTY_OF_A_KIND, ODDS_OF_A_KIND) if kind else (CERTAINTY, ODDS)
    evidence = comparison.gain * answers
    return comparison.gain > certainty * comparison.error and evidence > log(odds)


def _foreseen(reviews: Reviews, weighting: Weighting) -> Floats:
    """Return the recall foreseen before each row, by the weights of its kind."""
    found = np.empty(len(reviews))
    for weights in {weighting.of(kind) for kind in KINDS}:
        rows = np.isin(
            reviews.kinds, [n for n, kind in enumerate(KINDS) if weighting.of(kind) == weights]
        )
        found[rows] = predictions(reviews.only(rows), weights)
    return np.minimum(found, 1 - LEAST_SURPRISE)
