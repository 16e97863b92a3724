"""The whole books of `tests/reference/novels`, read and folded once a run."""

import lzma
from functools import cache
from pathlib import Path

from cards.proving import BookText, Folded, fold_book
from service.documents.book_texts import BookTexts

NOVELS = Path(__file__).parent / "novels"
TITLES = (
    "emma",
    "mansfieldpark",
    "mobydick",
    "northangerabbey",
    "persuasion",
    "prideprejudice",
    "sensesensibility",
)
EPUB = NOVELS / "childrens-literature.epub"


@cache
def book(title: str) -> BookText:
    """Return a novel as the program reads it from a plain text file."""
    return BookTexts().read(
        f"{title}.txt", lzma.decompress((NOVELS / f"{title}.txt.xz").read_bytes())
    )


@cache
def folded(title: str) -> Folded:
    """Return a novel folded."""
    return fold_book(book(title))
