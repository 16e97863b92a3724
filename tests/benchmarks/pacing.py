"""How 3,000 commitments stand after ten years of check-ins, against one SQL pass over the rows.

The other way counts every check-in by commitment and outcome, with the last day of each, in one
grouped statement: it reads all the rows, and hands out what it found and no more. Fetching every
row would be the slower pass, and the easier one to keep up with.

The library grew for ten years, 300 commitments a year. Of each hundred 30 were done once, 30 ran
for some weeks, and 40 have no end, from every day to once a year. Most of what is over is closed.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, date, datetime, time, timedelta
from http import HTTPStatus
from itertools import count
from pathlib import Path
from random import Random
from typing import NamedTuple
from uuid import UUID

from sqlalchemy import insert, text

from cards.commitments import Act, Measure, Outcome, Period
from service.main import THE_READER, create_app
from service.store.measure_json import measure_to_json
from service.store.sql_store import SqlStore
from service.store.tables import commitments, decisions, digests, parts
from service.use_cases.commitments import all_commitments
from service.use_cases.ports import Desk
from tests.benchmarks.nothing_to_read import bare_desk
from tests.benchmarks.paired import Ratio, paired

LIMIT = 3.0
PAGE_LIMIT = 2.0
COMMITMENTS, A_BOOK = 3_000, 10
YEARS = 10
NOW = datetime(2026, 6, 1, 19, tzinfo=UTC)
TODAY = NOW.date()

_ADD = text(
    "INSERT INTO check_ins (reader_id, id, commitment_id, outcome, day, reported_at, note,"
    " reported_on, count, witness) VALUES (:reader, :id, :commitment, :outcome, :day, :at, '',"
    " :day, NULL, '')"
)
_PASS = text(
    "SELECT commitment_id, outcome, count(*), max(day) FROM check_ins"
    " WHERE reader_id = :reader GROUP BY commitment_id, outcome"
)


class Rhythm(NamedTuple):
    """A measure as a reader follows it: on which days of how many, and for how many in all."""

    share: int
    measure: Measure | None
    days: tuple[int, ...]
    of: int
    lasts: int | None = None


_MIX = (
    Rhythm(30, Measure(deadline=TODAY), (20,), 31, 31),
    Rhythm(15, Measure(period=Period.WEEK, periods=10), (3,), 7, 70),
    Rhythm(15, Measure(period=Period.DAY, periods=30), (0,), 1, 30),
    Rhythm(15, Measure(period=Period.WEEK), (3,), 7),
    Rhythm(6, Measure(3, Period.WEEK), (1, 3, 5), 7),
    Rhythm(1, Measure(period=Period.DAY), (0,), 1),
    Rhythm(2, Measure(period=Period.DAY, every=2), (0,), 2),
    Rhythm(6, Measure(period=Period.MONTH), (14,), 30),
    Rhythm(4, Measure(period=Period.YEAR), (200,), 365),
    Rhythm(6, None, (10,), 28),
)
_OUTCOMES = (*[Outcome.KEPT] * 17, Outcome.PARTLY, Outcome.MISSED, None)
"""What comes of a day that asks for something: three times in twenty less than it asked."""


class _Made(NamedTuple):
    """A commitment with its rhythm, from its first day up to the day nothing is done any more."""

    id: UUID
    digest: UUID
    rhythm: Rhythm
    start: date
    stops: date


def _made(chance: Random) -> Iterator[_Made]:
    every = [rhythm for rhythm in _MIX for _ in range(rhythm.share)] * (COMMITMENTS // 100)
    chance.shuffle(every)
    for number, rhythm in enumerate(every):
        if number % A_BOOK == 0:
            digest = _id(chance)
        start = TODAY - timedelta(YEARS * 365 * (COMMITMENTS - number) // COMMITMENTS)
        if rhythm.lasts is not None:
            stops = start + timedelta(rhythm.lasts)
        elif number % 5:
            stops = TODAY
        else:  # One in five without an end is given up some day.
            stops = start + (TODAY - start) * chance.random()
        yield _Made(_id(chance), digest, rhythm, start, min(stops, TODAY))


def _id(chance: Random) -> UUID:
    return UUID(int=chance.getrandbits(128), version=4)


def _check_ins(made: _Made, chance: Random) -> Iterator[dict[str, object]]:
    for turn in count():
        for place in made.rhythm.days:
            day = made.start + timedelta(turn * made.rhythm.of + place)
            if day >= made.stops:
                return
            if (outcome := chance.choice(_OUTCOMES)) is not None:
                yield {
                    "reader": THE_READER.bytes,
                    "id": _id(chance).bytes,
                    "commitment": made.id.bytes,
                    "outcome": outcome.value,
                    "day": day.isoformat(),
                    "at": f"{day.isoformat()}T20:00:00.000000+00:00",
                }


def _over(made: _Made, chance: Random) -> Iterator[dict[str, object]]:
    """Yield the decision about what ended, or was given up: nine in ten are settled."""
    day = made.stops + timedelta(3)
    if day >= TODAY or chance.random() < 1 / 10:
        return
    ended = made.rhythm.lasts is not None
    yield {
        "reader_id": THE_READER,
        "id": _id(chance),
        "commitment_id": made.id,
        "act": (Act.CLOSE if ended else Act.RELEASE).value,
        "day": day,
        "decided_at": datetime.combine(day, time(20), UTC),
        "decided_on": day,
        "outcome": Outcome.KEPT.value if ended else None,
        "words": "" if ended else "It has become a habit.",
    }


def _measure(made: _Made) -> Measure | None:
    once = made.rhythm.measure is not None and made.rhythm.measure.period is Period.ONCE
    return Measure(deadline=made.start + timedelta(30)) if once else made.rhythm.measure


def _rows(made: _Made, number: int) -> tuple[dict[str, object], ...]:
    """Make the rows of its digest, its part and itself."""
    mine = {"reader_id": THE_READER, "id": made.id, "digest_id": made.digest}
    book = {
        "reader_id": THE_READER,
        "id": made.digest,
        "title": f"Book {number // A_BOOK}",
        "removed": False,
        "care": "steady",
        "revision": 1,
        "key_title": f"book {number // A_BOOK}",
        "key_author": "",
        "added_at": datetime.combine(made.start, time(19), UTC),
    }
    words = f"I will walk to the mill and back, as the {number}th page says."
    part = mine | {
        "kind": "commitment",
        "number": number % A_BOOK + 1,
        "text": words,
        "retired": False,
    }
    entered = mine | {
        "text": words,
        "made_on": made.start,
        "entered_on": made.start,
        "measure": measure_to_json(_measure(made)),
    }
    return book, part, entered


@contextmanager
def library(folder: Path) -> Iterator[tuple[SqlStore, Desk, int]]:
    """Open the library; hand out with it how many check-ins it holds, some 340,000."""
    chance = Random(1851)
    store = SqlStore(f"sqlite:///{folder / 'pacing.db'}")
    store.migrate()
    with store.writing() as work:
        work.readers.lock(THE_READER)
        work.commit()
    made = list(_made(chance))
    rows = [_rows(each, number) for number, each in enumerate(made)]
    facts = [row for each in made for row in _check_ins(each, chance)]
    facts.sort(key=lambda each: str(each["day"]))
    with store.engines.writing.begin() as connection:
        connection.execute(insert(digests), [book for book, _, _ in rows[::A_BOOK]])
        connection.execute(insert(parts), [part for _, part, _ in rows])
        connection.execute(insert(commitments), [entered for _, _, entered in rows])
        connection.execute(insert(decisions), [row for each in made for row in _over(each, chance)])
        connection.execute(_ADD, facts)
    yield store, bare_desk(store, lambda: NOW), len(facts)
    store.close()


def measure(folder: Path, rounds: int = 4) -> tuple[Ratio, Ratio]:
    """Measure all commitments against the pass over their rows, and their page against them."""
    with library(folder) as (store, desk, held):
        client = create_app(desk).test_client()

        def plain() -> None:
            with store.engines.reading.begin() as connection:
                found = connection.execute(_PASS, {"reader": THE_READER.bytes}).all()
            if sum(row[2] for row in found) != held:
                raise RuntimeError("Not every check-in was counted.")

        def ours() -> None:
            found = all_commitments(desk).by_pace.values()
            if sum(len(those) for those in found) != COMMITMENTS:
                raise RuntimeError("Not every commitment stands.")

        def page() -> None:
            reply = client.get("/commitments")
            if reply.status_code != HTTPStatus.OK:
                raise RuntimeError(reply.get_data(as_text=True))

        return paired(ours, plain, rounds, warm=1), paired(page, ours, rounds, warm=1)
