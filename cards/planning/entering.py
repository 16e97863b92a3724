"""In which order unasked items are let in."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from cards.kinds import KINDS
from cards.kinds.base import KindName
from cards.parts import Care
from cards.planning.library import Unasked


def entering(unasked: Sequence[Unasked], a_day: int, days: int) -> NDArray[np.int64]:
    """Return, item by item in the order they are let in, the place of its entry in `unasked`.

    As `cards.sitting.let_in` chooses them: on each day all kinds in turn, within a kind the
    first book first, and none of a book that rests.

    Args:
        unasked: in the order of their books.
        a_day: how many are let in on a day, 0 or more.
        days: for how many days, at the most.
    """
    waiting: dict[KindName, list[int]] = {name: [] for name in KINDS}
    for place, entry in enumerate(unasked):
        if entry.care is not Care.RESTING:
            waiting[entry.kind] += [place] * entry.count
    given = dict.fromkeys(KINDS, 0)
    order: list[int] = []
    for _ in range(days):
        room = a_day
        while room:
            left = [name for name in KINDS if given[name] < len(waiting[name])][:room]
            if not left:
                return np.array(order, dtype=np.int64)
            for name in left:
                order.append(waiting[name][given[name]])
                given[name] += 1
            room -= len(left)
    return np.array(order, dtype=np.int64)
