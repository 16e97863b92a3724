"""A reader asks what is still there, how well it was foreseen, and what lies ahead."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cached_property
from uuid import UUID

from cards.answers import Grade
from cards.kinds.base import KindName, Shelved
from cards.planning import (
    BookKnown,
    ComingDay,
    Habits,
    Plan,
    Unasked,
    coming,
    known_in_a_year,
    plan,
)
from cards.retention.figures import Retention, figures
from cards.retention.known import Recall
from cards.schedule import Memory
from cards.sitting import LATEST, pace
from service.use_cases.learning_records import Fitting
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.records import Reader
from service.use_cases.retaining_promises import promised_windows
from service.use_cases.retaining_records import StandingItems
from service.use_cases.tallying import bring_on, tallied

MOST_BOOKS = 100_000
"""Books named: more than anybody reads."""
MOST_FORMER = 12
"""Former weights told of, the last first."""


@dataclass(frozen=True, slots=True)
class Learnt:
    """Whose weights foresee what is recalled.

    Attributes:
        latest: the last time the reader's own were considered, adopted or not; None: never.
        adopted: the times that changed what is in force, the last first.
        waiting: items whose due day waits to be moved to what is in force.
    """

    latest: Fitting | None
    adopted: tuple[Fitting, ...]
    waiting: int


@dataclass(frozen=True)
class Retained:
    """What is retained, as of one day; what lies ahead is reckoned when it is asked for.

    Attributes:
        day: the reader's.
        reader: with what they set.
        figures: what came back, how well it was foreseen, what is known.
        books: the books there are figures of, removed ones too, by their digests.
        learnt: whose weights are in force.
        items: asked before, as they stand.
        unasked: the others.
        sits_on: the day of the next sitting: tomorrow where today's was begun.
        habits: how the reader sits.
    """

    day: date
    reader: Reader
    figures: Retention
    books: dict[UUID, Shelved]
    learnt: Learnt
    items: StandingItems
    unasked: tuple[Unasked, ...]
    sits_on: date
    habits: Habits

    @cached_property
    def coming(self) -> tuple[ComingDay, ...]:
        """What the coming weeks ask, day by day."""
        return tuple(coming(self.items, self.unasked, self.sits_on, self.habits))

    @cached_property
    def known(self) -> tuple[BookKnown, ...]:
        """How much of each book is known now, and in a year."""
        return tuple(known_in_a_year(self.items, self.unasked, self.day, self.habits))

    @cached_property
    def plan(self) -> Plan:
        """What each target takes and keeps in the coming ten years."""
        return plan(self.items, self.unasked, self.day, self.habits)


def show_retention(desk: Desk) -> Retained:
    """Return what is retained today; the work does not grow with the number of answers."""
    bring_on(desk)
    with desk.store.reading() as work:
        reader = work.readers.get(desk.reader)
        day = reader.days.of(desk.now())
        items = work.items.standing(desk.reader, day)
        unasked = tuple(
            Unasked(each.book, each.care, each.kind, each.count)
            for each in work.items.still_unasked(desk.reader, day)
        )
        found = figures(
            tallied(work, desk.reader),
            reader.target,
            _recalls(reader, day, items, unasked),
            promised_windows(work, desk.reader, day),
        )
        return Retained(
            day,
            reader,
            found,
            books_of(desk, work, {*found.books, *found.known.books}),
            _learnt(desk, work),
            items,
            unasked,
            day + timedelta(days=1) if work.answers.on(desk.reader, day) else day,
            _habits(desk, work, reader),
        )


def _learnt(desk: Desk, work: UnitOfWork) -> Learnt:
    return Learnt(
        work.fittings.latest(desk.reader),
        tuple(work.fittings.adopted(desk.reader, MOST_FORMER)),
        work.fittings.moving(desk.reader),
    )


def _habits(desk: Desk, work: UnitOfWork, reader: Reader) -> Habits:
    return Habits(
        seconds=pace(work.answers.seconds(desk.reader, LATEST)),
        minutes=reader.minutes,
        target=reader.target,
        unasked_a_day=reader.unasked_a_day,
        weighting=reader.weighting,
    )


def books_of(desk: Desk, work: UnitOfWork, wanted: set[UUID]) -> dict[UUID, Shelved]:
    """Return books by their digests, removed ones too; those on the shelf without their parts."""
    books = {each.id: each for each in work.digests.shelf(desk.reader, MOST_BOOKS)}
    removed = work.digests.many(desk.reader, wanted - books.keys())
    books |= {each.id: Shelved(each.id, each.title, each.author) for each in removed.values()}
    return {each: books[each] for each in wanted if each in books}


def _recalls(
    reader: Reader, day: date, items: StandingItems, unasked: tuple[Unasked, ...]
) -> Iterator[Recall]:
    """Yield every item with the recall expected of it today; each kind has its own weights."""
    recalls: dict[KindName, Callable[[Memory, date], float]] = {
        kind: reader.schedule(kind).recall for kind in KindName
    }
    for kind, stability, difficulty, last, due, book in zip(
        items.kinds,
        items.stability,
        items.difficulty,
        items.last_days,
        items.due_on,
        items.books,
        strict=True,
    ):
        # Of a memory recall looks at its stability and its last day alone.
        memory = Memory(stability, difficulty, last, last, Grade.CLEAR, 1, due)
        yield Recall(kind, book, recalls[kind](memory, day))
    for each in unasked:
        for _ in range(each.count):
            yield Recall(each.kind, each.book, None)
