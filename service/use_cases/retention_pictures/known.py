"""How much is known now, and would be in a year, with and without sittings, book by book."""

from collections.abc import Sequence

from cards.planning import BookKnown
from service.use_cases.picture_records import Column, Picture, Share, Shares, Table, Unit
from service.use_cases.picture_records.table import MOST_ROWS
from service.use_cases.retaining import Retained
from service.use_cases.retention_pictures.words import counted, title_of

MOST_BOOKS = 30
"""Books drawn; the table holds all."""
_COLUMNS = (
    Column("book", "Book", Unit.TEXT),
    Column("items", "Items", Unit.COUNT),
    Column("asked", "Asked so far", Unit.COUNT),
    Column("now", "Known now", Unit.COUNT),
    Column("left_alone", "In a year without a sitting", Unit.COUNT),
    Column("kept_up", "In a year with sittings", Unit.COUNT),
)


def known(retained: Retained) -> Picture:
    """Return how many items of each book would come back today, and in a year.

    In the place of an interval stands what of them is known in a year, from without a sitting
    to with one every day.
    """
    books = retained.known
    told = in_words(retained)
    rows: tuple[Share, ...] = ()
    if any(each.asked for each in books):
        told += (
            " Each dot is what is known now; its line reaches from what is left in a year without "
            "a sitting to what is known with one every day."
        )
        if len(books) > MOST_BOOKS:
            told += f" Drawn are the {MOST_BOOKS} books that fade most when left alone."
        fading = sorted(books, key=lambda each: (each.left_alone / each.items, each.book))
        rows = (
            _row("All books", books),
            *(_row(title_of(retained, each.book), (each,)) for each in fading[:MOST_BOOKS]),
        )
    return Picture(
        "known",
        "What is known now, and in a year",
        told,
        Table(
            _COLUMNS,
            tuple(
                (
                    title_of(retained, each.book),
                    each.items,
                    each.asked,
                    each.now,
                    each.left_alone,
                    each.kept_up,
                )
                for each in sorted(books, key=lambda each: title_of(retained, each.book))[
                    :MOST_ROWS
                ]
            ),
        ),
        Shares(rows),
    )


def in_words(retained: Retained) -> str:
    """Return how much of the library is known now, and would be in a year."""
    books = retained.known
    if not any(each.asked for each in books):
        return "Nothing was asked yet, so nothing can be said of what is known."
    items, now, alone, up = _sums(books)
    return (
        f"Of {counted(items, 'item')} in {counted(len(books), 'book')} you would recall some "
        f"{now:,.0f} today. In a year it would be {alone:,.0f} if you never sat down again, and "
        f"{up:,.0f} with a sitting of {retained.habits.minutes:g} minutes every day."
    )


def _sums(books: Sequence[BookKnown]) -> tuple[int, float, float, float]:
    return (
        sum(each.items for each in books),
        sum(each.now for each in books),
        sum(each.left_alone for each in books),
        sum(each.kept_up for each in books),
    )


def _row(label: str, books: Sequence[BookKnown]) -> Share:
    items, *known = _sums(books)
    now, alone, up = (min(1.0, each / items) for each in known)
    return Share(label, now, min(now, alone, up), max(now, alone, up), items)
