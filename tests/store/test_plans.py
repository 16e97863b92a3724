"""How SQLite looks things up: by index, in order, whatever the size of the library."""

import re
from collections.abc import Callable, Iterator
from contextlib import closing
from pathlib import Path
from uuid import uuid4

import pytest
from sqlalchemy import Connection, event

from service.store.sql_store import SqlStore
from service.store.unit_of_work import SqlUnitOfWork
from service.use_cases.records import ReaderId
from tests.store.libraries import NOW, TODAY, a_book, a_memory, an_answer, key_of, shelve

READER = ReaderId(uuid4())
BOOK = a_book(quotations=40)


@pytest.fixture(scope="module")
def filled(tmp_path_factory: pytest.TempPathFactory) -> Iterator[SqlStore]:
    """A small library on SQLite; nothing in it tells the planner which index is best."""
    folder: Path = tmp_path_factory.mktemp("plans")
    with closing(SqlStore(f"sqlite:///{folder / 'library.db'}")) as store:
        store.migrate()
        with store.writing() as work:
            items = shelve(work, READER, BOOK)
            for item in items[:20]:
                work.answers.add(READER, an_answer(item), NOW)
                work.items.remember(READER, item.id, a_memory())
            work.commit()
        yield store


def plan(store: SqlStore, ask: Callable[[SqlUnitOfWork], object], naming: str = "") -> list[str]:
    """Return what SQLite says of how it would do the first statement that names something."""
    steps: list[str] = []

    def explain(
        connection: Connection,
        _: object,
        statement: str,
        parameters: tuple[object, ...],
        *__: object,
    ) -> None:
        if statement.startswith("SELECT") and naming in statement and not steps:
            cursor = connection.connection.cursor()
            cursor.execute(f"EXPLAIN QUERY PLAN {statement}", parameters)
            steps.extend(row[3] for row in cursor.fetchall())
            cursor.close()

    event.listen(store.engines.reading, "before_cursor_execute", explain)
    try:
        with store.reading() as work:
            ask(work)
    finally:
        event.remove(store.engines.reading, "before_cursor_execute", explain)
    assert steps
    return steps


ORDERED = {
    "due": (
        lambda work: work.items.due(READER, TODAY),
        r"SEARCH items USING INDEX items_called \(reader_id=\? AND call_on[<>]",
    ),
    "commitments": (
        lambda work: work.items.commitments(READER, TODAY, 9),
        r"SEARCH items USING INDEX items_committed \(reader_id=\? AND call_on>\?\)",
    ),
    "what is asked afresh": (
        lambda work: work.items.afresh(READER, TODAY, 9),
        r"SEARCH items USING INDEX items_afresh \(reader_id=\? AND afresh_on[<>]",
    ),
    "check-ins since a day": (
        lambda work: work.check_ins.since(READER, {BOOK.id: TODAY}),
        r".*USING INDEX check_ins_in_order \(reader_id=\? AND commitment_id=\? AND day>\?\)",
    ),
    "decisions about a commitment": (
        lambda work: work.decisions.of(READER, [BOOK.id]),
        r"SEARCH decisions USING INDEX decisions_in_order \(reader_id=\? AND commitment_id=\?\)",
    ),
    "what leads to a book": (
        lambda work: work.links.leading_to(READER, BOOK.id),
        r"SEARCH parts USING (PRIMARY KEY|INDEX \S+) \(reader_id=\? AND id=\?\)",
    ),
    "next call": (
        lambda work: work.items.next_call(READER, TODAY),
        r"SEARCH items USING INDEX items_called \(reader_id=\? AND call_on>",
    ),
    "unasked": (
        lambda work: work.items.unasked(READER, TODAY, 9),
        r"SEARCH items USING INDEX items_unasked \(reader_id=\? AND kind=\?\)",
    ),
    "asked first": (
        lambda work: work.items.first_asked(READER, TODAY),
        r"SEARCH items USING COVERING INDEX items_by_first_day \(reader_id=\? AND first_day=\?\)",
    ),
    "page of items": (
        lambda work: work.items.page(READER, BOOK.id, 9),
        r"SEARCH items USING PRIMARY KEY \(reader_id=\? AND id>\?\)",
    ),
    "page of a digest's items": (
        lambda work: work.items.page(READER, BOOK.id, 9, BOOK.id),
        r"SEARCH items USING INDEX items_by_digest \(reader_id=\? AND digest_id=\? AND id>\?\)",
    ),
    "first page of digests": (
        lambda work: work.digests.page(READER, None, 9),
        r"SEARCH digests USING INDEX digests_by_arrival \(reader_id=\?\)",
    ),
    "page of digests": (
        lambda work: work.digests.page(READER, (NOW, BOOK.id), 9),
        r"SEARCH digests USING INDEX digests_by_arrival .*\(added_at,id\)<\(\?,\?\)\)",
    ),
    "answers of a day": (
        lambda work: work.answers.on(READER, TODAY),
        r"SEARCH answers USING INDEX answers_by_day \(reader_id=\? AND day=\?\)",
    ),
    "the last day": (
        lambda work: work.answers.last_day(READER, TODAY),
        r"SEARCH answers USING COVERING INDEX answers_by_day \(reader_id=\? AND day<\?\)",
    ),
    "the shelf": (
        lambda work: work.digests.shelf(READER, 9),
        r"SEARCH digests USING INDEX digests_by_arrival \(reader_id=\?\)",
    ),
    "open sheets": (
        lambda work: work.sheets.open(READER, 9),
        r"SEARCH sheets USING INDEX sheets_by_making \(reader_id=\?\)",
    ),
    "a block of answers to export": (
        lambda work: next(work.exporting.answers(READER)),
        r"SEARCH answers USING PRIMARY KEY \(reader_id=\?\)",
    ),
    "check-ins to export": (
        lambda work: list(work.exporting.check_ins(READER)),
        r"SEARCH check_ins USING INDEX check_ins_in_order \(reader_id=\?\)",
    ),
    "answers to an item": (
        lambda work: work.answers.of_item(READER, BOOK.id),
        r"SEARCH answers USING INDEX answers_in_order \(reader_id=\? AND item_id=\?\)",
    ),
    "history": (
        lambda work: work.answers.history(READER, BOOK.id, (NOW, BOOK.id), 9),
        r"SEARCH answers USING INDEX answers_in_order .*\(answered_at,id\)<\(\?,\?\)\)",
    ),
    "first page of versions": (
        lambda work: work.versions.page(READER, BOOK.id, None, 9),
        r"SEARCH versions USING INDEX \S+ \(reader_id=\? AND digest_id=\?\)",
    ),
    "page of versions": (
        lambda work: work.versions.page(READER, BOOK.id, 9, 9),
        r"SEARCH versions USING INDEX \S+ \(reader_id=\? AND digest_id=\? AND revision<\?\)",
    ),
    "wordings": (
        lambda work: work.versions.wordings(READER, BOOK.id, 9),
        r"SEARCH versions USING INDEX \S+ \(reader_id=\? AND digest_id=\?\)",
    ),
    "first page of drafts": (
        lambda work: work.drafts.page(READER, None, 9),
        r"SEARCH drafts USING INDEX drafts_by_change \(reader_id=\?\)",
    ),
    "page of drafts": (
        lambda work: work.drafts.page(READER, (NOW, BOOK.id), 9),
        r"SEARCH drafts USING INDEX drafts_by_change .*\(changed_at,id\)<\(\?,\?\)\)",
    ),
    "anchors": (
        lambda work: work.books.anchors(READER, BOOK.id),
        r"SEARCH anchors USING INDEX \S+ \(reader_id=\? AND digest_id=\?\)",
    ),
}


