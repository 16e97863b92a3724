"""What a plan starts from: the items as they stand, and how their reader sits."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Protocol
from uuid import UUID

from cards.kinds.base import KindName
from cards.parts import Care
from cards.sitting.columns import Dated
from cards.weighting import PUBLISHED, Weighting


class Remembered(Dated, Protocol):
    """Items that were asked before, column by column; each column as long as the others."""

    @property
    def cares(self) -> Sequence[Care]:
        """How much of its book is to be kept."""
        ...

    @property
    def books(self) -> Sequence[UUID]:
        """The id of its digest."""
        ...


@dataclass(frozen=True, slots=True)
class Unasked:
    """Items of one book and one kind that were never asked; at rest they never are.

    Attributes:
        book: the id of the digest.
        care: how much of the book is to be kept.
        kind: of the items.
        count: how many there are, 0 or more.
    """

    book: UUID
    care: Care
    kind: KindName
    count: int


@dataclass(frozen=True, slots=True)
class Habits:
    """How a reader sits.

    Attributes:
        seconds: what an item of each kind takes, above 0 (`cards.sitting.pace`).
        minutes: of a day's sitting, above 0.
        target: retention aimed for, from 0.7 to 0.97.
        unasked_a_day: how many items may be asked for the first time on a day, 0 or more.
        weighting: the reader's weights.
    """

    seconds: Mapping[KindName, float]
    minutes: float
    target: float
    unasked_a_day: int
    weighting: Weighting = PUBLISHED
