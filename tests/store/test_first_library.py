"""A library kept in the first tables comes through the later migrations whole."""

from collections.abc import Iterable
from contextlib import closing
from dataclasses import replace
from datetime import datetime, timedelta
from uuid import UUID, uuid4

from alembic import command
from sqlalchemy import Connection, bindparam, text
from sqlalchemy.types import TypeEngine

from cards.answers import Answer
from cards.commitments import CheckIn, Outcome
from cards.items import Item, KeptItem
from cards.parts import Care, KeptDigest, PartKind
from cards.schedule import Memory
from service.store.columns import ID, INSTANT, WORDS
from service.store.migrations import alembic_config
from service.store.sql_store import SqlStore
from service.use_cases.records import Original, Reader, ReaderId
from tests.store.libraries import (
    NOW,
    TODAY,
    a_book,
    a_file,
    a_memory,
    an_answer,
    in_any_order,
    items_of,
)

KEPT_AS: dict[type, TypeEngine] = {UUID: ID, datetime: INSTANT, str: WORDS}


def test_a_library_of_the_first_tables_comes_through_whole(empty: str, reader: ReaderId) -> None:
    """Settings, digests, files, items, answers and check-ins are all there after migrating.

    The digests name no edition then and are kept steadily, and no item rests.
    """
    book, removed = a_book(), replace(a_book("Of Harbours"), removed=True, revision=3)
    asked, *waiting = items_of(book)
    answer, taken_back = an_answer(asked), an_answer(asked, minutes=5)
    commitment = book.held(PartKind.COMMITMENT)[0]
    report = CheckIn(uuid4(), commitment.id, Outcome.KEPT, TODAY, NOW, TODAY, "On Sunday.")
    with closing(SqlStore(empty)) as store:
        with store.engines.writing.begin() as connection:
            command.upgrade(alembic_config(connection), "0001")
            first = FirstTables(connection, reader)
            first.keep_reader()
            first.keep_digests([book, removed])
            first.keep_original(book, a_file())
            first.keep_items({asked: a_memory()} | dict.fromkeys(waiting))
            first.keep_answers([answer, taken_back], taken_back)
            first.keep_check_in(report)

        store.migrate()

        with store.reading() as work:
            assert work.readers.get(reader) == Reader(reader, "Europe/London", unasked_a_day=3)
            for kept in (book, removed):
                found = work.digests.get(reader, kept.id)
                assert found is not None
                assert in_any_order(found) == in_any_order(kept)
                assert (found.care, found.edition) == (Care.STEADY, None)
            assert [entry.added_at for entry in work.digests.page(reader, None, 9)] == [NOW]
            assert work.digests.original(reader, book.id) == a_file()
            assert work.items.many(reader, [asked.id]) == {asked.id: KeptItem(asked, a_memory())}
            unasked = {one.item: one.care for one in work.items.unasked(reader, TODAY, 9)}
            assert unasked == dict.fromkeys(waiting, Care.STEADY)
            assert work.answers.of_item(reader, asked.id) == [answer]
            again = work.answers.get(reader, taken_back.id)
            assert again is not None
            assert again.taken_back_at == NOW + timedelta(hours=1)
            assert work.check_ins.of_digest(reader, book.id) == [report]
            assert work.versions.page(reader, book.id, None, 9) == []


class FirstTables:
    """Writes one reader's rows as the tables were at the first revision."""

    def __init__(self, connection: Connection, reader: ReaderId) -> None:
        self._connection = connection
        self._reader = reader

    def keep_reader(self) -> None:
        """Keep the reader's settings."""
        self._insert(
            "readers",
            time_zone="Europe/London",
            turns_at=4,
            target=0.9,
            unasked_a_day=3,
            revision=1,
        )

    def keep_digests(self, books: Iterable[KeptDigest]) -> None:
        """Keep digests with their parts."""
        for book in books:
            self._insert(
                "digests",
                id=book.id,
                title=book.title,
                author=book.author,
                pages=book.pages,
                finished_on=book.finished_on,
                removed=book.removed,
                revision=book.revision,
                key_title=book.title.casefold(),
                key_author="",
                added_at=NOW,
            )
            for part in book.parts:
                self._insert(
                    "parts",
                    id=part.id,
                    digest_id=book.id,
                    kind=part.kind.value,
                    number=part.number,
                    text=part.text,
                    locator=part.locator,
                    stands_after=part.after,
                    retired=part.retired,
                )

    def keep_original(self, book: KeptDigest, file: Original) -> None:
        """Keep the file a digest was read from."""
        self._insert(
            "originals",
            digest_id=book.id,
            sha256=file.sha256,
            number=1,
            name=file.name,
            added_at=file.added_at,
            content=file.content,
        )

    def keep_items(self, items: dict[Item, Memory | None]) -> None:
        """Keep items with what their answers come to."""
        for item, memory in items.items():
            remembered: dict[str, object] = {}
            if memory is not None:
                remembered = {
                    "stability": memory.stability,
                    "difficulty": memory.difficulty,
                    "first_day": memory.first_day,
                    "last_day": memory.last_day,
                    "last_grade": memory.last_grade.value,
                    "answers": memory.answers,
                    "due_on": memory.due_on,
                    "call_on": memory.call_on,
                }
            self._insert(
                "items",
                id=item.id,
                digest_id=item.digest_id,
                part_id=item.part_id,
                kind=item.kind.value,
                number=item.number,
                retired=item.retired,
                added_at=NOW,
                digest_added_at=NOW,
                **remembered,
            )

    def keep_answers(self, answers: Iterable[Answer], taken_back: Answer) -> None:
        """Keep answers, and that one of them was taken back an hour later."""
        for answer in answers:
            self._insert(
                "answers",
                id=answer.id,
                item_id=answer.item_id,
                grade=answer.grade.value,
                answered_at=answer.answered_at,
                day=answer.day,
                attempt=answer.attempt,
                received_at=NOW,
            )
        self._insert(
            "taken_back",
            id=uuid4(),
            answer_id=taken_back.id,
            taken_back_at=NOW + timedelta(hours=1),
        )

    def keep_check_in(self, report: CheckIn) -> None:
        """Keep a check-in."""
        self._insert(
            "check_ins",
            id=report.id,
            commitment_id=report.commitment_id,
            outcome=report.outcome.value,
            day=report.day,
            reported_at=report.reported_at,
            note=report.note,
        )

    def _insert(self, table: str, **values: object) -> None:
        row = {"reader_id": self._reader} | values
        names, places = ", ".join(row), ", ".join(f":{name}" for name in row)
        statement = text(f"INSERT INTO {table} ({names}) VALUES ({places})")
        self._connection.execute(
            statement.bindparams(
                *(bindparam(name, value, KEPT_AS.get(type(value))) for name, value in row.items())
            )
        )
