"""Fixtures of the press's tests."""

from collections.abc import Iterator

import pytest

from service.documents.press.press import Press
from service.documents.reader import PandocDocuments


@pytest.fixture(scope="session")
def documents() -> Iterator[PandocDocuments]:
    """The reader of documents, with its usual bounds."""
    reader = PandocDocuments()
    yield reader
    reader.close()


@pytest.fixture(scope="session")
def press() -> Press:
    """The press."""
    return Press()
