"""Fixtures for the tests of the JSON door: an application on an empty SQLite library."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from io import BytesIO
from pathlib import Path
from typing import Any
from uuid import UUID, uuid4

import pytest
from flask import Flask
from flask.testing import FlaskClient
from werkzeug.datastructures import FileStorage
from werkzeug.test import TestResponse, encode_multipart

from service.main import desk_on
from service.store.sql_store import SqlStore
from service.use_cases.ports import Desk
from tests.standing import application_on, lay_empty_library

WALKS = """# Walks in the Fens

by E. Fell

Pages: 200

## Theme

A clerk leaves his desk to walk the drains of the fens. He learns to wait for weather.

## Points

1. The clerk sells his clock (p. 12).
2. He loses the path at night (p. 80).
3. The flood takes the mill (p. 150).

## Commitments

- When the tea is poured, ask Hanne one question about her day.
- Walk for 20 minutes every Sunday before I take any medicine.

## Quotations

- "Mud keeps its own accounts." (p. 14)
- "No lantern has ever drained a ditch." (p. 97)
"""

YEARS_BEFORE = """# Walks in the Fens

by E. Fell

Pages: 312

Finished: 4 May 2011

## Theme

A man runs from a marriage and calls it nature.

## Points

1. Hanne is left with the shop (p. 20).

## Quotations

- "Every ditch is dug by somebody." (p. 31)
"""
"""Of the same book, read in another edition and otherwise."""


@dataclass
class Clock:
    """The time of a test; it stands still until it is moved."""

    at: datetime = datetime(2026, 3, 1, 21, 40, tzinfo=UTC)

    def __call__(self) -> datetime:
        """Return the time."""
        return self.at

    def move(self, **span: float) -> None:
        """Let time pass."""
        self.at += timedelta(**span)


@dataclass(frozen=True)
class Door:
    """The API as a program uses it."""

    client: FlaskClient

    def add(self, text: str = WALKS, name: str = "walks.md") -> TestResponse:
        """Hand over a file."""
        return self.send("/api/digests", text.encode(), name)

    def send(self, path: str, content: bytes, name: str, method: str = "POST") -> TestResponse:
        """Upload a file."""
        return self.upload(path, {"file": FileStorage(BytesIO(content), name)}, method)

    def hand_in(self, path: str, *files: tuple[str, bytes]) -> TestResponse:
        """Upload many files at once, each given by name and content."""
        return self.upload(
            path, {"files": [FileStorage(BytesIO(content), name) for name, content in files]}
        )

    def upload(
        self, path: str, form: dict[str, Any], method: str = "POST", *, whole: bool = True
    ) -> TestResponse:
        """Send a form with files, and read the whole answer unless told otherwise."""
        boundary, body = encode_multipart(form)
        kind = f"multipart/form-data; boundary={boundary}"
        return self.client.open(path, method=method, data=body, content_type=kind, buffered=whole)

    def tag(self, path: str) -> str:
        """Return the tag of what is at an address now."""
        return str(self.client.get(path).headers["ETag"])

    def change(self, where: str, **parts: object) -> TestResponse:
        """Mend a digest in some of its parts."""
        given = self.client.get(where)
        return self.client.put(
            where, json={**given.json, **parts}, headers={"If-Match": given.headers["ETag"]}
        )

    def item(self, kind: str) -> str:
        """Return the id of an item of a kind."""
        found = self.client.get(f"/api/items?kind={kind}").json["items"]
        return str(found[0]["id"])

    def answer(self, item: str, grade: str = "clear", **more: object) -> TestResponse:
        """Record an answer."""
        body = {"id": str(uuid4()), "item": item, "grade": grade, **more}
        return self.client.post("/api/answers", json=body)


@pytest.fixture
def clock() -> Clock:
    """The time, which the test moves."""
    return Clock()


@pytest.fixture(scope="session")
def room(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Desk]:
    """A desk whose store no test uses: what reads and writes files, which keeps nothing."""
    store = SqlStore(f"sqlite:///{tmp_path_factory.mktemp('room') / 'library.db'}")
    with desk_on(store) as opened:
        yield opened
    store.close()


@pytest.fixture
def library(tmp_path: Path) -> Iterator[SqlStore]:
    """An empty library in a file of its own."""
    file = tmp_path / "library.db"
    lay_empty_library(file)
    store = SqlStore(f"sqlite:///{file}")
    yield store
    store.close()


@pytest.fixture
def desk(room: Desk, library: SqlStore, clock: Clock) -> Desk:
    """What the door hands to the use cases."""
    return replace(room, store=library, now=clock)


@pytest.fixture
def app(desk: Desk) -> Iterator[Flask]:
    """The whole application, composed as it is served."""
    with application_on(desk) as lent:
        yield lent


@pytest.fixture
def door(app: Flask) -> Door:
    """The API of an empty library."""
    return Door(app.test_client())


@pytest.fixture
def walks(door: Door) -> UUID:
    """The id of the one digest in the library."""
    added = door.add()
    assert added.status_code == 201, added.json
    return UUID(added.json["digest"]["id"])
