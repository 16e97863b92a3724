"""A digest written as a file and read through every step is the same digest."""

from hypothesis import HealthCheck, given, settings

from cards.digest import Digest
from cards.intake import understand
from service.documents.reader import PandocDocuments
from tests.cards.intake.digests import digests, written


@settings(
    max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(digest=digests())
def test_markdown_reads_back(documents: PandocDocuments, digest: Digest):
    """A digest put down in Markdown, read by pandoc and understood, has lost nothing."""
    content = written(digest).encode()
    assert understand(documents.read("x.md", content)).digest == digest


@settings(
    max_examples=15, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(digest=digests())
def test_plain_text_reads_back(documents: PandocDocuments, digest: Digest):
    """A digest put down as plain text, read by pandoc and understood, has lost nothing."""
    content = written(digest).encode("utf-16")
    assert understand(documents.read("x.txt", content)).digest == digest
