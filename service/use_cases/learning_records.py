"""What passes between the use cases that learn from the answers and the store."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime
from typing import NamedTuple
from uuid import UUID

from cards.fitting import Verdict
from cards.kinds.base import KindName
from cards.parts import Care
from cards.retention.tallying import Counted
from cards.schedule import Memory
from cards.weighting import Weighting


@dataclass(frozen=True, slots=True)
class Fitting:
    """One time a reader's own weights were considered: a fact, with what was carried through.

    Attributes:
        id: made when it was.
        fitted_at: the instant, aware, in UTC.
        fitted_on: the reader's day.
        answers: they had given by then that tell of forgetting.
        verdicts: on the weights for every kind, then on those of single kinds.
        weighting: in force from then on; as before where nothing was adopted.
        refolded: whether every memory was folded again under it.
        moved_on: the last of the reader's days on which due days were moved to it, or None.
    """

    id: UUID
    fitted_at: datetime
    fitted_on: date
    answers: int
    verdicts: tuple[Verdict, ...]
    weighting: Weighting
    refolded: bool = False
    moved_on: date | None = None

    @property
    def adopted(self) -> bool:
        """Whether it changed what is in force."""
        return any(each.adopted for each in self.verdicts)


@dataclass(frozen=True, slots=True)
class AnswerColumns:
    """Answers not taken back, column by column: one item after another, each as it happened.

    Attributes:
        items: a number for the item of each answer, counted from 0.
        kinds: of each item's answer, the item's kind.
        days: the reader's days as ordinals; within an item none is before the one above it.
        grades: 0 to 3, from blank to vivid.
    """

    items: Sequence[int]
    kinds: Sequence[KindName]
    days: Sequence[int]
    grades: Sequence[int]


class ItemAnswers(NamedTuple):
    """The answers to one item, not taken back, in the order they happened."""

    kind: KindName
    digest_id: UUID
    answers: Sequence[Counted]


@dataclass(frozen=True, slots=True)
class Refolded:
    """An item's memory folded again.

    Attributes:
        memory: as it is now; its due day is the one it moves to.
        due_on: the day it is due until it is moved.
    """

    item_id: UUID
    memory: Memory
    due_on: date


class FoldedItem(NamedTuple):
    """What folding an item again asks for."""

    item_id: UUID
    kind: KindName
    care: Care
    retired: bool
    due_on: date
