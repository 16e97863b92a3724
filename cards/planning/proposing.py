"""Which target is proposed."""

from collections.abc import Sequence
from statistics import fmean

from cards.planning.records import Proposal

HARDLY_MORE = 1.05
"""Targets that take no more than this share of the fewest minutes are as good: the model and
its weights are not known so exactly."""


def proposal(targets: Sequence[float], until_lasting: Sequence[float | None]) -> Proposal | None:
    """Return the target under which items last for the fewest minutes; None where none do.

    Each target is taken with the two on either side, since intervals of a few days are rounded
    to whole ones and make a single target better or worse by chance.

    Args:
        targets: from the lowest to the highest.
        until_lasting: minutes an item takes under each; None where it does not last.
    """
    known = [(place, each) for place, each in enumerate(until_lasting) if each is not None]
    if not known:
        return None
    minutes = {
        place: fmean(other for near, other in known if abs(near - place) <= 2) for place, _ in known
    }
    fewest = min(minutes.values())
    best = next(place for place, each in minutes.items() if each == fewest)
    low = high = best
    while minutes.get(low - 1, 2 * HARDLY_MORE * fewest) <= HARDLY_MORE * fewest:
        low -= 1
    while minutes.get(high + 1, 2 * HARDLY_MORE * fewest) <= HARDLY_MORE * fewest:
        high += 1
    return Proposal(
        target=targets[best],
        alike_from=targets[low],
        alike_to=targets[high],
        at_edge=best in (0, len(targets) - 1),
    )
