"""What passes between the use cases of a sitting and the store."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any
from uuid import UUID

from cards.kinds.base import Answered, Cue, KindName


@dataclass(frozen=True, slots=True)
class DueItems:
    """Items column by column, each column as long as the others.

    Attributes:
        keys: what the store knows each item by; `Items.chosen` takes them.
        kinds: of each item.
        stability: days, above 0.
        difficulty: 1 to 10.
        last_days: the reader's day of the last answer.
        due_on: the reader's day each is due, or was.
        close: whether the item's book is kept close.
    """

    keys: Sequence[object]
    kinds: Sequence[KindName]
    stability: Sequence[float]
    difficulty: Sequence[float]
    last_days: Sequence[date]
    due_on: Sequence[date]
    close: Sequence[bool]

    def __len__(self) -> int:
        return len(self.keys)

    def at(self, places: Sequence[int]) -> "DueItems":
        """Return the items at some places alone, in that order."""
        return DueItems(*([column[place] for place in places] for column in self.columns()))

    def with_all(self, others: "DueItems") -> "DueItems":
        """Return these items and then the others."""
        mine, theirs = self.columns(), others.columns()
        return DueItems(*([*one, *other] for one, other in zip(mine, theirs, strict=True)))

    def columns(self) -> tuple[Sequence[Any], ...]:
        """Return the columns in the order they are declared in."""
        return (
            self.keys,
            self.kinds,
            self.stability,
            self.difficulty,
            self.last_days,
            self.due_on,
            self.close,
        )


@dataclass(frozen=True, slots=True)
class GivenOn:
    """An answer given on a day, as far as the day's sitting asks.

    Attributes:
        seconds: from the cue to the grade, or None where nobody measured it.
    """

    id: UUID
    item_id: UUID
    kind: KindName
    seconds: int | None


@dataclass(frozen=True, slots=True)
class SheetItem:
    """One item of a printed sitting.

    Attributes:
        item_id: which item.
        asked: how many answers it had when the sheet was printed, so that the same cue can be
            shown again and an answer given meanwhile is noticed.
        held: whether it was held then.
        answer_id: the id its answer bears once entered, made with the sheet, so that a form
            sent twice enters it once.
    """

    item_id: UUID
    asked: int
    held: bool
    answer_id: UUID


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sitting on paper.

    Attributes:
        id: of the sheet.
        made_at: when, aware, in UTC.
        minutes: it was composed for.
        items: in the order they are printed.
        entered_at: when its answers were entered, or None.
    """

    id: UUID
    made_at: datetime
    minutes: int
    items: tuple[SheetItem, ...]
    entered_at: datetime | None = None


@dataclass(frozen=True, slots=True)
class SheetLine:
    """One item of a sheet as it is printed.

    Attributes:
        number: on the sheet, from 1.
        answered_since: whether it was answered elsewhere after the sheet was printed, or its
            answer was entered.
    """

    number: int
    item_id: UUID
    kind: KindName
    title: str
    author: str | None
    cue: Cue
    answered: Answered
    answered_since: bool = False


@dataclass(frozen=True, slots=True)
class PrintedSheet:
    """A sitting on paper, whole: its cues for one side, its answers for the other.

    Attributes:
        day: the reader's day on which it was made.
    """

    sheet: Sheet
    day: date
    lines: tuple[SheetLine, ...]
