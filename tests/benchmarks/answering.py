"""Recording an answer through the API against a bare Flask view that writes the same rows.

The bare view has no reader, no schema, no memory model: it takes JSON, inserts one row,
updates one row and commits, through the standard library's sqlite3, with the same
durability (WAL, synchronous FULL) on the same disk. Each item is answered five times over,
as items are: the first answer to an item writes most, the later ones fold more.
"""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime, timedelta
from itertools import cycle
from pathlib import Path
from uuid import UUID, uuid4

from flask import Flask, request
from flask.testing import FlaskClient

from cards.digest import Commitment, Digest
from cards.identity import keep
from cards.items import items_of
from service.main import THE_READER, create_app
from service.store.sql_store import SqlStore
from service.use_cases.keeping import save
from service.use_cases.records import Cause
from tests.benchmarks.nothing_to_read import bare_desk
from tests.benchmarks.paired import Ratio, paired

LIMIT = 2.5
ITEMS = 60
ANSWERS_EACH = 5
START = datetime(2026, 1, 5, 19, tzinfo=UTC)


@contextmanager
def ours(folder: Path) -> Iterator[tuple[FlaskClient, list[UUID]]]:
    """Open a library with items to answer, and its API."""
    store = SqlStore(f"sqlite:///{folder / 'ours.db'}")
    store.migrate()
    clock = START

    def now() -> datetime:
        nonlocal clock
        clock += timedelta(hours=1)
        return clock

    desk = bare_desk(store, now)
    digest = Digest(
        "A Book", commitments=tuple(Commitment(f"I will do deed {n}.") for n in range(ITEMS))
    )
    kept = keep(digest, None, uuid4)
    with store.writing() as work:
        work.readers.lock(THE_READER)
        save(desk, work, kept, Cause.ADDED)
        work.commit()
    yield create_app(desk).test_client(), [item.id for item in items_of(kept)]
    store.close()


def bare(folder: Path, items: list[UUID]) -> tuple[FlaskClient, sqlite3.Connection]:
    """Open the bare view on tables of its own."""
    database = sqlite3.connect(folder / "bare.db", isolation_level=None, check_same_thread=False)
    database.execute("PRAGMA journal_mode = WAL")
    database.execute("PRAGMA synchronous = FULL")
    database.execute(
        "CREATE TABLE answers (reader_id BLOB, id BLOB, item_id BLOB, grade TEXT, answered_at TEXT,"
        " day TEXT, attempt TEXT, suggested TEXT, predicted REAL, received_at TEXT,"
        " PRIMARY KEY (reader_id, id))"
    )
    database.execute(
        "CREATE TABLE items (reader_id BLOB, id BLOB, stability REAL, difficulty REAL,"
        " first_day TEXT, last_day TEXT, last_grade TEXT, answers INTEGER, due_on TEXT,"
        " call_on TEXT, PRIMARY KEY (reader_id, id))"
    )
    reader = THE_READER.bytes
    database.executemany(
        "INSERT INTO items (reader_id, id) VALUES (?, ?)",
        [(reader, item.bytes) for item in items],
    )
    app = Flask("bare")

    @app.post("/answers")
    def answer() -> tuple[dict[str, str], int]:
        given = request.get_json()
        database.execute("BEGIN IMMEDIATE")
        database.execute(
            "INSERT INTO answers VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            (
                reader,
                UUID(given["id"]).bytes,
                UUID(given["item"]).bytes,
                given["grade"],
                "2026-01-05T19:00:00+00:00",
                "2026-01-05",
                "",
                None,
                0.9,
                "2026-01-05T19:00:00+00:00",
            ),
        )
        database.execute(
            "UPDATE items SET stability = ?, difficulty = ?, first_day = ?, last_day = ?,"
            " last_grade = ?, answers = ?, due_on = ?, call_on = ?"
            " WHERE reader_id = ? AND id = ?",
            (
                2.3,
                2.1,
                "2026-01-05",
                "2026-01-05",
                given["grade"],
                1,
                "2026-01-07",
                "2026-01-07",
                reader,
                UUID(given["item"]).bytes,
            ),
        )
        database.execute("COMMIT")
        return {"id": given["id"]}, 201

    return app.test_client(), database


def measure(folder: Path, rounds: int = ITEMS * ANSWERS_EACH - 20) -> Ratio:
    """Measure one answer to an item through either."""
    with ours(folder) as (client, items):
        plain, database = bare(folder, items)
        turns = {"/api/answers": cycle(items), "/answers": cycle(items)}

        def send(through: FlaskClient, path: str) -> None:
            body = {"id": str(uuid4()), "item": str(next(turns[path])), "grade": "clear"}
            reply = through.post(path, json=body)
            if reply.status_code != 201:
                raise RuntimeError(reply.get_data(as_text=True))

        ratio = paired(
            lambda: send(client, "/api/answers"), lambda: send(plain, "/answers"), rounds
        )
        database.close()
    return ratio
