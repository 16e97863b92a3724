"""Fixtures of the documents' tests."""

import pytest

from service.documents.reader import PandocDocuments


@pytest.fixture(scope="session")
def documents() -> PandocDocuments:
    """The reader of documents, with its usual bounds."""
    return PandocDocuments()
