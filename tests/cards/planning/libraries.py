"""Libraries to plan for, and the same days lived through one by one, by chance.

Outside source: the `fsrs` package behind `Schedule`, one answer after another, spreading and
all; it shares no line with the arrays that plan.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, time, timedelta
from random import Random
from uuid import UUID

from cards.answers import Answer, Grade
from cards.kinds.base import KindName
from cards.parts import Care
from cards.planning import Habits, Unasked
from cards.schedule import Schedule

DAY = date(2026, 6, 1)
MINUTE = dict.fromkeys(KindName, 60.0)
"""Seconds when every item takes a minute, so that minutes count askings."""
BOOK, OTHER = UUID(int=1), UUID(int=2)

Given = tuple[tuple[int, Grade], ...]


@dataclass
class Library:
    """Items that were asked before, column by column."""

    kinds: list[KindName] = field(default_factory=list)
    stability: list[float] = field(default_factory=list)
    difficulty: list[float] = field(default_factory=list)
    last_days: list[date] = field(default_factory=list)
    due_on: list[date] = field(default_factory=list)
    cares: list[Care] = field(default_factory=list)
    books: list[UUID] = field(default_factory=list)

    def hold(
        self,
        count: int = 1,
        stability: float = 20_000.0,
        last: int = -1,
        due: int = 0,
        *,
        kind: KindName = KindName.PLACE,
        difficulty: float = 5.0,
        care: Care = Care.STEADY,
        book: UUID = BOOK,
    ) -> "Library":
        """Take in items alike, with days counted from the first; as they are, never forgotten."""
        self.kinds += [kind] * count
        self.stability += [stability] * count
        self.difficulty += [difficulty] * count
        self.last_days += [DAY + timedelta(last)] * count
        self.due_on += [DAY + timedelta(due)] * count
        self.cares += [care] * count
        self.books += [book] * count
        return self

    def turned_round(self) -> "Library":
        """Return the same items, the last first."""
        return Library(*(list(reversed(column)) for column in vars(self).values()))


def varied(count: int, seed: int = 1) -> Library:
    """Return items of every kind, of two books, as years of answers leave them."""
    chance, library = Random(seed), Library()
    for number in range(count):
        stability = chance.lognormvariate(3.5, 1.3)
        last = -chance.randint(1, 1 + int(1.5 * stability))
        library.hold(
            1,
            stability,
            last,
            max(last + 1, last + round(stability)),
            kind=list(KindName)[number % len(KindName)],
            difficulty=chance.uniform(1, 10),
            book=(BOOK, OTHER)[number % 2],
        )
    return library


def habits(minutes: float = 1_000.0, target: float = 0.9, a_day: int = 0, **more) -> Habits:
    """Return how a reader sits who has time, each item taking a minute."""
    return Habits(MINUTE, minutes, target, a_day, **more)


def fresh(count: int, care: Care = Care.STEADY, book: UUID = BOOK) -> Unasked:
    """Return placings never asked."""
    return Unasked(book, care, KindName.PLACE, count)


def histories(count: int, seed: int) -> list[Given]:
    """Return the answers to some items in the last weeks, days counted from the first to come."""
    chance, made = Random(seed), []
    for _ in range(count):
        days = sorted(chance.sample(range(-90, 0), chance.randint(1, 5)))
        made.append(tuple((day, chance.choice([Grade.CLEAR, Grade.VIVID])) for day in days))
    return made


def held(given: list[Given], target: float = 0.9) -> Library:
    """Return the library of some items, as the answers to them leave it."""
    library = Library()
    for number, one in enumerate(given):
        memory = Schedule(target).fold(UUID(int=number), answers(UUID(int=number), one))
        assert memory is not None
        library.hold(
            1,
            memory.stability,
            (memory.last_day - DAY).days,
            (memory.due_on - DAY).days,
            difficulty=memory.difficulty,
        )
    return library


def lived(
    given: Given, due: int | None, days: int, target: float, chance: Random
) -> tuple[list[int], float]:
    """Live through some days with one item: the days it is asked, and what is known at the end.

    Asked on the day it is due, it is clear or, by chance, blank and then clear. The item's id
    is drawn too, and with it where in their ranges its due days are laid.

    Args:
        given: its answers so far; empty where its first one, clear, comes on the first day.
        due: the day it is due first; None for the one its id makes of it.
        days: how many are lived through.
        target: retention aimed for.
        chance: of what comes back.
    """
    schedule, item = Schedule(target), UUID(int=chance.getrandbits(128))
    asked = [] if given else [0]
    given = given or ((0, Grade.CLEAR),)
    while True:
        memory = schedule.fold(item, answers(item, given))
        assert memory is not None
        day = max(0, (memory.due_on - DAY).days if due is None else due)
        due = None
        if day >= days:
            return asked, schedule.recall(memory, DAY + timedelta(days))
        kept = schedule.recall(memory, DAY + timedelta(day))
        if chance.random() < kept:
            given = (*given, (day, Grade.CLEAR))
            asked.append(day)
        else:
            given = (*given, (day, Grade.BLANK), (day, Grade.CLEAR))
            asked += [day, day]


def answers(item: UUID, given: Given) -> list[Answer]:
    """Return answers to an item, in their order."""
    return list(_answers(item, given))


def _answers(item: UUID, given: Given) -> Iterator[Answer]:
    morning = datetime.combine(DAY, time(9), UTC)
    for number, (day, grade) in enumerate(given):
        yield Answer(
            id=UUID(int=number),
            item_id=item,
            grade=grade,
            answered_at=morning + timedelta(day, minutes=number),
            day=DAY + timedelta(day),
        )
