"""The text of a book, with its chapters and, where an edition gives them, its pages."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Chapter:
    """A chapter of a book.

    Attributes:
        number: counted from 1 through the whole book, volumes and parts included.
        title: its heading as printed, or "".
        start, end: offsets in characters; it holds start and not end.
    """

    number: int
    title: str
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class PageMark:
    """Where a page of the printed edition begins: its number as printed, an offset in characters."""

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
    """

    title: str | None
    author: str | None
    isbn: str | None
    text: str
    chapters: tuple[Chapter, ...] = ()
    pages: tuple[PageMark, ...] = ()
