"""The digests of a reader's library."""

from dataclasses import replace
from datetime import timedelta
from uuid import UUID, uuid4

from cards.parts import PartKind
from service.store.sql_store import SqlStore
from service.use_cases.records import BookKey, ReaderId
from tests.store.libraries import NOW, a_book, a_file, in_any_order, key_of, shelve
from tests.store.statements import Statements


def test_many_takes_a_fixed_number_of_statements(
    store: SqlStore, reader: ReaderId, statements: Statements
) -> None:
    """Three statements fetch any number of digests, each with its own parts and links."""
    books = [a_book(f"Book {n}") for n in range(12)]
    with store.writing() as work:
        for book in books:
            shelve(work, reader, book)
        work.commit()
    for wanted in (books[:1], books):
        statements.clear()
        with store.reading() as work:
            found = work.digests.many(reader, [book.id for book in wanted])
        assert {digest_id: in_any_order(book) for digest_id, book in found.items()} == {
            book.id: in_any_order(book) for book in wanted
        }
        assert len(statements) == 3


def test_many_leaves_out_what_is_not_there(store: SqlStore, reader: ReaderId) -> None:
    """Ids of no digest are left out, ids given twice are returned once, none gives none."""
    book = a_book()
    with store.writing() as work:
        shelve(work, reader, book)
        assert set(work.digests.many(reader, [book.id, uuid4(), book.id])) == {book.id}
        assert work.digests.many(reader, []) == {}


def test_putting_again_replaces_facts_and_parts(store: SqlStore, reader: ReaderId) -> None:
    """An edited digest is returned as edited, and stays where it stood in the library."""
    book = a_book()
    theme, *rest = book.parts
    edited = replace(
        book,
        title="On Lighthouses",
        judgement="Agreed.",
        parts=(replace(theme, text="Light is kept by whoever stays."), *rest),
        revision=2,
    )
    with store.writing() as work:
        work.digests.put(reader, book, key_of(book), NOW)
        work.digests.put(reader, edited, key_of(edited), NOW + timedelta(days=9))
        kept = work.digests.get(reader, book.id)
        assert kept is not None
        assert in_any_order(kept) == in_any_order(edited)
        assert [entry.added_at for entry in work.digests.page(reader, None, 5)] == [NOW]


def test_a_part_left_out_is_kept_as_retired(store: SqlStore, reader: ReaderId) -> None:
    """A part that is no longer named keeps its row and its id, retired; named again, it is back."""
    book = a_book()
    shorter = replace(book, parts=book.parts[:-1])
    last = book.parts[-1]
    with store.writing() as work:
        work.digests.put(reader, book, key_of(book), NOW)
        work.digests.put(reader, shorter, key_of(book), NOW)
        kept = work.digests.get(reader, book.id)
        assert kept is not None
        assert kept.part(last.id) == replace(last, retired=True)
        work.digests.put(reader, book, key_of(book), NOW)
        again = work.digests.get(reader, book.id)
        assert again is not None
        assert again.part(last.id) == last


def test_alike_by_title_and_author_or_by_isbn(store: SqlStore, reader: ReaderId) -> None:
    """A book is recognised by its folded title and author, or by its ISBN; oldest first."""
    first, second, third = a_book(), a_book(), a_book()
    with store.writing() as work:
        work.digests.put(reader, second, BookKey("b", "x", "9780000000002"), NOW)
        work.digests.put(reader, first, BookKey("a", "x", "9780000000002"), NOW - timedelta(days=1))
        work.digests.put(reader, third, BookKey("b", "", None), NOW)

        def alike(title: str, author: str, isbn: str | None) -> list[UUID]:
            return [book.id for book in work.digests.alike(reader, BookKey(title, author, isbn))]

        assert alike("c", "x", "9780000000002") == [first.id, second.id]
        assert alike("a", "x", None) == [first.id]
        assert alike("b", "", None) == [third.id]
        assert alike("a", "", None) == []


