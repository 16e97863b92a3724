"""`GET /api/sitting` with 100,000 items in the library against 1,000, the same number due."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from uuid import UUID, uuid5

from flask.testing import FlaskClient
from sqlalchemy import insert

from cards.items import item_id
from cards.kinds.base import KindName
from service.main import THE_READER, create_app
from service.store.sql_store import SqlStore
from service.store.tables import digests, items, parts
from tests.benchmarks.nothing_to_read import bare_desk
from tests.benchmarks.paired import Ratio, paired

LIMIT = 1.3
SMALL, LARGE = 1_000, 100_000
DUE = 20
A_BOOK = 10
TODAY = datetime(2026, 6, 1, 19, tzinfo=UTC)
NAMES = UUID("0b0f1c3e-7f53-4a86-9a0e-0d6f0a4c2b11")


_SYLLABLES = [first + last for first in "bdfgklmnprtvz" for last in ("ab", "ek", "in", "ol", "ur")]


def deed(book: int, place: int) -> Iterator[str]:
    """Yield three words no other commitment has, so that none gives another away."""
    for word in range(3):
        number = (book * A_BOOK + place) * 3 + word
        syllables = []
        for _ in range(4):
            number, which = divmod(number, len(_SYLLABLES))
            syllables.append(_SYLLABLES[which])
        yield "".join(syllables)


def rows(count: int) -> Iterator[tuple[dict[str, object], list[dict[str, object]]]]:
    """Yield a digest's row with those of its commitments, until `count` items are made."""
    for number in range(count // A_BOOK):
        digest_id = uuid5(NAMES, f"digest {number}")
        digest = {
            "reader_id": THE_READER,
            "id": digest_id,
            "title": f"Book {number}",
            "removed": False,
            "care": "steady",
            "revision": 1,
            "key_title": f"book {number}",
            "key_author": "",
            "added_at": TODAY - timedelta(days=400),
        }
        yield (
            digest,
            [
                {
                    "reader_id": THE_READER,
                    "id": uuid5(NAMES, f"part {number} {place}"),
                    "digest_id": digest_id,
                    "kind": "commitment",
                    "number": place,
                    "text": f"I will {' '.join(deed(number, place))}.",
                    "retired": False,
                }
                for place in range(1, A_BOOK + 1)
            ],
        )


def item_row(part: dict[str, object], call_on: date) -> dict[str, object]:
    """Make the row of a commitment's item, called on a day."""
    part_id = part["id"]
    assert isinstance(part_id, UUID)
    return {
        "reader_id": THE_READER,
        "id": item_id(part_id, KindName.RESTATE),
        "digest_id": part["digest_id"],
        "part_id": part_id,
        "kind": "restate",
        "number": part["number"],
        "retired": False,
        "care": "steady",
        "added_at": TODAY - timedelta(days=400),
        "digest_added_at": TODAY - timedelta(days=400),
        "stability": 90.0,
        "difficulty": 5.0,
        "first_day": TODAY.date() - timedelta(days=300),
        "last_day": TODAY.date() - timedelta(days=90),
        "last_grade": "clear",
        "answers": 4,
        "due_on": call_on,
        "call_on": call_on,
    }


@contextmanager
def library(folder: Path, count: int) -> Iterator[FlaskClient]:
    """Open a library of `count` items, of which as many are due today as of any other."""
    store = SqlStore(f"sqlite:///{folder / f'{count}.db'}")
    store.migrate()
    with store.writing() as work:
        work.readers.lock(THE_READER)
        work.commit()
    every = count // DUE
    with store.engines.writing.begin() as connection:
        made = list(rows(count))
        connection.execute(insert(digests), [digest for digest, _ in made])
        flat = [part for _, held in made for part in held]
        connection.execute(insert(parts), flat)
        connection.execute(
            insert(items),
            [
                item_row(part, TODAY.date() + timedelta(days=1 + number % every))
                if number % every
                else item_row(part, TODAY.date())
                for number, part in enumerate(flat)
            ],
        )
    desk = bare_desk(store, lambda: TODAY)
    yield create_app(desk).test_client()
    store.close()


def measure(folder: Path, rounds: int = 60) -> Ratio:
    """Measure one sitting of the large library against one of the small."""
    with library(folder, SMALL) as small, library(folder, LARGE) as large:

        def ask(client: FlaskClient) -> None:
            reply = client.get("/api/sitting")
            if len(reply.get_json()["items"]) != DUE:
                raise RuntimeError(reply.get_data(as_text=True))

        return paired(lambda: ask(large), lambda: ask(small), rounds, warm=8)
