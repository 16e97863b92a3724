"""How large a book may be, and the sentences that refuse one that is larger."""

from cards.errors import DocumentBroken, DocumentTooLarge
from cards.proving.text import MAX_CHARACTERS

MAX_FILE = 64 * 1024 * 1024
"""Bytes of a file: a long novel is 1 MB, an EPUB with a hundred pictures some 30."""
MAX_ENTRIES = 25_000
"""Files in one EPUB: one a page, for ten thousand pages, with a picture on each."""
MAX_RECORDS = 2 * MAX_ENTRIES
"""Directory records of one EPUB, folders among them, before its directory is read."""
MAX_UNPACKED = 128 * 1024 * 1024
"""Bytes of all an EPUB's text parts after unpacking: six for each character that is kept."""
MAX_RATIO = 200
"""Unpacked size over packed size of one large part; prose in markup stays under 20."""
LARGE_PART = 1024 * 1024
"""Bytes from which a part's ratio is looked at."""


def too_large(name: str) -> DocumentTooLarge:
    """Return the refusal of a file over the bound."""
    return DocumentTooLarge(
        f"“{name}” is larger than {MAX_FILE // (1024 * 1024)} MB, far more than the text of a "
        "book. Hand over the book's text without its pictures.",
        where="file",
    )


def too_long(name: str) -> DocumentTooLarge:
    """Return the refusal of a text over the bound."""
    return DocumentTooLarge(
        f"“{name}” holds more than {MAX_CHARACTERS // 1_000_000} million characters, many times "
        "the longest book. Hand over one book, or one volume of it.",
        where="file",
    )


def swollen(name: str) -> DocumentTooLarge:
    """Return the refusal of an archive that unpacks to more than a book can hold."""
    return DocumentTooLarge(
        f"“{name}” unpacks to far more than a book can hold, so it was not opened. Hand over the "
        "book's text alone.",
        where="file",
    )


def damaged(name: str) -> DocumentBroken:
    """Return the refusal of an EPUB that cannot be opened."""
    return DocumentBroken(
        f"“{name}” is cut short or damaged, so the book can not be opened. Fetch or export it "
        "once more and hand over the whole file.",
        where="file",
    )