def test_alike_returns_removed_ones_too(store: SqlStore, reader: ReaderId) -> None:
    """A removed digest is recognised, and marked."""
    book = replace(a_book(), removed=True)
    with store.writing() as work:
        work.digests.put(reader, book, key_of(book), NOW)
        assert [found.removed for found in work.digests.alike(reader, key_of(book))] == [True]


def test_from_file_asks_for_the_latest_original(store: SqlStore, reader: ReaderId) -> None:
    """A digest is found by the name of the file it was last read from, by no earlier name."""
    book, other = a_book(), a_book("Of Harbours")
    with store.writing() as work:
        work.digests.put(reader, other, key_of(other), NOW + timedelta(hours=1))
        work.digests.put(reader, book, key_of(book), NOW)
        work.digests.keep_original(reader, book.id, a_file(b"1", "draft.odt"))
        work.digests.keep_original(reader, book.id, a_file(b"2", "fell.docx"))
        work.digests.keep_original(reader, other.id, a_file(b"2", "fell.docx"))
        assert work.digests.from_file(reader, "draft.odt") == []
        found = work.digests.from_file(reader, "fell.docx")
        assert [digest.id for digest in found] == [book.id, other.id]


def test_the_same_bytes_again_are_the_latest_original(store: SqlStore, reader: ReaderId) -> None:
    """Bytes kept a second time become the latest again, under their new name."""
    book = a_book()
    with store.writing() as work:
        work.digests.put(reader, book, key_of(book), NOW)
        assert work.digests.original(reader, book.id) is None
        assert work.digests.original_hash(reader, book.id) is None
        for file in (a_file(b"1", "one.md"), a_file(b"2", "two.md"), a_file(b"1", "again.md")):
            work.digests.keep_original(reader, book.id, file)
            assert work.digests.original(reader, book.id) == file
            assert work.digests.original_hash(reader, book.id) == file.sha256


def test_no_listing_loads_the_bytes_of_originals(
    store: SqlStore, reader: ReaderId, statements: Statements
) -> None:
    """Nothing but asking for the original itself names the column that holds its bytes."""
    book = a_book()
    with store.writing() as work:
        shelve(work, reader, book)
        work.digests.keep_original(reader, book.id, a_file())
        work.commit()
    statements.clear()
    with store.reading() as work:
        work.digests.get(reader, book.id)
        work.digests.page(reader, None, 10)
        work.digests.alike(reader, key_of(book))
        work.digests.from_file(reader, "fell.docx")
        work.digests.original_hash(reader, book.id)
        assert not any("content" in statement for statement in statements)
        work.digests.original(reader, book.id)
    assert "content" in statements[-1]


def test_pages_are_newest_first_and_meet(
    store: SqlStore, reader: ReaderId, statements: Statements
) -> None:
    """Page after page gives every digest not removed once, newest first; two statements each."""
    with store.writing() as work:
        for n in range(7):
            book = a_book(f"Book {n}")
            # Three arrive in the same instant: the id decides between them.
            work.digests.put(reader, book, key_of(book), NOW + timedelta(days=n // 3))
        gone = replace(a_book("Gone"), removed=True)
        work.digests.put(reader, gone, key_of(gone), NOW)
        work.commit()
    seen: list[tuple[object, bytes]] = []
    with store.reading() as work:
        after = None
        statements.clear()
        while page := work.digests.page(reader, after, 3):
            seen += [(entry.added_at, entry.kept.id.bytes) for entry in page]
            after = (page[-1].added_at, page[-1].kept.id)
    assert seen == sorted(seen, reverse=True)
    assert len(set(seen)) == 7
    assert len(statements) == 3 * 3 + 1
    assert gone.id.bytes not in {digest_id for _, digest_id in seen}


def test_held_parts_are_in_order(store: SqlStore, reader: ReaderId) -> None:
    """The parts held of one kind come back in the digest's order."""
    book = a_book(quotations=12)
    with store.writing() as work:
        shelve(work, reader, book)
        kept = work.digests.get(reader, book.id)
    assert kept is not None
    assert kept.held(PartKind.QUOTATION) == book.held(PartKind.QUOTATION)
