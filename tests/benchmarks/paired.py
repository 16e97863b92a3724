"""Two ways of doing a thing, measured in turn within one run, and compared as a ratio."""

import gc
from collections.abc import Callable
from dataclasses import dataclass
from statistics import median
from time import perf_counter_ns


@dataclass(frozen=True)
class Ratio:
    """How long `ours` took against `theirs`: medians in microseconds, and their ratio.

    The ratio is the median of the ratios of neighbouring pairs, so that a machine that
    grows slower meanwhile slows both.
    """

    ours: float
    theirs: float
    ratio: float

    def __str__(self) -> str:
        return f"{self.ours:9.1f} µs against {self.theirs:9.1f} µs, {self.ratio:.2f} times"


def paired(
    ours: Callable[[], object], theirs: Callable[[], object], rounds: int, warm: int = 20
) -> Ratio:
    """Run both `rounds` times, A B B A A B B A, after `warm` rounds that do not count."""
    times: tuple[list[int], list[int]] = ([], [])
    gc.collect()
    gc.disable()
    try:
        for count in range(-warm, rounds):
            order = (0, 1) if count % 2 else (1, 0)
            for which in order:
                begin = perf_counter_ns()
                (ours, theirs)[which]()
                taken = perf_counter_ns() - begin
                if count >= 0:
                    times[which].append(taken)
    finally:
        gc.enable()
    ratios = [one / other for one, other in zip(*times, strict=True)]
    return Ratio(median(times[0]) / 1000, median(times[1]) / 1000, median(ratios))
