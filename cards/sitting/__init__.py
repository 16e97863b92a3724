"""Which items today's sitting asks, and in which order."""

from collections import deque
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from uuid import UUID

from cards.items import KeptItem
from cards.kinds import KINDS
from cards.kinds.base import KindName
from cards.parts import KeptDigest
from cards.schedule import Schedule


@dataclass(frozen=True, slots=True)
class Candidate:
    """An item that could be asked, with the digest it was made from."""

    kept: KeptItem
    digest: KeptDigest


def let_in(
    unasked: Iterable[KeptItem], a_day: int, asked: Mapping[KindName, int]
) -> list[KeptItem]:
    """Choose which unasked items are let in today: all kinds among them, in turn.

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


def compose(
    called: Sequence[Candidate], unasked: Sequence[Candidate], day: date, schedule: Schedule
) -> list[Candidate]:
    """Put a day's items in the order they are asked.

    Most at risk first, by the recall predicted for the day; then what is let in
    unasked; last what came back blank today and comes round again. An item whose pages
    show what another still asks comes after that other, or, where that cannot be, is
    left out for the day; where the other is one that comes round again, until it has
    come back and the sitting is composed anew.
    """
    returned = [each for each in called if _asked_on(each, day)]
    ahead = [each for each in called if not _asked_on(each, day)]
    ahead = [*_by_risk(ahead, day, schedule), *unasked]
    asked_again = frozenset[UUID]().union(*map(_asks, returned))
    ahead = [each for each in ahead if _shows(each).isdisjoint(asked_again)]
    return _nothing_given_away([*ahead, *_by_risk(returned, day, schedule)])


def _asked_on(candidate: Candidate, day: date) -> bool:
    memory = candidate.kept.memory
    return memory is not None and memory.last_day >= day


def _by_risk(candidates: Iterable[Candidate], day: date, schedule: Schedule) -> list[Candidate]:
    def risk(candidate: Candidate) -> tuple[float, UUID]:
        memory = candidate.kept.memory
        recall = 1.0 if memory is None else schedule.recall(memory, day)
        return recall, candidate.kept.item.id

    return sorted(candidates, key=risk)


def _nothing_given_away(candidates: Sequence[Candidate]) -> list[Candidate]:
    """Move each item behind those that ask what it shows, keeping the order otherwise."""
    asked_by: dict[UUID, list[Candidate]] = {}
    for each in candidates:
        for part_id in _asks(each):
            asked_by.setdefault(part_id, []).append(each)
    placed: dict[UUID, Candidate] = {}
    entered: set[UUID] = set()

    def place(candidate: Candidate) -> None:
        identity = candidate.kept.item.id
        if identity in entered:
            return
        entered.add(identity)
        for part_id in sorted(_shows(candidate)):
            for other in asked_by.get(part_id, ()):
                place(other)
        placed[identity] = candidate

    for each in candidates:
        place(each)
    return _without_givers_away(list(placed.values()))


def _without_givers_away(ordered: list[Candidate]) -> list[Candidate]:
    """Leave out what would still show a later item's answer: two that show each other's."""
    kept: list[Candidate] = []
    still_asked: set[UUID] = set()
    for each in reversed(ordered):
        if _shows(each).isdisjoint(still_asked):
            kept.append(each)
            still_asked |= _asks(each)
    return kept[::-1]


def _asks(candidate: Candidate) -> frozenset[UUID]:
    item = candidate.kept.item
    return KINDS[item.kind].asks(candidate.digest, candidate.digest.part(item.part_id))


def _shows(candidate: Candidate) -> frozenset[UUID]:
    item = candidate.kept.item
    return KINDS[item.kind].shows(candidate.digest, candidate.digest.part(item.part_id))
