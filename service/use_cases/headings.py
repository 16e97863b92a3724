"""A reader's own heading words: what announces a part in the digests they write."""

from collections.abc import Mapping

from cards.intake.heading_words import HeadingWords, Part, heading_words
from service.use_cases.ports import Desk


def show_headings(desk: Desk) -> dict[str, Part]:
    """Return the reader's heading words as written, with the part each announces."""
    with desk.store.reading() as work:
        return work.headings.all(desk.reader)


def set_headings(desk: Desk, words: Mapping[str, Part]) -> dict[str, Part]:
    """Keep heading words in place of all there were.

    They hold from the next document that is read; nothing that is kept changes.

    Raises:
        Invalid: there are too many, or one is no word a heading could be.
    """
    heading_words(words)
    with desk.store.writing() as work:
        work.readers.lock(desk.reader)
        work.headings.put(desk.reader, words)
        work.commit()
    return show_headings(desk)


def own_words(desk: Desk) -> HeadingWords:
    """Return the reader's heading words as documents are read with them."""
    return heading_words(show_headings(desk))
