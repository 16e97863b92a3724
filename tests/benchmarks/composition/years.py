"""Six years of one reader under one policy."""

import numpy as np

from tests.benchmarks.composition.library import A_YEAR, AWAY, DAYS, seconds
from tests.benchmarks.composition.policies import Policy
from tests.benchmarks.composition.reader import Nature, Reader
from tests.benchmarks.composition.scheduler import Rows, Scheduler


def known_after(policy: Policy, minutes: float, nature: Nature, seed: int) -> float:
    """Return how many items the reader knows in the end: true recall, summed over all added.

    Every day but those away the items are asked in the policy's order, those that do not fit
    into what is left of the minutes passed over. What comes back blank is not asked again in
    the same sitting, under any policy.
    """
    reader, scheduler = Reader(nature, seed), Scheduler(seconds(seed))
    for day in range(DAYS):
        if day % A_YEAR in AWAY:
            continue
        scheduler.day = day
        rows = _fitting(policy.order(scheduler), scheduler.seconds, 60 * minutes)
        if len(rows):
            scheduler.record(rows, reader.ask(rows, day))
            policy.told(scheduler, rows)
    return reader.known(DAYS)


def _fitting(rows: Rows, seconds_of: np.ndarray, left: float) -> Rows:
    taken = []
    for row, cost in zip(rows.tolist(), seconds_of[rows].tolist(), strict=True):
        if cost <= left:
            taken.append(row)
            left -= cost
    return np.array(taken, dtype=np.int64)
