"""Composing today's sitting from 50,000 items of which 5,000 are due, against plain SQL.

The other way selects the due rows with every column of an item's, in one transaction as ours,
and neither scores nor chooses nor reads a digest. The digests are made of stretches of novels,
so that their parts are as long and as different as a reader's own: some 25 items each, of
every kind there is, one book in ten kept close, and every item answered before.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from itertools import cycle
from pathlib import Path
from random import Random
from uuid import UUID

import numpy as np
from sqlalchemy import insert, text

from cards.answers import Grade
from cards.digest import Commitment, Digest, Point, Quotation
from cards.identity import keep
from cards.items import Item, items_of
from cards.parts import Care
from cards.schedule import DEFAULT_WEIGHTS, TARGET, Memory
from cards.sitting.memory import interval
from service.main import THE_READER
from service.store.sql_store import SqlStore
from service.store.tables import answers
from service.use_cases.keeping import book_key
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.sit import todays_sitting
from tests.benchmarks.nothing_to_read import bare_desk
from tests.benchmarks.paired import Ratio, paired
from tests.reference.books import TITLES, book

LIMIT = 4.0
ITEMS, DUE = 50_000, 5_000
MINUTES = 10
NOW = datetime(2026, 6, 1, 19, tzinfo=UTC)
TODAY = NOW.date()

_DUE_ROWS = text(
    "SELECT id, kind, digest_id, part_id, number, retired, care, stability, difficulty,"
    " first_day, last_day, last_grade, answers, due_on FROM items"
    " WHERE reader_id = :reader AND call_on <= :day AND call_on IS NOT NULL AND NOT retired"
)
_REMEMBER = text(
    "UPDATE items SET stability = :stability, difficulty = :difficulty, first_day = :first_day,"
    " last_day = :last_day, last_grade = 'clear', answers = :answers, due_on = :due_on,"
    " call_on = :due_on WHERE reader_id = :reader AND id = :item"
)


def digests(chance: Random) -> Iterator[Digest]:
    """Yield digests without end, their parts stretches of novels."""
    novels = {title: book(title).text.split() for title in TITLES}

    def words(title: str, fewest: int, most: int) -> str:
        start = chance.randrange(len(novels[title]) - most)
        return " ".join(novels[title][start : start + chance.randint(fewest, most)])

    for number, title in enumerate(cycle(TITLES)):
        pages = sorted(chance.sample(range(1, 400), 12))
        yield Digest(
            title=f"{title.title()}, reading {number}",
            author=f"Author {number // 5}",
            pages=400,
            theme=words(title, 60, 120),
            points=tuple(Point(words(title, 12, 30), f"p. {page}") for page in pages[:7]),
            commitments=tuple(
                Commitment(f"Every Sunday I will {words(title, 8, 20)}.") for _ in range(2)
            ),
            quotations=tuple(
                Quotation(words(title, 15, 60), f"p. {page}", after)
                for after, page in enumerate(pages[7:11], 1)
            ),
        )


def fill(work: UnitOfWork, chance: Random) -> list[Item]:
    """Keep digests until there are items enough; return those."""

    def new_id() -> UUID:
        return UUID(int=chance.getrandbits(128), version=4)

    kept_items: list[Item] = []
    added = NOW - timedelta(days=2_000)
    for number, digest in enumerate(digests(chance)):
        care = Care.STEADY if number % 10 else Care.CLOSE
        kept = replace(keep(digest, None, new_id), care=care)
        work.digests.put(THE_READER, kept, book_key(kept), added)
        its = items_of(kept)
        work.items.put(THE_READER, its, added, care)
        kept_items += its
        if len(kept_items) >= ITEMS:
            return kept_items[:ITEMS]
    raise AssertionError("there is always another digest")


def memories(count: int, chance: Random) -> Iterator[Memory]:
    """Yield memories as a schedule leaves them: one in ten due, for up to two months."""
    for number in range(count):
        stability = min(1_500.0, max(1.0, chance.lognormvariate(4.0, 1.2)))
        waits = int(interval(np.array([stability]), TARGET, DEFAULT_WEIGHTS)[0])
        due = TODAY + timedelta(
            -chance.randrange(60) if number % (ITEMS // DUE) == 0 else chance.randint(1, waits)
        )
        last = min(due - timedelta(waits), TODAY - timedelta(1))
        yield Memory(
            stability=stability,
            difficulty=chance.uniform(1, 10),
            first_day=last - timedelta(chance.randrange(1, 900)),
            last_day=last,
            last_grade=Grade.CLEAR,
            answers=chance.randint(1, 12),
            due_on=due,
        )


def memory_row(item: Item, memory: Memory) -> dict[str, object]:
    """Make the values of an item's memory."""
    return {
        "reader": THE_READER.bytes,
        "item": item.id.bytes,
        "stability": memory.stability,
        "difficulty": memory.difficulty,
        "first_day": memory.first_day.isoformat(),
        "last_day": memory.last_day.isoformat(),
        "answers": memory.answers,
        "due_on": memory.due_on.isoformat(),
    }


def answer_row(item: Item, day: date, chance: Random) -> dict[str, object]:
    """Make the row of an answer."""
    at = datetime.combine(day, time(18), UTC)
    return {
        "reader_id": THE_READER,
        "id": UUID(int=chance.getrandbits(128), version=4),
        "item_id": item.id,
        "grade": Grade.CLEAR.value,
        "answered_at": at,
        "day": day,
        "attempt": "",
        "received_at": at,
        "seconds": chance.randint(10, 60),
        "graded_first": False,
    }


@contextmanager
def library(folder: Path) -> Iterator[tuple[SqlStore, Desk]]:
    """Open a library of items of every kind, one in ten due."""
    chance = Random(1851)
    store = SqlStore(f"sqlite:///{folder / 'composing.db'}")
    store.migrate()
    with store.writing() as work:
        work.readers.lock(THE_READER)
        made = fill(work, chance)
        remembered = list(memories(len(made), chance))
        work.commit()
    both = list(zip(made, remembered, strict=True))
    with store.engines.writing.begin() as connection:
        connection.execute(_REMEMBER, [memory_row(item, memory) for item, memory in both])
        connection.execute(
            insert(answers), [answer_row(item, memory.last_day, chance) for item, memory in both]
        )
    yield store, bare_desk(store, lambda: NOW)
    store.close()


def measure(folder: Path, rounds: int = 20) -> Ratio:
    """Measure one sitting of ten minutes against selecting the due rows."""
    with library(folder) as (store, desk):
        named = {"reader": THE_READER.bytes, "day": TODAY.isoformat()}

        def plain() -> None:
            with store.engines.reading.begin() as connection:
                rows = connection.execute(_DUE_ROWS, named).all()
            if len(rows) != DUE:
                raise RuntimeError(f"{len(rows)} rows are due.")

        def ours() -> None:
            if len(todays_sitting(desk, MINUTES).items) < MINUTES:
                raise RuntimeError("A sitting of ten minutes holds more than that.")

        return paired(ours, plain, rounds, warm=3)
