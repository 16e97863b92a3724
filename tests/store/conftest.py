"""Fixtures for the tests of the store."""

from uuid import uuid4

import pytest

from service.store.sql_store import SqlStore
from service.use_cases.records import ReaderId
from tests.store.statements import Statements


@pytest.fixture
def reader() -> ReaderId:
    """A reader never seen before."""
    return ReaderId(uuid4())


@pytest.fixture
def statements(store: SqlStore) -> Statements:
    """Every statement the store sends from now on, as it is sent."""
    return Statements(store.engines)
