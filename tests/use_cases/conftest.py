"""A reader's house on each kind of store."""

from collections.abc import Callable
from uuid import UUID

import pytest

from cards.digest import Digest
from service.store.sql_store import SqlStore
from service.use_cases.add_digest import add_digest
from tests.use_cases.house import DIGEST, House


@pytest.fixture
def house(store: SqlStore) -> House:
    """A reader's empty library, on SQLite and on PostgreSQL in turn."""
    return House(store)


@pytest.fixture
def digest() -> Digest:
    """A whole digest: one theme, two commitments, one quotation."""
    return DIGEST


@pytest.fixture
def added(house: House, digest: Digest) -> Callable[[], UUID]:
    """Add the digest, and return its id when called."""
    return lambda: add_digest(house.desk, "silas.docx", house.shelf.put(digest)).kept.id
