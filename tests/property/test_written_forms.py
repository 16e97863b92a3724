"""Any digest written out in any of our formats reads back equal, through every step."""

from collections.abc import Iterator

import pytest
from hypothesis import given, settings

from cards.digest import MAX_LOCATOR, MAX_PARTS, MAX_TEXT, Digest, Point, Quotation
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

    @settings(max_examples=80)
    @given(digest=any_digests())
    def reads_back(digest: Digest) -> None:
        written = press.write(digest, form)
        understood = understand(documents.read(f"written.{form.value}", written))
        assert understood.digest == digest
        assert not understood.left

    reads_back()


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("words", ["\U0001f9a5", " *", "a\n\n"], ids=repr)
def test_the_largest_digests_read_back(form: Form, documents: PandocDocuments, words: str):
    """A digest at its bounds, of whatever swells most, is written and read back like any."""
    text = (words * (MAX_TEXT // len(words)))[:MAX_TEXT].rstrip("\n")
    locator = "l" * MAX_LOCATOR
    digest = Digest(
        title="The Largest",
        theme=text,
        points=(Point(text, locator),) * 4 + (Point("p", locator),) * (MAX_PARTS - 4),
        quotations=(Quotation(text, locator, 1),) * 4
        + (Quotation("q", locator, 0),) * (MAX_PARTS - 4),
    )
    written = Press().write(digest, form)
    assert understand(documents.read(f"written.{form.value}", written)).digest == digest
