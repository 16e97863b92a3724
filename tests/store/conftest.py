"""Fixtures for the tests of the store."""

from collections.abc import Iterator
from pathlib import Path
from uuid import uuid4

import pytest

from service.store.sql_store import SqlStore
from service.use_cases.records import ReaderId
from tests.postgres import Server
from tests.store.statements import Statements


@pytest.fixture
def reader() -> ReaderId:
    """A reader never seen before."""
    return ReaderId(uuid4())


@pytest.fixture(params=["sqlite", "postgresql"])
def empty(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[str]:
    """The address of a database without any table, on each in turn."""
    if request.param == "sqlite":
        yield f"sqlite:///{tmp_path / 'empty.db'}"
    else:
        server: Server = request.getfixturevalue("postgres")
        name = f"empty_{uuid4().hex}"
        yield server.create(name)
        server.drop(name)


@pytest.fixture
def statements(store: SqlStore) -> Statements:
    """Every statement the store sends from now on, as it is sent."""
    return Statements(store.engines)
