"""How often a fit is adopted by readers whose memory is known, and whether it foresees better.

Three years and 300 books a reader, considered once at their end as `catchword tidy` does.
"""

from dataclasses import dataclass

from cards.fitting.considering import consider
from tests.benchmarks.recovery.histories import history
from tests.benchmarks.recovery.readers import READERS


@dataclass(frozen=True)
class Outcome:
    """What considering one reader's own weights came to.

    Attributes:
        adopted: whether weights for every kind were.
        kinds: how many kinds got weights of their own.
        better: whether the adopted weights foresaw the held-out answers better.
        in_force, proposed: log loss over them, in nats.
    """

    adopted: bool
    kinds: int
    better: bool
    in_force: float
    proposed: float


def outcome(reader: str, seed: int, books: int = 300) -> Outcome:
    """Return what considering a reader's own weights came to; `reader` is one of `READERS`."""
    found = consider(history(READERS[reader], seed, books).reviews)
    comparison = found.verdict.comparison
    assert comparison is not None
    return Outcome(
        found.verdict.adopted,
        sum(each.adopted for each in found.by_kind),
        found.verdict.adopted and comparison.gain > 0,
        comparison.in_force,
        comparison.proposed,
    )
