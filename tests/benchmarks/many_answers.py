"""A library of three hundred books with as many answers as are wanted, made without its doors.

Twenty-five items a book, as a digest makes them; the answers fall on them evenly over ten years,
each predicted, graded as predicted, and the last one of each item at its end.
"""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from random import Random

from cards.kinds.base import KindName
from service.main import THE_READER
from service.store.sql_store import SqlStore

BOOKS, A_BOOK = 300, 25
ITEMS = BOOKS * A_BOOK
YEARS = 10
END = date(2026, 6, 1)
NOW = datetime(2026, 6, 1, 19, tzinfo=UTC)

_READER = THE_READER.bytes
_ADDED = "2016-01-01T00:00:00.000000+00:00"
_WORDS = "the keeper of the light goes up at dusk and writes what ships he saw".split()
_KINDS = tuple(KindName)
_PLACES = {
    "digests": "reader_id, id, title, removed, revision, key_title, key_author, added_at, care",
    "parts": "reader_id, id, digest_id, kind, number, text, retired",
    "items": (
        "reader_id, id, digest_id, part_id, kind, number, retired, added_at, digest_added_at, "
        "care, stability, difficulty, first_day, last_day, last_grade, answers, due_on, call_on"
    ),
    "answers": (
        "reader_id, id, item_id, grade, answered_at, day, attempt, suggested, predicted, "
        "received_at, seconds, graded_first"
    ),
}


@contextmanager
def library(file: Path, answers: int) -> Iterator[SqlStore]:
    """Make the library in a file and open it; at least one answer an item."""
    store = SqlStore(f"sqlite:///{file}")
    store.migrate()
    with store.writing() as work:
        work.readers.lock(THE_READER)
        work.commit()
    chance = Random(1851)
    driver = sqlite3.connect(file, isolation_level=None)
    driver.execute("PRAGMA synchronous = OFF")
    driver.execute("BEGIN")
    items = [chance.randbytes(16) for _ in range(ITEMS)]
    _shelve(driver, items, answers // ITEMS, chance)
    _fill(driver, "answers", _answers(items, answers, chance))
    driver.execute("COMMIT")
    driver.execute("ANALYZE")
    driver.close()
    yield store
    store.close()


def _shelve(driver: sqlite3.Connection, items: list[bytes], each: int, chance: Random) -> None:
    for book in range(BOOKS):
        digest = chance.randbytes(16)
        title = f"Book {book}"
        row = (_READER, digest, title, 0, 1, title.lower(), "", _ADDED, "steady")
        _fill(driver, "digests", [row])
        for number in range(A_BOOK):
            part = chance.randbytes(16)
            _fill(driver, "parts", [(_READER, part, digest, "point", number + 1, "A word.", 0)])
            kind = _KINDS[number % len(_KINDS)].value
            last = END - timedelta(days=chance.randrange(1, 30))
            due = (last + timedelta(days=chance.randrange(10, 90))).isoformat()
            whose = (_READER, items[book * A_BOOK + number], digest, part, kind, number + 1, 0)
            stability = chance.uniform(5, 300)
            memory = (stability, chance.uniform(2, 8), "2016-06-01", last.isoformat(), "clear")
            _fill(driver, "items", [(*whose, _ADDED, _ADDED, "steady", *memory, each, due, due)])


def _answers(items: list[bytes], answers: int, chance: Random) -> Iterator[tuple[object, ...]]:
    """Yield the answers as they happened: the items in turn, over and over."""
    begin = datetime.combine(END, datetime.min.time(), UTC) - timedelta(days=365 * YEARS)
    step = timedelta(days=365 * YEARS - 1) / answers
    for number in range(answers):
        at = (begin + number * step).isoformat(timespec="microseconds")
        predicted = chance.uniform(0.6, 1.0)
        came = chance.random() < predicted
        grade = chance.choice(("hazy", "clear", "clear", "vivid")) if came else "blank"
        suggested = grade if chance.random() < 0.8 else "hazy"
        yield (
            _READER,
            chance.randbytes(16),
            items[number % len(items)],
            grade,
            at,
            at[:10],
            " ".join(chance.choices(_WORDS, k=6)),
            suggested,
            predicted if number >= len(items) else None,
            at,
            chance.randrange(5, 60),
            int(number % 10 == 0),
        )


def _fill(driver: sqlite3.Connection, table: str, rows: object) -> None:
    columns = _PLACES[table]
    marks = ", ".join("?" * (columns.count(",") + 1))
    driver.executemany(f"INSERT INTO {table} ({columns}) VALUES ({marks})", rows)
