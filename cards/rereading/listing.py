"""The re-reading list: books to open again, most worth it first."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from uuid import UUID

from cards.digest import folded
from cards.rereading.because import Because, Reason
from cards.rereading.reading_pace import minutes_for
from cards.rereading.reasons import reasons_of
from cards.rereading.record import BookRecord
from cards.rereading.stretches import MARGIN, Stretch, stretches_of

MOST_BOOKS = 12
"""Books on the list: one a month for a year; the rest are counted."""
_PAGES_UNKNOWN = 1 + 2 * MARGIN
"""Pages counted for what has no known page where books are ranked; never said to the reader."""


@dataclass(frozen=True, slots=True)
class BookToReread:
    """A book worth opening again.

    Attributes:
        digest_id, title, author: of the book.
        reasons: why, what weighs most first; never empty.
        stretches: what to read, by page in the book's order, then what has no page.
        minutes: what the pages known take, or None when none is.
        worth: what reading them is worth an hour, by the weights of `because.WORTH`.
    """

    digest_id: UUID
    title: str
    author: str | None
    reasons: tuple[Because, ...]
    stretches: tuple[Stretch, ...]
    minutes: int | None
    worth: float

    @property
    def items(self) -> tuple[UUID, ...]:
        """The items concerned, each once."""
        return tuple(dict.fromkeys(item for each in self.reasons for item in each.items))


@dataclass(frozen=True, slots=True)
class RereadingList:
    """The books to open again.

    Attributes:
        day: the reader's day it is of.
        books: most worth it first, `MOST_BOOKS` at the most.
        more: how many books more there are.
    """

    day: date
    books: tuple[BookToReread, ...]
    more: int


def book_to_reread(
    record: BookRecord, day: date, target: float, a_page: float
) -> BookToReread | None:
    """Return one book with why and where to open it again, or None without a reason to.

    Args:
        record: what is known of the book.
        day: the reader's day it is.
        target: the retention the reader aims for.
        a_page: minutes a page takes the reader.
    """
    reasons = reasons_of(record, day, target)
    if not reasons:
        return None
    stretches = stretches_of(record.digest, reasons)
    known = sum(each.pages or 0 for each in stretches)
    unknown = _PAGES_UNKNOWN * sum(each.pages is None for each in stretches)
    taken = minutes_for(known + unknown, a_page)
    return BookToReread(
        record.digest.id,
        record.digest.title,
        record.digest.author,
        reasons,
        stretches,
        minutes_for(known, a_page) if known else None,
        60 * sum(each.worth for each in reasons) / taken,
    )


def list_of(
    records: Iterable[BookRecord], day: date, target: float, a_page: float
) -> RereadingList:
    """Return the books to open again, in an order that depends on nothing but what is known.

    The rule: what reading is worth an hour, in whole numbers; of equals those with a stalled
    commitment first, then by title.
    """
    found = [book_to_reread(each, day, target, a_page) for each in records]
    books = sorted((each for each in found if each is not None), key=_place)
    return RereadingList(day, tuple(books[:MOST_BOOKS]), max(0, len(books) - MOST_BOOKS))


def _place(book: BookToReread) -> tuple[int, bool, str, bytes]:
    promised = any(each.reason is Reason.STALLED for each in book.reasons)
    return -round(book.worth), not promised, folded(book.title), book.digest_id.bytes
