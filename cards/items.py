"""From a kept digest to its items, and how each stands."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import lru_cache
from uuid import UUID, uuid5

from cards.answers import Grade
from cards.kinds import KINDS
from cards.kinds.base import KindName, Occasion, Shelved
from cards.parts import Care, KeptDigest
from cards.schedule import Memory

_ITEMS = UUID("5e8b6f0e-6d2c-5b1e-9c57-0a7c5c1f7f10")


@dataclass(frozen=True, slots=True)
class Item:
    """One thing to recall, made from one part of a digest.

    Attributes:
        id: derived from the part's id and the kind, so that it outlives edits.
        retired: whether its source is gone; its history is kept.
    """

    id: UUID
    kind: KindName
    digest_id: UUID
    part_id: UUID
    number: int
    retired: bool = False


class Standing(StrEnum):
    """How an item stands with the reader's memory."""

    UNASKED = "unasked"
    SETTLING = "settling"
    HELD = "held"
    FADED = "faded"


HELD_FROM = 21.0
"""Days of stability from which an item counts as held: three weeks, our own convention.

Forgetting curves are steep over the first days and flat after some weeks (Ebbinghaus
1885: 25.4% of savings after six days, 21.1% after thirty-one)."""


@dataclass(frozen=True, slots=True)
class KeptItem:
    """An item in a reader's library.

    Attributes:
        memory: what its answers come to; None while unasked.
        care: how much of its book is kept.
    """

    item: Item
    memory: Memory | None
    care: Care = Care.STEADY

    @property
    def standing(self) -> Standing:
        """Unasked, faded when it last came back blank, held from three weeks' stability."""
        if self.memory is None:
            return Standing.UNASKED
        if self.memory.last_grade is Grade.BLANK:
            return Standing.FADED
        return Standing.HELD if self.memory.stability >= HELD_FROM else Standing.SETTLING


def occasion_of(kept: KeptItem, digest: KeptDigest, shelf: tuple[Shelved, ...] = ()) -> Occasion:
    """Return the next asking of an item: what its cue, its answer and its marking depend on."""
    return Occasion(
        digest=digest,
        part=digest.part(kept.item.part_id),
        asked=kept.memory.answers if kept.memory else 0,
        held=kept.standing is Standing.HELD,
        shelf=shelf,
    )


def item_id(part_id: UUID, kind: KindName) -> UUID:
    """Return the identity of the item of a kind made from a part."""
    return uuid5(_ITEMS, f"{part_id}:{kind.value}")


# A digest that is taken in is asked for its items to keep them, and to say how many they are.
@lru_cache(maxsize=16)
def items_of(kept: KeptDigest) -> tuple[Item, ...]:
    """Return every item a kept digest makes now, in the order of kinds and parts."""
    if kept.removed:
        return ()
    return tuple(
        Item(item_id(part.id, kind.name), kind.name, kept.id, part.id, part.number)
        for kind in KINDS.values()
        for part in kind.sources(kept)
    )


def reconcile(made: Iterable[Item], known: Iterable[Item]) -> tuple[Item, ...]:
    """Return all items of a digest: those it makes now, and the rest retired.

    An item whose source is gone is retired, never dropped; one whose source came
    back is the same item again.
    """
    now = {item.id: item for item in made}
    gone = (replace(item, retired=True) for item in known if item.id not in now)
    return (*now.values(), *gone)
