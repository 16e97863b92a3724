"""Fitting a reader's weights to 100,000 answers against a compiled optimiser on the same."""

from fsrs_rs_python import DEFAULT_PARAMETERS, FSRS

from cards.fitting.likeliest import fit
from tests.benchmarks.paired import Ratio, paired
from tests.benchmarks.recovery.compiled import items_of
from tests.benchmarks.recovery.histories import history
from tests.benchmarks.recovery.readers import other_weights

LIMIT = 30
BOOKS = 720
"""Of ten items each, finished over three years: 100,000 answers and some."""


def measure(rounds: int = 3) -> Ratio:
    """Measure one fit from the published defaults; what each package is handed is made before."""
    reviews = history(other_weights, 1, BOOKS).reviews
    assert len(reviews) >= 100_000
    items, cards = items_of(reviews)
    compiled = FSRS(list(DEFAULT_PARAMETERS))

    def theirs() -> object:
        return compiled.compute_parameters(items, card_ids=cards)

    return paired(lambda: fit(reviews), theirs, rounds, warm=1)
