"""Which unasked items may be let in today."""

from collections import deque
from collections.abc import Iterable, Mapping

from cards.items import KeptItem
from cards.kinds import KINDS
from cards.kinds.base import KindName


def let_in(
    unasked: Iterable[KeptItem], a_day: int, asked: Mapping[KindName, int]
) -> list[KeptItem]:
    """Choose which unasked items may be let in today: all kinds among them, in turn.

    The next one is always of the kind of which fewest were let in that day, so that
    the day's items are the same however far the sitting has come.

    Args:
        unasked: in the order of their books; within a book in the digest's order.
        a_day: how many may be let in on a day.
        asked: how many of each kind were asked for the first time today already.
    """
    waiting: dict[KindName, deque[KeptItem]] = {name: deque() for name in KINDS}
    for kept in unasked:
        waiting[kept.item.kind].append(kept)
    counts = {name: asked.get(name, 0) for name in KINDS}
    chosen: list[KeptItem] = []
    for _ in range(a_day - sum(counts.values())):
        left = [name for name, queue in waiting.items() if queue]
        if not left:
            break
        name = min(left, key=counts.__getitem__)
        chosen.append(waiting[name].popleft())
        counts[name] += 1
    return chosen
