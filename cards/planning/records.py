"""What a plan tells: of the coming days, of each book, of each target."""

from dataclasses import dataclass
from datetime import date
from uuid import UUID

from cards.parts import Care

YEARS = (1, 5, 10)
"""After how many years it is told what is known, and in which of them what it takes."""


@dataclass(frozen=True, slots=True)
class ComingDay:
    """What one coming day is expected to ask.

    Attributes:
        day: the reader's day.
        due: minutes for what is due, the second asking of what comes back blank included.
        unasked: minutes for what is asked for the first time.
        left_over: minutes for what is due and no longer fits; it waits for the next day.
    """

    day: date
    due: float
    unasked: float
    left_over: float

    @property
    def minutes(self) -> float:
        """Minutes of the whole sitting."""
        return self.due + self.unasked


@dataclass(frozen=True, slots=True)
class BookKnown:
    """How much of a book is known, in items expected to come back if asked.

    Items never asked count as not known: nothing tells whether they are.

    Attributes:
        book: the id of its digest.
        items: how many the book has.
        asked: how many of them were asked before.
        now: known on the day itself.
        left_alone: known in a year without any sitting.
        kept_up: known in a year with a sitting every day.
    """

    book: UUID
    items: int
    asked: int
    now: float
    left_alone: float
    kept_up: float


@dataclass(frozen=True, slots=True)
class TargetPlan:
    """What one target takes and keeps, if everything is asked on the day it is due.

    Attributes:
        target: retention the reader aims for; what a care makes of it is asked.
        minutes: a day, mean of the first, the fifth and the tenth year (`YEARS`).
        mean_minutes: a day, over the ten years.
        known: items expected to come back if asked, in the last quarter of each of these years;
            items that are never let in are not known.
        until_lasting: minutes an item that does not last yet takes until it does
            (`cards.planning.lasting`); None where there is none, or it never will.
    """

    target: float
    minutes: tuple[float, ...]
    mean_minutes: float
    known: tuple[float, ...]
    until_lasting: float | None


@dataclass(frozen=True, slots=True)
class Proposal:
    """The target that keeps most per minute: under which items last for the fewest minutes.

    Attributes:
        target: the best of those planned.
        alike_from, alike_to: from the lowest to the highest target about it that takes hardly
            more.
        at_edge: whether it is the lowest or the highest there is, so that one beyond it might
            take fewer.
    """

    target: float
    alike_from: float
    alike_to: float
    at_edge: bool


@dataclass(frozen=True, slots=True)
class CarePlan:
    """What the targets take and keep, for the books of one care or for all of them.

    Attributes:
        care: of the books; None for the whole library.
        items: how many they have, asked before or not.
        now: known on the day itself.
        left_alone: known after one, five and ten years without any sitting, in the last quarter
            of each (`YEARS`).
        targets: from the lowest to the highest, a hundredth apart.
        proposal: None where a target makes no difference: everything that is asked lasts
            already, or the books rest.
    """

    care: Care | None
    items: int
    now: float
    left_alone: tuple[float, ...]
    targets: tuple[TargetPlan, ...]
    proposal: Proposal | None


@dataclass(frozen=True, slots=True)
class Plan:
    """What each target takes and keeps in the coming ten years.

    Attributes:
        whole: all books together.
        by_care: the books of each care there are any of, close ones first.
        within: the highest target of which the first year fits into the minutes the reader
            has; None where not even the lowest does.
    """

    whole: CarePlan
    by_care: tuple[CarePlan, ...]
    within: float | None
