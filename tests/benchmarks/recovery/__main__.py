"""Print what a fit finds out of known memories: `python -m tests.benchmarks.recovery [strength]`.

Without a word after it, how often a fit is adopted in 100 seeds, and the log loss of readers'
next answers against that of a compiled optimiser; some ten minutes of two cores. With
`strength`, the same loss by how much the prior counts, from which that was chosen: for every
kind, and for one.
"""

import sys
from collections.abc import Callable, Sequence
from concurrent.futures import ProcessPoolExecutor
from functools import partial
from itertools import repeat

import numpy as np

from cards.fitting.likeliest import fit
from cards.schedule import DEFAULT_WEIGHTS
from tests.benchmarks.recovery.compiled import fit_compiled
from tests.benchmarks.recovery.considered import Outcome, outcome
from tests.benchmarks.recovery.foreseeing import SIZES, Fitting, expected_losses
from tests.benchmarks.recovery.one_kind import APART, OF_THE_KIND, losses_of_a_kind
from tests.benchmarks.recovery.readers import READERS

SEEDS = range(1, 101)
FEWER_SEEDS = range(1, 21)
CHOOSING = range(1001, 1013)
"""Not those the other tables are made with."""
STRENGTHS = (0.25, 0.5, 1.0, 2.0, 4.0)
KIND_STRENGTHS = (0.5, 1.0, 2.0, 4.0, 8.0)


def _adoptions(pool: ProcessPoolExecutor) -> None:
    print(f"of {len(SEEDS)} seeds      adopted  better  for a kind   in force  proposed")
    for reader in READERS:
        found: list[Outcome] = list(pool.map(outcome, repeat(reader), SEEDS))
        print(
            f"{reader:18}{sum(each.adopted for each in found):8}"
            f"{sum(each.better for each in found):8}{sum(each.kinds > 0 for each in found):12}"
            f"{np.mean([each.in_force for each in found]):11.4f}"
            f"{np.mean([each.proposed for each in found]):10.4f}",
            flush=True,
        )


def _losses(
    pool: ProcessPoolExecutor, names: Sequence[str], fits: Sequence[Fitting], seeds: range
) -> None:
    print(f"\n{'next answers':26}" + "".join(f"{name:>10}" for name in names))
    for reader in READERS:
        for answers in SIZES:
            rows = pool.map(
                partial(expected_losses, fits=fits), repeat(reader), seeds, repeat(answers)
            )
            means = np.mean(list(rows), axis=0)
            print(
                f"{reader:18}{answers:8,}" + "".join(f"{each:10.4f}" for each in means), flush=True
            )


def _losses_of_a_kind(pool: ProcessPoolExecutor, strengths: Sequence[float]) -> None:
    print(
        f"\n{'a kind apart by':26}   general" + "".join(f"{each:>10}" for each in strengths), end=""
    )
    print(f"{'truth':>10}")
    for apart in APART:
        for answers in OF_THE_KIND:
            one = partial(losses_of_a_kind, strengths=strengths)
            rows = pool.map(one, repeat(apart), CHOOSING, repeat(answers))
            means = np.mean(list(rows), axis=0)
            print(
                f"{apart:<18}{answers:8,}" + "".join(f"{each:10.4f}" for each in means), flush=True
            )


def _of_strength(strength: float) -> Callable[..., tuple[float, ...]]:
    return partial(fit, centre=DEFAULT_WEIGHTS, strength=strength)


if __name__ == "__main__":
    with ProcessPoolExecutor(2) as workers:
        if sys.argv[1:] == ["strength"]:
            by_strength = ("defaults", *map(str, STRENGTHS), "truth")
            _losses(workers, by_strength, [*map(_of_strength, STRENGTHS)], CHOOSING)
            _losses_of_a_kind(workers, KIND_STRENGTHS)
        else:
            _adoptions(workers)
            compared = ("defaults", "ours", "compiled", "truth")
            _losses(workers, compared, (fit, fit_compiled), FEWER_SEEDS)
