"""Print what is known after six years: `python -m tests.benchmarks.composition [reader]`.

Ten runs of every policy at 3, 5 and 10 minutes a day, some six minutes of one core.
"""

import sys
from collections.abc import Callable

import numpy as np

from tests.benchmarks.composition.composed import Composed, Greedy
from tests.benchmarks.composition.policies import Policy, baselines
from tests.benchmarks.composition.reader import READERS
from tests.benchmarks.composition.years import known_after

MINUTES = (3, 5, 10)
SEEDS = range(2001, 2011)
"""Not those on which the constants of `cards.sitting` were chosen."""

OURS: dict[str, Callable[[], Policy]] = {
    "greedily, of what is due at 0.9": Greedy,
    "composed, of what is due at 0.9": Composed,
    "composed, of what is due at 0.95": lambda: Composed(0.95),
    "composed, of all, due or not": lambda: Composed(ahead=True),
}


def _row(name: str, make: Callable[[], Policy], nature: str) -> list[float]:
    known = [
        float(np.mean([known_after(make(), minutes, READERS[nature], seed) for seed in SEEDS]))
        for minutes in MINUTES
    ]
    print(f"{name:42}" + "".join(f"{each:9.0f}" for each in known), flush=True)
    return known


if __name__ == "__main__":
    reader = sys.argv[1] if len(sys.argv) > 1 else "mixture"
    print(
        f"{'known after six years, reader: ' + reader:42}", *(f"{each:5} min" for each in MINUTES)
    )
    others = [_row(name, lambda name=name: baselines()[name], reader) for name in baselines()]
    highest = np.max(others, axis=0)
    for name, make in OURS.items():
        gained = np.array(_row(name, make, reader)) / highest - 1
        print(f"{'  over the best of the others':42}" + "".join(f"{each:+9.1%}" for each in gained))
