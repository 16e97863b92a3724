"""Any digest written out in any of our formats reads back equal, through every step."""

from collections.abc import Iterator

import pytest
from hypothesis import given, settings

from cards.digest import Digest
from cards.intake import understand
from service.documents.press.press import Press
from service.documents.reader import PandocDocuments
from service.use_cases.records import Form
from tests.property.written_digests import any_digests

FORMS = [Form.DOCX, Form.ODT, Form.MARKDOWN, Form.JSON]


@pytest.fixture(scope="module")
def documents() -> Iterator[PandocDocuments]:
    """The reader of documents, with its usual bounds."""
    reader = PandocDocuments()
    yield reader
    reader.close()


@pytest.mark.parametrize("form", FORMS)
def test_what_is_written_reads_back_equal(form: Form, documents: PandocDocuments):
    """A digest of any texts, written out, read as a file and understood, is the same digest."""
    press = Press()

    @settings(max_examples=150)
    @given(digest=any_digests())
    def reads_back(digest: Digest) -> None:
        written = press.write(digest, form)
        understood = understand(documents.read(f"written.{form.value}", written))
        assert understood.digest == digest
        assert not understood.left

    reads_back()
