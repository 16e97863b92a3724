"""How much is known now: the recall expected of every item asked so far."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import sqrt
from typing import NamedTuple
from uuid import UUID

from cards.kinds.base import KindName


class Recall(NamedTuple):
    """One item as it stands now; retired ones are no longer asked about.

    Attributes:
        kind: of the item.
        digest_id: of its book.
        recall: the probability that it comes back today, or None while unasked.
    """

    kind: KindName
    digest_id: UUID
    recall: float | None


@dataclass(frozen=True, slots=True)
class Known:
    """What is known of some items.

    Attributes:
        asked: items asked at least once.
        unasked: items of which nothing can be said.
        expected: how many of those asked would come back today, by the memory model.
        variance: of that number, each item for itself.
    """

    asked: int = 0
    unasked: int = 0
    expected: float = 0.0
    variance: float = 0.0

    @property
    def mean(self) -> float | None:
        """The mean recall of those asked, or None where none were."""
        return self.expected / self.asked if self.asked else None

    @property
    def spread(self) -> float:
        """The standard deviation of the number that would come back."""
        return sqrt(self.variance)


@dataclass(frozen=True, slots=True)
class KnownNow:
    """What is known now.

    Attributes:
        whole: of the library.
        books: by digest, in the order they were given.
        kinds: by kind, those with an item, in the order of kinds.
    """

    whole: Known
    books: dict[UUID, Known]
    kinds: dict[KindName, Known]


def known_now(items: Iterable[Recall]) -> KnownNow:
    """Return what is known of items, by book and by kind."""
    books: dict[UUID, list[float | None]] = {}
    kinds: dict[KindName, list[float | None]] = {}
    for kind, digest_id, recall in items:
        books.setdefault(digest_id, []).append(recall)
        kinds.setdefault(kind, []).append(recall)
    return KnownNow(
        _known(recall for recalls in kinds.values() for recall in recalls),
        {digest_id: _known(recalls) for digest_id, recalls in books.items()},
        {kind: _known(kinds[kind]) for kind in KindName if kind in kinds},
    )


def _known(recalls: Iterable[float | None]) -> Known:
    asked = unasked = 0
    expected = variance = 0.0
    for recall in recalls:
        if recall is None:
            unasked += 1
        else:
            asked += 1
            expected += recall
            variance += recall * (1 - recall)
    return Known(asked, unasked, expected, variance)
