"""A round trip through either database loses nothing."""

from datetime import UTC, date, datetime, timedelta, timezone
from uuid import uuid4

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from cards.answers import Answer, Grade, in_order
from cards.commitments import CheckIn
from cards.intake.heading_words import Part
from cards.items import Item, KeptItem
from cards.parts import Care, KeptDigest, PartKind
from cards.proving import Anchor
from cards.schedule import Memory
from service.store.sql_store import SqlStore
from service.use_cases.records import (
    BookFile,
    BookKey,
    Draft,
    Original,
    PartAnchor,
    Reader,
    ReaderId,
    Version,
    VersionEntry,
)
from tests.store.anything import (
    anchors,
    answers,
    book_files,
    books,
    check_ins,
    drafts,
    files,
    instants,
    memories,
    settings_of_readers,
    some_words,
    versions,
)
from tests.store.libraries import NOW, TODAY, a_book, an_answer, in_any_order, shelve

# The store is one for all examples; each has a reader of its own, whom no other touches.
many = settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
BOOK = a_book()


def new_reader() -> ReaderId:
    """Return a reader nobody else is."""
    return ReaderId(uuid4())


@many
@given(given_reader=settings_of_readers)
def test_readers(store: SqlStore, given_reader: Reader) -> None:
    """Settings come back as they were put."""
    with store.writing() as work:
        work.readers.put(given_reader)
        work.commit()
    with store.reading() as work:
        assert work.readers.get(given_reader.id) == given_reader


@many
@given(book=books, added_at=instants)
def test_digests(store: SqlStore, book: KeptDigest, added_at: datetime) -> None:
    """A digest comes back with every word, date, number and part."""
    reader = new_reader()
    with store.writing() as work:
        work.digests.put(reader, book, BookKey("k", "", None), added_at)
        work.commit()
    with store.reading() as work:
        kept = work.digests.get(reader, book.id)
        page = work.digests.page(reader, None, 10)
    assert kept is not None
    assert in_any_order(kept) == in_any_order(book)
    assert [entry.added_at for entry in page] == ([] if book.removed else [added_at])


@many
@given(
    memory=st.none() | memories,
    number=st.integers(1, 500),
    retired=st.booleans(),
    care=st.sampled_from(Care),
)
@example(
    memory=Memory(1e-17, 1.0000000000000002, date.min, date.max, Grade.BLANK, 1, date.max),
    number=1,
    retired=False,
    care=Care.CLOSE,
)
@example(
    memory=Memory(0.1 + 0.2, 9.999999999999998, date.min, date.min, Grade.VIVID, 3, date.min),
    number=1,
    retired=False,
    care=Care.CLOSE,
)
def test_items(
    store: SqlStore, memory: Memory | None, number: int, care: Care, *, retired: bool
) -> None:
    """An item comes back with its care and its memory, every float to the last bit."""
    reader = new_reader()
    theme = BOOK.held(PartKind.THEME)[0]
    with store.writing() as work:
        first = shelve(work, reader, BOOK)[0]
        item = Item(first.id, first.kind, BOOK.id, theme.id, number, retired)
        work.items.put(reader, [item], NOW, care)
        work.items.remember(reader, item.id, memory)
        work.commit()
    with store.reading() as work:
        assert work.items.get(reader, item.id) == KeptItem(item, memory, care)


@many
@given(data=st.data(), received_at=instants)
def test_answers(store: SqlStore, data: st.DataObject, received_at: datetime) -> None:
    """Answers come back word for word, and in the order the core puts them in."""
    reader = new_reader()
    with store.writing() as work:
        item = shelve(work, reader, BOOK)[0]
        given_answers = data.draw(
            st.lists(answers([item.id]), max_size=8, unique_by=lambda answer: answer.id)
        )
        for answer in given_answers:
            work.answers.add(reader, answer, received_at)
        work.commit()
    with store.reading() as work:
        assert work.answers.of_item(reader, item.id) == in_order(given_answers)
        for answer in given_answers:
            kept = work.answers.get(reader, answer.id)
            assert kept is not None
            assert (kept.answer, kept.received_at, kept.taken_back_at) == (
                answer,
                received_at,
                None,
            )


@many
@given(data=st.data())
def test_check_ins(store: SqlStore, data: st.DataObject) -> None:
    """Check-ins come back word for word, by day and id."""
    reader = new_reader()
    commitment = BOOK.held(PartKind.COMMITMENT)[0].id
    reports: list[CheckIn] = data.draw(
        st.lists(check_ins(commitment), max_size=6, unique_by=lambda report: report.id)
    )
    with store.writing() as work:
        shelve(work, reader, BOOK)
        for report in reports:
            work.check_ins.add(reader, report)
        work.commit()
    with store.reading() as work:
        assert work.check_ins.of_digest(reader, BOOK.id) == sorted(
            reports, key=lambda report: (report.day, report.id.bytes)
        )


