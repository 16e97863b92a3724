"""The weights that foresee each of many items, side by side."""

from collections.abc import Iterator, Sequence

import numpy as np
from numpy.typing import NDArray

from cards.kinds.base import KindName
from cards.sitting.worth_memory import Floats
from cards.weighting import Weighting, Weights

Places = NDArray[np.int64]


def apart(
    kinds: Sequence[KindName], weighting: Weighting
) -> Iterator[tuple[Weights, Places | slice]]:
    """Yield each set of weights that foresees some of the items, and the places of those."""
    if not weighting.by_kind:
        yield weighting.general, slice(None)
        return
    sets, which = _sets(kinds, weighting)
    for number, weights in enumerate(sets):
        places = np.flatnonzero(which == number)
        if len(places):
            yield weights, places


def weights_of(kinds: Sequence[KindName], weighting: Weighting) -> Floats:
    """Return the weights of each item: 21 rows, a column an item, or one column for all alike."""
    if not weighting.by_kind:
        return np.array(weighting.general, dtype=np.float64)[:, None]
    sets, which = _sets(kinds, weighting)
    every: Floats = np.array(sets, dtype=np.float64).T[:, which]
    return every


def at(weights: Floats, places: Places) -> Floats:
    """Return the weights of some of the items, as `weights_of` gives those of all."""
    return weights if weights.shape[1] == 1 else weights[:, places]


def _sets(kinds: Sequence[KindName], weighting: Weighting) -> tuple[list[Weights], Places]:
    """Return the distinct sets of weights, and for each item which of them foresees it."""
    sets = list(dict.fromkeys(weighting.of(kind) for kind in KindName))
    numbers = {kind: sets.index(weighting.of(kind)) for kind in KindName}
    return sets, np.array([numbers[kind] for kind in kinds], dtype=np.int64)
