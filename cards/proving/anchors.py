"""Where the words of a quotation were found in the text of its book."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Anchor:
    """A quotation's place in one text of its book, and enough of it to find it in another.

    Attributes:
        exact: the book's own words, as they stand there.
        prefix, suffix: what stands right before and after them.
        start, end: offsets in characters of the text.
        fraction: how far into the book they stand, 0 to 1, of the text with its white
            space collapsed.
        chapter: number of the chapter, counted through the book, or None.
        page: the number of the page as printed, or None.
        source: sha256 of the file the text was read from, 64 hexadecimal digits.
    """

    exact: str
    prefix: str
    suffix: str
    start: int
    end: int
    fraction: float
    chapter: int | None
    page: str | None
    source: str
