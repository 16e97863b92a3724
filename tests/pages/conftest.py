"""A library behind the pages, with a clock the tests can set."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from flask import Flask
from flask.testing import FlaskClient

from service.use_cases.add_digest import Added, add_digest
from service.use_cases.ports import Desk
from tests.pages.house import DIGEST, Clock, library
from tests.standing import application_on


@pytest.fixture
def clock() -> Clock:
    """Stand at 20:00 on 2 March 2026."""
    return Clock()


@pytest.fixture
def desk(tmp_path: Path, clock: Clock) -> Iterator[Desk]:
    """An empty library."""
    with library(tmp_path, clock.now) as opened:
        yield opened


@pytest.fixture
def app(desk: Desk) -> Iterator[Flask]:
    """The application over that library; a name a template misses is an error."""
    with application_on(desk) as lent:
        yield lent


@pytest.fixture
def client(app: Flask) -> FlaskClient:
    """A browser without scripts."""
    return app.test_client()


@pytest.fixture
def added(desk: Desk) -> Added:
    """The digest of Silas Marner, handed in."""
    return add_digest(desk, "silas.md", DIGEST.encode())
