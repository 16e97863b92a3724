"""A small book for tests: the opening of *Emma* and two invented chapters, with pages."""

from cards.proving import BookText, Chapter, Folded, PageMark, fold_book

PREFACE = "A word before. The reader is asked for patience.\n\n"
ONE = (
    "VOLUME I\n\nCHAPTER I\n\nEmma Woodhouse, handsome, clever, and rich, with a comfortable home\n"
    "and happy disposition, seemed to unite some of the best blessings of\nexistence; and had "
    "lived nearly twenty-one years in the world with very\nlittle to distress or vex her.\n\n"
    "“It _was_ badly done,” said he—“in-\ndeed!” The ﬁre was low. She sat by the window.\n\n"
)
TWO = (
    "VOLUME II\n\nCHAPTER I\n\nThe harbour was empty, and the gulls had the quay to themselves; "
    "nobody came down for the morning boat. She sat by the window. A letter lay unopened on the "
    "sill, and the rain went on as if it had been paid to.\n\n"
)
THREE = (
    "CHAPTER II\n\nIn spring the harbour filled again. Nobody remembered the winter, or said so.\n"
    "She sat by the window."
)
TEXT = PREFACE + ONE + TWO + THREE


def book() -> BookText:
    """Return the book: three chapters in two volumes, six pages, the first in Roman numerals."""
    starts = [len(PREFACE), len(PREFACE + ONE), len(PREFACE + ONE + TWO)]
    titles = ["VOLUME I, CHAPTER I", "VOLUME II, CHAPTER I", "VOLUME II, CHAPTER II"]
    ends = [*starts[1:], len(TEXT)]
    pages = {
        "ix": 0,
        "1": starts[0],
        "2": TEXT.index("“It _was_"),
        "3": starts[1],
        "4": TEXT.index("A letter lay"),
        "5": starts[2],
    }
    return BookText(
        title="Emma, continued",
        author=None,
        isbn=None,
        text=TEXT,
        chapters=tuple(
            Chapter(number, title, start, end)
            for number, (title, start, end) in enumerate(zip(titles, starts, ends, strict=True), 1)
        ),
        pages=tuple(PageMark(label, start) for label, start in pages.items()),
    )


def folded() -> Folded:
    """Return the book folded."""
    return fold_book(book())