@pytest.mark.parametrize(("ask", "step"), ORDERED.values(), ids=ORDERED.keys())
def test_an_index_gives_the_rows_in_order(
    filled: SqlStore, ask: Callable[[SqlUnitOfWork], object], step: str
) -> None:
    """What grows with the library is searched by an index in its order, and nothing sorted."""
    steps = plan(filled, ask)
    assert any(re.match(step, found) for found in steps), steps
    assert not [found for found in steps if "TEMP B-TREE" in found]
    assert not [found for found in steps if found.startswith("SCAN ") and "items" in found]


SEARCHED = {
    "an item": lambda work: work.items.get(READER, BOOK.id),
    "a digest's items": lambda work: work.items.of_digest(READER, BOOK.id),
    "digests by id": lambda work: work.digests.many(READER, [BOOK.id, uuid4()]),
    "digests alike": lambda work: work.digests.alike(READER, key_of(BOOK)),
    "digests from a file": lambda work: work.digests.from_file(READER, "fell.docx"),
    "an original": lambda work: work.digests.original(READER, BOOK.id),
    "an answer": lambda work: work.answers.get(READER, BOOK.id),
    "items of digests": lambda work: work.items.standings(READER, [BOOK.id, uuid4()]),
    "check-ins": lambda work: work.check_ins.of_digest(READER, BOOK.id),
    "tallies": lambda work: work.check_ins.tallies(READER, [uuid4(), uuid4()]),
    "a version": lambda work: work.versions.get(READER, BOOK.id, 1),
    "a draft": lambda work: work.drafts.get(READER, BOOK.id),
    "a count of drafts": lambda work: work.drafts.count(READER),
    "a draft's file": lambda work: work.drafts.original(READER, BOOK.id),
    "heading words": lambda work: work.headings.all(READER),
    "a book's text": lambda work: work.books.get(READER, BOOK.id),
    "a reader": lambda work: work.readers.get(READER),
}


@pytest.mark.parametrize("ask", SEARCHED.values(), ids=SEARCHED.keys())
def test_no_table_is_scanned(filled: SqlStore, ask: Callable[[SqlUnitOfWork], object]) -> None:
    """Whatever else is asked, no table is read from end to end."""
    assert not [step for step in plan(filled, ask) if step.startswith("SCAN ")]


def test_links_of_other_books_are_not_read(filled: SqlStore) -> None:
    """The links that come with a digest are searched by its points, not by the reader alone."""
    steps = plan(filled, lambda work: work.digests.get(READER, BOOK.id), "links")
    step = r"SEARCH links USING INDEX \S+ \(reader_id=\? AND part_id=\?\)"
    assert any(re.match(step, found) for found in steps), steps
