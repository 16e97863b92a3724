"""Invented books for the tests of the store, made by hand."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from hashlib import sha256
from uuid import uuid4

from cards.answers import Answer, Grade
from cards.digest import Notice
from cards.intake import Source
from cards.items import Item, item_id
from cards.kinds.base import KindName
from cards.parts import KeptDigest, Part, PartKind
from cards.proving import Anchor, BookText, Chapter, PageMark
from cards.schedule import Memory
from service.store.unit_of_work import SqlUnitOfWork
from service.use_cases.records import (
    BookFile,
    BookKey,
    Draft,
    Original,
    ReaderId,
)

NOW = datetime(2026, 3, 1, 21, 40, tzinfo=UTC)
TODAY = date(2026, 3, 1)
TOMORROW = TODAY + timedelta(days=1)

_KIND = {
    PartKind.THEME: KindName.THEME,
    PartKind.COMMITMENT: KindName.RESTATE,
    PartKind.QUOTATION: KindName.PLACE,
}


def a_book(title: str = "Of Lighthouses", quotations: int = 3) -> KeptDigest:
    """Return a digest with a theme, two points, a commitment and some quotations."""
    return KeptDigest(
        id=uuid4(),
        title=title,
        author="E. Fell",
        edition=None,
        isbn=None,
        pages=310,
        finished_on=TODAY,
        judgement=None,
        parts=(
            Part(uuid4(), PartKind.THEME, 1, "Light is kept by those who stay."),
            Part(uuid4(), PartKind.POINT, 1, "A lamp is lit.", "ch. 1"),
            Part(uuid4(), PartKind.POINT, 2, "A ship is lost."),
            Part(uuid4(), PartKind.COMMITMENT, 1, "Write to one friend every Sunday."),
            *(
                Part(uuid4(), PartKind.QUOTATION, n, f"The sea said {n}.", f"p. {n}", after=1)
                for n in range(1, quotations + 1)
            ),
        ),
    )


def key_of(book: KeptDigest) -> BookKey:
    """Return the key of a book, folded enough for a test."""
    return BookKey(book.title.casefold(), (book.author or "").casefold(), book.isbn)


def items_of(book: KeptDigest) -> list[Item]:
    """Return an item for each part that makes one."""
    return [
        Item(item_id(part.id, _KIND[part.kind]), _KIND[part.kind], book.id, part.id, part.number)
        for part in book.parts
        if part.kind in _KIND
    ]


def shelve(
    work: SqlUnitOfWork, reader: ReaderId, book: KeptDigest, now: datetime = NOW
) -> list[Item]:
    """Keep a book with its items, and return them."""
    work.digests.put(reader, book, key_of(book), now)
    made = items_of(book)
    work.items.put(reader, made, now)
    return made


def an_answer(item: Item, minutes: int = 0, grade: Grade = Grade.CLEAR) -> Answer:
    """Return an answer given some minutes after `NOW`."""
    return Answer(uuid4(), item.id, grade, NOW + timedelta(minutes=minutes), TODAY)


def a_memory(due_on: date = TODAY, grade: Grade = Grade.CLEAR, first: date = TODAY) -> Memory:
    """Return a memory due on a day."""
    return Memory(3.25, 5.5, first, TODAY, grade, 1, due_on)


def a_file(content: bytes = b"a digest", name: str = "fell.docx") -> Original:
    """Return a file as it came."""
    return Original(name, content, sha256(content).hexdigest(), NOW)


def a_draft(typed: Mapping[str, str] | None = None) -> Draft:
    """Return a draft that was read from a file, with what is to be told about it."""
    return Draft(
        id=uuid4(),
        typed={"title": "Of Lighthouses", "theme": ""} if typed is None else dict(typed),
        begun_at=NOW,
        changed_at=NOW,
        file="fell.docx",
        number=2,
        sources=(Source("title", "OF LIGHTHOUSES"), Source("points 1", "1. A lamp is lit.")),
        left=("Printed in Leith", "7"),
        notices=(Notice("theme", "No theme was found."),),
    )


def a_text() -> BookFile:
    """Return the text of a short book in two chapters, with pages."""
    told = "Dusk\n\nThe sea said 1.\n\nDawn\n\nThe sea said 2."
    return BookFile(
        name="lighthouses.epub",
        sha256="a" * 64,
        added_at=NOW,
        text=BookText(
            title="Of Lighthouses",
            author="E. Fell",
            isbn="9780000000002",
            text=told,
            chapters=(Chapter(1, "Dusk", 0, 23), Chapter(2, "Dawn", 23, len(told))),
            pages=(PageMark("ix", 0), PageMark("1", 23)),
        ),
    )


def an_anchor() -> Anchor:
    """Return where the first quotation of a book stands in its text."""
    return Anchor(
        exact="The sea said 1.",
        prefix="Dusk ",
        suffix=" Dawn",
        start=6,
        end=21,
        fraction=0.125,
        chapter=1,
        page="ix",
        source="a" * 64,
    )


def in_any_order(book: KeptDigest) -> tuple[object, ...]:
    """Return what a digest is, its parts in no order."""
    facts = replace(book, parts=())
    return (facts, frozenset(book.parts))
