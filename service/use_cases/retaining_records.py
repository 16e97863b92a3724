"""What passes between the use cases of retention and the store."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from uuid import UUID

from cards.kinds.base import KindName
from cards.parts import Care


@dataclass(frozen=True, slots=True)
class StandingItems:
    """Items asked before, column by column, each as long as the others.

    Attributes:
        kinds: of each item.
        stability: days, above 0.
        difficulty: 1 to 10.
        last_days: the reader's day of the last answer.
        due_on: the reader's day each is due, or was.
        cares: how much of its book is to be kept.
        books: the id of its digest.
    """

    kinds: Sequence[KindName]
    stability: Sequence[float]
    difficulty: Sequence[float]
    last_days: Sequence[date]
    due_on: Sequence[date]
    cares: Sequence[Care]
    books: Sequence[UUID]

    def __len__(self) -> int:
        return len(self.kinds)


@dataclass(frozen=True, slots=True)
class NeverAsked:
    """Items of one book and kind that were never asked.

    Attributes:
        book: the id of its digest.
        care: how much of it is to be kept.
        count: how many items, 1 or more.
    """

    book: UUID
    care: Care
    kind: KindName
    count: int
