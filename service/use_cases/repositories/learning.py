"""What learning from the answers offers the use cases: tallies, fits, due days that move."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from typing import Protocol
from uuid import UUID

from cards.retention.tally import Tally, TallyKey
from service.use_cases.learning_records import (
    AnswerColumns,
    Fitting,
    FoldedItem,
    ItemAnswers,
    Refolded,
)
from service.use_cases.records import ReaderId


class Tallies(Protocol):
    """What the answers of one reader add up to, kept through a day."""

    def all(self, reader: ReaderId) -> dict[TallyKey, Tally]:
        """Return every tally as it is kept."""
        ...

    def through(self, reader: ReaderId) -> date | None:
        """Return the last day whose answers are in the tallies, or None."""
        ...

    def lock(self, reader: ReaderId) -> date | None:
        """Return `through`, and let no other transaction change the tallies until the end."""
        ...

    def add(self, reader: ReaderId, changes: Mapping[TallyKey, Tally]) -> None:
        """Add to the tallies; numbers may be below 0, and what comes to nothing goes."""
        ...

    def reach(self, reader: ReaderId, through: date) -> None:
        """Keep up to which day answers are in the tallies."""
        ...

    def facts(self, reader: ReaderId, through: date) -> tuple[int, int]:
        """Return how many answers there are to a day, and how many of any day were taken back."""
        ...

    def answers(
        self, reader: ReaderId, after: date | None, through: date | None
    ) -> Iterator[ItemAnswers]:
        """Return, item by item, all answers to those answered after a day and through another.

        Answers of days after `through` are left out, and so is what was taken back; None asks
        from the first day, or to the last. They are read as they are asked for.
        """
        ...


class Fittings(Protocol):
    """The fits of one reader's weights, and how far they are carried through."""

    def add(self, reader: ReaderId, fitting: Fitting) -> None:
        """Append a fit."""
        ...

    def latest(self, reader: ReaderId) -> Fitting | None:
        """Return the last fit, adopted or not."""
        ...

    def adopted(self, reader: ReaderId, limit: int) -> list[Fitting]:
        """Return the latest fits that changed what is in force, the last first."""
        ...

    def carried(self, reader: ReaderId, fitting_id: UUID, moved_on: date | None) -> None:
        """Keep that every memory was folded under a fit, and on which day due days moved last."""
        ...

    def columns(self, reader: ReaderId) -> AnswerColumns:
        """Return every answer to items, retired ones too, column by column."""
        ...

    def folded(self, reader: ReaderId, after: UUID | None, limit: int) -> list[FoldedItem]:
        """Return items with a memory, retired ones too, by id, beyond `after`.

        No other transaction changes them until the end.
        """
        ...

    def refold(self, reader: ReaderId, items: Sequence[Refolded]) -> None:
        """Keep memories folded again; where the due day is another, it waits to be moved."""
        ...

    def move(self, reader: ReaderId, limit: int) -> int:
        """Move the due days of the first `limit` items that wait, and return how many did.

        The first are those whose earlier day of the two comes first.
        """
        ...

    def moving(self, reader: ReaderId) -> int:
        """Return how many items, not retired, wait to have their due day moved."""
        ...
