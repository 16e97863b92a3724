"""The texts of a reader's books, and where quotations were found in them."""

from dataclasses import replace
from uuid import uuid4

import pytest

from cards.parts import PartKind
from cards.proving import BookText
from service.store.errors import StoreContradiction
from service.store.sql_store import SqlStore
from service.use_cases.records import PartAnchor, ReaderId
from tests.store.libraries import NOW, a_book, a_text, an_anchor, key_of, shelve
from tests.store.statements import Statements


def test_put_replaces_the_text_there_was(store: SqlStore, reader: ReaderId) -> None:
    """A digest's book has one text, the last one given."""
    book = a_book()
    other = replace(
        a_text(), name="second.epub", sha256="b" * 64, text=BookText(None, None, None, "Dawn.")
    )
    with store.writing() as work:
        shelve(work, reader, book)
        assert work.books.get(reader, book.id) is None
        assert work.books.name(reader, book.id) is None
        for given in (a_text(), other):
            work.books.put(reader, book.id, given)
            assert work.books.get(reader, book.id) == given
            assert work.books.name(reader, book.id) == given.name


def test_a_text_dropped_leaves_the_anchors(store: SqlStore, reader: ReaderId) -> None:
    """A text can be forgotten, and where quotations stood in it is still known."""
    book = a_book()
    anchor = PartAnchor(book.held(PartKind.QUOTATION)[0].id, an_anchor())
    with store.writing() as work:
        shelve(work, reader, book)
        work.books.put(reader, book.id, a_text())
        work.books.put_anchors(reader, book.id, [anchor])
        work.books.drop(reader, book.id)
        work.books.drop(reader, book.id)
        assert work.books.get(reader, book.id) is None
        assert work.books.name(reader, book.id) is None
        assert work.books.anchors(reader, book.id) == [anchor]


def test_anchors_come_by_part_and_are_replaced_one_by_one(
    store: SqlStore, reader: ReaderId
) -> None:
    """An anchor takes the place of the one its quotation had; those of others stay."""
    book, other = a_book(quotations=4), a_book("Of Harbours")
    first, second, third, _ = sorted(
        (part.id for part in book.held(PartKind.QUOTATION)), key=lambda one: one.bytes
    )
    elsewhere = PartAnchor(other.held(PartKind.QUOTATION)[0].id, an_anchor())
    moved = replace(an_anchor(), start=40, end=52, fraction=0.5, chapter=None, page="xii")
    with store.writing() as work:
        shelve(work, reader, book)
        shelve(work, reader, other)
        work.books.put_anchors(reader, book.id, [])
        assert work.books.anchors(reader, book.id) == []
        work.books.put_anchors(reader, other.id, [elsewhere])
        found = [PartAnchor(part_id, an_anchor()) for part_id in (third, first, second)]
        work.books.put_anchors(reader, book.id, found)
        work.books.put_anchors(reader, book.id, [PartAnchor(second, moved)])
        assert work.books.anchors(reader, book.id) == [
            PartAnchor(first, an_anchor()),
            PartAnchor(second, moved),
            PartAnchor(third, an_anchor()),
        ]
        assert work.books.anchors(reader, other.id) == [elsewhere]


def test_anchors_of_retired_quotations_stay(store: SqlStore, reader: ReaderId) -> None:
    """A quotation taken out keeps its anchor, should it come back."""
    book = a_book()
    anchor = PartAnchor(book.parts[-1].id, an_anchor())
    shorter = replace(book, parts=book.parts[:-1])
    with store.writing() as work:
        shelve(work, reader, book)
        work.books.put_anchors(reader, book.id, [anchor])
        work.digests.put(reader, shorter, key_of(shorter), NOW)
        assert work.books.anchors(reader, book.id) == [anchor]


def test_nothing_but_asking_for_a_text_loads_it(
    store: SqlStore, reader: ReaderId, statements: Statements
) -> None:
    """Its name, the anchors and whatever is asked of digests come without the text."""
    book = a_book()
    with store.writing() as work:
        shelve(work, reader, book)
        work.books.put(reader, book.id, a_text())
        work.commit()
    statements.clear()
    with store.reading() as work:
        work.books.name(reader, book.id)
        work.books.anchors(reader, book.id)
        work.digests.get(reader, book.id)
        work.digests.page(reader, None, 9)
        assert not any("content" in statement for statement in statements)
        statements.clear()
        work.books.get(reader, book.id)
    assert len(statements) == 1


def test_a_text_takes_less_room_than_its_words(store: SqlStore, reader: ReaderId) -> None:
    """A long text is kept compressed and comes back to the letter."""
    book = a_book()
    long = replace(a_text(), text=BookText("T", None, None, "The lamp was lit at dusk. " * 40_000))
    with store.writing() as work:
        shelve(work, reader, book)
        work.books.put(reader, book.id, long)
        work.commit()
    with store.reading() as work:
        assert work.books.get(reader, book.id) == long
    with store.engines.reading.begin() as connection:
        size = connection.exec_driver_sql("SELECT length(content) FROM book_texts").scalar_one()
    assert size < len(long.text.text) / 10


@pytest.mark.parametrize(
    "broken",
    [
        {"start": -1},
        {"start": 30, "end": 29},
        {"fraction": -0.01},
        {"fraction": 1.01},
        {"source": "short"},
    ],
    ids=str,
)
def test_what_breaks_a_rule_of_the_tables(
    store: SqlStore, reader: ReaderId, broken: dict[str, object]
) -> None:
    """An anchor that stands nowhere in a text is refused, and nothing of it is kept."""
    book = a_book()
    anchor = PartAnchor(book.parts[-1].id, replace(an_anchor(), **broken))
    with store.writing() as work:
        shelve(work, reader, book)
        work.commit()
    with store.writing() as work, pytest.raises(StoreContradiction):
        work.books.put_anchors(reader, book.id, [anchor])
    with store.reading() as work:
        assert work.books.anchors(reader, book.id) == []


def test_a_text_or_an_anchor_of_nothing_is_refused(store: SqlStore, reader: ReaderId) -> None:
    """A text belongs to a digest that is kept, an anchor to a part that is kept."""
    book = a_book()
    with store.writing() as work:
        shelve(work, reader, book)
        work.commit()
    with store.writing() as work, pytest.raises(StoreContradiction):
        work.books.put(reader, uuid4(), a_text())
    with store.writing() as work, pytest.raises(StoreContradiction):
        work.books.put_anchors(reader, book.id, [PartAnchor(uuid4(), an_anchor())])
    with store.writing() as work, pytest.raises(StoreContradiction):
        work.books.put(reader, book.id, replace(a_text(), sha256="short"))
