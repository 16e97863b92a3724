"""A library of SQLite behind the pages, with a clock the tests can set."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path
from uuid import UUID, uuid4

import pytest
from flask import Flask
from flask.testing import FlaskClient
from jinja2 import StrictUndefined

from service.documents.reader import PandocDocuments
from service.main import create_app
from service.store.sql_store import SqlStore
from service.use_cases.add_digest import Added, add_digest
from service.use_cases.ports import Desk, Reader, ReaderId

READER = ReaderId(UUID("00000000-0000-4000-8000-00000000abcd"))

DIGEST = """\
---
title: Silas Marner
author: George Eliot
pages: 186
finished: 2026-01-18
---

## Theme

Driven out by a friend's treachery, Marner stops trusting God and men, and hoards. The theft
of his gold empties the hearth. A child found asleep brings the village back in at his door.

## Points

1. The lot falls on Marner and he leaves Lantern Yard. (p. 12)
2. Fifteen years of weaving: the guineas become his company. (p. 20)
3. Dunstan takes the gold; Raveloe begins to pity. (p. 45)

## Commitments

* When the tea is poured, ask Hanne one question about her day, five evenings a week.
* Put 20 euros a month into the savings account.

## Quotations

* "In old days there were angels who came and took men by the hand." (p. 140, after point 3)
* "Nothing is so good as it seems beforehand." (p. 172)
"""
"""A digest with every part a digest can have but a judgement."""


@dataclass
class Clock:
    """A clock that stands still until a test sets it on."""

    at: datetime = field(default_factory=lambda: datetime(2026, 3, 2, 20, 0, tzinfo=UTC))

    def now(self) -> datetime:
        """Return the time it shows."""
        return self.at

    def next_day(self, days: int = 1) -> None:
        """Set it on by whole days."""
        self.at += timedelta(days=days)


@pytest.fixture
def clock() -> Clock:
    """Stand at 20:00 on 2 March 2026."""
    return Clock()


@pytest.fixture
def desk(tmp_path: Path, clock: Clock) -> Iterator[Desk]:
    """An empty library, read with the real reader of documents."""
    store = SqlStore(f"sqlite:///{tmp_path / 'library.db'}", lambda reader: Reader(reader, "UTC"))
    store.migrate()
    yield Desk(store, PandocDocuments(), clock.now, uuid4, READER)
    store.close()


@pytest.fixture
def app(desk: Desk) -> Flask:
    """The application over that library; a name a template misses is an error."""
    made = create_app(desk)
    made.jinja_env.undefined = StrictUndefined
    return made


@pytest.fixture
def client(app: Flask) -> FlaskClient:
    """A browser without scripts."""
    return app.test_client()


@pytest.fixture
def added(desk: Desk) -> Added:
    """The digest of Silas Marner, handed in."""
    return add_digest(desk, "silas.md", DIGEST.encode())
