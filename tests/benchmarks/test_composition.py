"""What a composed sitting keeps against other policies, in a small version of the simulation."""

from collections.abc import Callable

import numpy as np
import pytest

from tests.benchmarks.composition.composed import Composed
from tests.benchmarks.composition.policies import Due, Leitner, Policy, Tabibian
from tests.benchmarks.composition.reader import READERS
from tests.benchmarks.composition.years import known_after

SEEDS = (31, 32)
BEST: dict[int, list[Callable[[], Policy]]] = {
    3: [
        lambda: Due(0.7, new_first=False, by_recall=True),
        lambda: Leitner(100, new_first=False),
        Tabibian,
    ],
    5: [
        lambda: Due(0.8, new_first=True, by_recall=True),
        lambda: Leitner(40, new_first=True),
    ],
    10: [lambda: Leitner(100, new_first=False)],
}
"""Of the whole table's policies the best ones at each number of minutes, and one published."""


def known(make: Callable[[], Policy], minutes: int) -> float:
    """Return what is known in the end, the mean of two runs."""
    return float(np.mean([known_after(make(), minutes, READERS["mixture"], s) for s in SEEDS]))


@pytest.mark.parametrize(("minutes", "more"), [(3, 1.15), (5, 1.08), (10, 0.99)])
def test_a_composed_sitting_keeps_more_than_any_other_policy(minutes, more):
    """After six years more is known than under the best of the others, for the same minutes.

    The goals are 15, 8 and 0 in a hundred over ten runs (`python -m
    tests.benchmarks.composition`); two runs are held to one in
    a hundred less at 10, where whoever asks enough keeps nearly all.
    """
    highest = max(known(make, minutes) for make in BEST[minutes])
    assert known(Composed, minutes) >= more * highest
