"""Fixtures every test may ask for."""

import os
from collections.abc import Iterator
from pathlib import Path
from uuid import uuid4

import pytest
from hypothesis import HealthCheck, settings

from service.store.sql_store import SqlStore
from tests.postgres import Server, ServerMissingError, running
from tests.standing import lay_empty_library

# Deterministic, so that a run that fails here fails for the next reader too, and no clock to beat.
settings.register_profile(
    "catchword",
    derandomize=True,
    deadline=None,
    database=None,
    max_examples=200,
    suppress_health_check=[HealthCheck.too_slow],
)
settings.load_profile("catchword")

TEMPLATE = "migrated"


@pytest.fixture(scope="session")
def postgres() -> Iterator[Server]:
    """A PostgreSQL server with one migrated database to copy; skipped without, but not in CI."""
    try:
        server = running()
        with server as started:
            store = SqlStore(started.create(TEMPLATE))
            store.migrate()
            store.close()
            yield started
    except ServerMissingError as error:
        reason = f"PostgreSQL was not tested: {error}"
        if os.environ.get("CI") == "true":
            pytest.fail(reason)
        pytest.skip(reason)


@pytest.fixture(params=["sqlite", "postgresql"])
def address(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[str]:
    """The address of a migrated, empty database: an SQLite file, then one on PostgreSQL."""
    if request.param == "sqlite":
        file = tmp_path / "library.db"
        lay_empty_library(file)
        yield f"sqlite:///{file}"
    else:
        server: Server = request.getfixturevalue("postgres")
        name = f"test_{uuid4().hex}"
        yield server.create(name, TEMPLATE)
        server.drop(name)


@pytest.fixture
def store(address: str) -> Iterator[SqlStore]:
    """A migrated, empty store, on each database in turn."""
    made = SqlStore(address)
    yield made
    made.close()
