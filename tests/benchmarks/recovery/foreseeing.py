"""How much readers' next answers are lost to weights of different origin.

The loss is the one to be expected: of the true chance of each later answer, not of how it
happened to come out. So a few readers show what thousands of answers each would.
"""

from collections.abc import Callable, Iterable

import numpy as np

from cards.fitting.model import predictions
from cards.fitting.reviews import Reviews
from cards.schedule import DEFAULT_WEIGHTS
from tests.benchmarks.recovery.histories import history
from tests.benchmarks.recovery.readers import READERS, Floats

SIZES = {360: 120, 2_100: 120, 12_000: 300}
"""Answers a fit is given, and books the reader has finished after three years."""

Fitting = Callable[[Reviews], tuple[float, ...]]


def expected_losses(reader: str, seed: int, answers: int, fits: Iterable[Fitting]) -> list[float]:
    """Return the expected log loss, in nats, of a reader's next answers.

    Args:
        reader: one of `READERS`.
        seed: of the reader and of all chance.
        answers: how many scored ones the fits are given, the first ones; held out are as
            many after them.
        fits: how weights are found.

    Returns:
        By the published defaults, by each of the fits in turn, and by the truth.
    """
    told = history(READERS[reader], seed, books=SIZES[answers])
    reviews = told.reviews
    days = np.sort(reviews.days[reviews.scored])
    now, end = days[answers], days[min(2 * answers, len(days) - 1)]
    given = reviews.only(reviews.days < now)
    later = reviews.scored & (reviews.days >= now) & (reviews.days <= end)
    truth = told.truth[later]
    weights = (DEFAULT_WEIGHTS, *(fit(given) for fit in fits))
    foreseen = [predictions(reviews, each)[later] for each in weights]
    return [expected(recall, truth) for recall in (*foreseen, truth)]


def expected(recall: Floats, truth: Floats) -> float:
    """Return the mean log loss, in nats, that recall foreseen is to expect under the truth."""
    lost = truth * np.log(recall) + (1 - truth) * np.log(np.maximum(1 - recall, 1e-12))
    return -float(lost.mean())