@many
@given(file=files)
def test_originals(store: SqlStore, file: Original) -> None:
    """A file comes back byte for byte."""
    reader = new_reader()
    with store.writing() as work:
        shelve(work, reader, BOOK)
        work.digests.keep_original(reader, BOOK.id, file)
        work.commit()
    with store.reading() as work:
        assert work.digests.original(reader, BOOK.id) == file
        assert work.digests.original_hash(reader, BOOK.id) == file.sha256


@many
@given(version=versions)
def test_versions(store: SqlStore, version: Version) -> None:
    """A version comes back exactly as the digest was: every fact, every part, in its order."""
    reader = new_reader()
    kept = version.kept
    with store.writing() as work:
        work.digests.put(reader, kept, BookKey("k", "", None), NOW)
        work.versions.add(reader, version)
        work.commit()
    with store.reading() as work:
        assert work.versions.get(reader, kept.id, kept.revision) == version
        entries = work.versions.page(reader, kept.id, None, 9)
        wordings = work.versions.wordings(reader, kept.id, 9)
    assert entries == [VersionEntry(kept.revision, version.kept_at, version.cause)]
    assert wordings == {part.id: (part.text,) for part in kept.parts}


@many
@given(draft=drafts)
def test_drafts(store: SqlStore, draft: Draft) -> None:
    """A draft comes back as it was typed, with all that is told about it."""
    reader = new_reader()
    with store.writing() as work:
        work.drafts.put(reader, draft)
        work.commit()
    with store.reading() as work:
        assert work.drafts.get(reader, draft.id) == draft
        assert work.drafts.page(reader, None, 9) == [draft]


@many
@given(words=st.dictionaries(some_words.filter(lambda w: len(w) <= 80), st.sampled_from(Part)))
def test_headings(store: SqlStore, words: dict[str, Part]) -> None:
    """Heading words come back to the letter, each with the part it announces."""
    reader = new_reader()
    with store.writing() as work:
        work.headings.put(reader, words)
        work.commit()
    with store.reading() as work:
        assert work.headings.all(reader) == words


@many
@given(book=book_files, given_anchors=st.lists(anchors, max_size=3))
def test_books(store: SqlStore, book: BookFile, given_anchors: list[Anchor]) -> None:
    """A book's text comes back character for character, an anchor to the last bit."""
    reader = new_reader()
    quotations = sorted(
        (part.id for part in BOOK.held(PartKind.QUOTATION)), key=lambda one: one.bytes
    )
    found = [PartAnchor(*pair) for pair in zip(quotations, given_anchors, strict=False)]
    with store.writing() as work:
        shelve(work, reader, BOOK)
        work.books.put(reader, BOOK.id, book)
        work.books.put_anchors(reader, BOOK.id, found)
        work.commit()
    with store.reading() as work:
        assert work.books.get(reader, BOOK.id) == book
        assert work.books.anchors(reader, BOOK.id) == found


@pytest.mark.parametrize(
    "answered_at",
    [
        datetime(2026, 10, 25, 1, 30, tzinfo=timezone(timedelta(hours=1))),
        datetime(9999, 12, 31, 23, 59, 59, 999_999, tzinfo=UTC),
        datetime(1, 1, 1, tzinfo=UTC),
    ],
)
def test_instants(store: SqlStore, answered_at: datetime) -> None:
    """An instant comes back as the same instant, to the microsecond, in UTC."""
    reader = new_reader()
    with store.writing() as work:
        item = shelve(work, reader, BOOK)[0]
        answer = Answer(uuid4(), item.id, Grade.HAZY, answered_at, TODAY)
        work.answers.add(reader, answer, NOW)
        kept = work.answers.get(reader, answer.id)
    assert kept is not None
    assert kept.answer.answered_at == answered_at
    assert kept.answer.answered_at.tzinfo is UTC


def test_an_answer_sent_from_another_time_zone_is_the_same_answer(store: SqlStore) -> None:
    """Adding one answer twice changes nothing, in whatever zone its instant is written."""
    reader = new_reader()
    with store.writing() as work:
        item = shelve(work, reader, BOOK)[0]
        answer = an_answer(item)
        abroad = answer.answered_at.astimezone(timezone(timedelta(hours=9)))
        again = Answer(answer.id, item.id, answer.grade, abroad, answer.day)
        work.answers.add(reader, answer, NOW)
        work.answers.add(reader, again, NOW)
        assert work.answers.of_item(reader, item.id) == [answer]
