"""The text of a book, with its chapters and, where an edition gives them, its pages."""

from dataclasses import dataclass
from itertools import pairwise

from cards.errors import Invalid

MAX_CHARACTERS = 20_000_000
"""Characters of one book: sixteen times *Moby-Dick*, some four times the whole Bible."""
MAX_MARKS = 50_000
"""Chapters, or pages, of one book: as many as a digest may say it has."""


@dataclass(frozen=True, slots=True)
class Chapter:
    """A chapter of a book.

    Attributes:
        number: counted from 1 through the whole book, volumes and parts included.
        title: its heading as printed, or ""; where chapters stand in volumes, books or parts
            theirs goes before it: "VOLUME III, CHAPTER XIII".
        start, end: offsets in characters; it holds start and not end.
    """

    number: int
    title: str
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class PageMark:
    """Where a page of the printed edition begins: its number as printed, and the offset."""

    label: str
    start: int


@dataclass(frozen=True, slots=True)
class BookText:
    """The whole text of a book.

    Attributes:
        title, author, isbn: what the file says about itself, or None.
        text: paragraphs parted by blank lines.
        chapters: in order, none overlapping; empty where none was recognised.
        pages: in order; empty where the edition gives none.

    Raises:
        Invalid: it is over a bound, or a chapter or page is out of order or outside it.
    """

    title: str | None
    author: str | None
    isbn: str | None
    text: str
    chapters: tuple[Chapter, ...] = ()
    pages: tuple[PageMark, ...] = ()

    def __post_init__(self) -> None:
        if len(self.text) > MAX_CHARACTERS:
            raise Invalid(
                f"The text of a book has at most {MAX_CHARACTERS} characters; this one has "
                f"{len(self.text)}.",
                where="book",
            )
        if max(len(self.chapters), len(self.pages)) > MAX_MARKS:
            raise Invalid(f"A book has at most {MAX_MARKS} chapters and pages.", where="book")
        bounds = [0, *(at for one in self.chapters for at in (one.start, one.end)), len(self.text)]
        starts = [0, *(page.start for page in self.pages), len(self.text)]
        if any(one > other for at in (bounds, starts) for one, other in pairwise(at)):
            raise Invalid(
                "The chapters and pages of a book stand in order, each inside its text.",
                where="book",
            )
