"""Any digest is printed, or refused with its letters named; and it is always measured."""

from hypothesis import given, settings

from cards.digest import Digest
from cards.errors import CannotPrint
from service.documents.press.press import Press
from service.use_cases.records import Form
from tests.property.written_digests import any_digests

PRESS = Press()


def printed(digest: Digest) -> bytes:
    """The file, or else the sentence that says why there is none."""
    try:
        return PRESS.write(digest, Form.PDF)
    except CannotPrint as refused:
        return refused.message.encode()


@settings(max_examples=30)
@given(digest=any_digests())
def test_nothing_else_can_come_of_printing(digest: Digest):
    """Whatever a digest holds, the press gives a PDF or says which letters it lacks."""
    assert printed(digest).startswith((b"%PDF-", b"No font on this machine has these letters"))
    assert PRESS.measure(digest).pages[0].lines_used > 0
