"""The tables. Every key, unique constraint and index begins with the reader.

A change here needs a migration beside it in `migrations/versions/`; tests compare
the two, constraint by constraint.

What an item's answers come to is kept in its row (`stability` to `call_on`, null
together while it is unasked), so that a sitting is read off one index. `answers`,
`taken_back` and `check_ins` are only ever added to.
"""

from collections.abc import Iterable
from datetime import date, datetime
from enum import StrEnum
from uuid import UUID

from sqlalchemy import (
    Boolean,
    CheckConstraint,
    Column,
    Date,
    Double,
    ForeignKeyConstraint,
    Index,
    Integer,
    LargeBinary,
    MetaData,
    String,
    Table,
    UniqueConstraint,
    and_,
    not_,
)

from cards.answers import Grade
from cards.commitments import Outcome
from cards.kinds.base import KindName
from cards.parts import PartKind
from service.store.columns import ID, INSTANT, WORDS

metadata = MetaData(
    naming_convention={
        "pk": "%(table_name)s_pk",
        "fk": "%(table_name)s_to_%(referred_table_name)s",
        "uq": "%(table_name)s_%(column_1_name)s_once",
        "ck": "%(table_name)s_%(constraint_name)s",
    }
)


def _reader() -> Column[UUID]:
    return Column("reader_id", ID, primary_key=True)


def _id() -> Column[UUID]:
    return Column("id", ID, primary_key=True)


def _words(name: str) -> Column[str]:
    return Column(name, WORDS, nullable=False)


def _number(name: str) -> Column[int]:
    return Column(name, Integer, nullable=False)


def _flag(name: str) -> Column[bool]:
    return Column(name, Boolean, nullable=False)


def _instant(name: str) -> Column[datetime]:
    return Column(name, INSTANT, nullable=False)


def _day(name: str) -> Column[date]:
    return Column(name, Date, nullable=False)


def _one_of(name: str, values: Iterable[StrEnum]) -> CheckConstraint:
    listed = ", ".join(f"'{value.value}'" for value in values)
    return CheckConstraint(f"{name} IN ({listed})", name=f"{name}_known")


def _to(table: str, column: str) -> ForeignKeyConstraint:
    return ForeignKeyConstraint(["reader_id", column], [f"{table}.reader_id", f"{table}.id"])


readers = Table(
    "readers",
    metadata,
    _reader(),
    _words("time_zone"),
    _number("turns_at"),
    Column("target", Double, nullable=False),
    _number("unasked_a_day"),
    _number("revision"),
    CheckConstraint("turns_at BETWEEN 0 AND 23", name="turns_at_hour"),
    CheckConstraint("target > 0 AND target < 1", name="target_share"),
    CheckConstraint("unasked_a_day >= 0", name="unasked_a_day_count"),
    CheckConstraint("revision >= 1", name="revision_count"),
)

digests = Table(
    "digests",
    metadata,
    _reader(),
    _id(),
    _words("title"),
    Column("author", WORDS),
    Column("isbn", WORDS),
    Column("pages", Integer),
    Column("finished_on", Date),
    Column("judgement", WORDS),
    _flag("removed"),
    _number("revision"),
    _words("key_title"),
    _words("key_author"),
    Column("key_isbn", WORDS),
    _instant("added_at"),
    ForeignKeyConstraint(["reader_id"], ["readers.reader_id"]),
    CheckConstraint("pages >= 1", name="pages_count"),
    CheckConstraint("revision >= 1", name="revision_count"),
)
Index("digests_by_book", digests.c.reader_id, digests.c.key_title, digests.c.key_author)
Index("digests_by_isbn", digests.c.reader_id, digests.c.key_isbn)
_here = not_(digests.c.removed)
Index(
    "digests_by_arrival",
    digests.c.reader_id,
    digests.c.added_at,
    digests.c.id,
    sqlite_where=_here,
    postgresql_where=_here,
)

parts = Table(
    "parts",
    metadata,
    _reader(),
    _id(),
    Column("digest_id", ID, nullable=False),
    Column("kind", String(10), nullable=False),
    _number("number"),
    _words("text"),
    Column("locator", WORDS),
    Column("stands_after", Integer),
    _flag("retired"),
    _to("digests", "digest_id"),
    _one_of("kind", PartKind),
    CheckConstraint("number >= 1", name="number_count"),
    CheckConstraint("stands_after >= 0", name="stands_after_count"),
)
Index("parts_by_digest", parts.c.reader_id, parts.c.digest_id, parts.c.kind, parts.c.number)

originals = Table(
    "originals",
    metadata,
    _reader(),
    Column("digest_id", ID, primary_key=True),
    Column("sha256", String(64), primary_key=True),
    _number("number"),
    _words("name"),
    _instant("added_at"),
    Column("content", LargeBinary, nullable=False),
    _to("digests", "digest_id"),
    CheckConstraint("length(sha256) = 64", name="sha256_length"),
    CheckConstraint("number >= 1", name="number_count"),
)
Index("originals_by_number", originals.c.reader_id, originals.c.digest_id, originals.c.number)
Index("originals_by_name", originals.c.reader_id, originals.c.name)

items = Table(
    "items",
    metadata,
    _reader(),
    _id(),
    Column("digest_id", ID, nullable=False),
    Column("part_id", ID, nullable=False),
    Column("kind", String(10), nullable=False),
    _number("number"),
    _flag("retired"),
    _instant("added_at"),
    _instant("digest_added_at"),
    Column("stability", Double),
    Column("difficulty", Double),
    Column("first_day", Date),
    Column("last_day", Date),
    Column("last_grade", String(5)),
    Column("answers", Integer),
    Column("due_on", Date),
    Column("call_on", Date),
    _to("digests", "digest_id"),
    _to("parts", "part_id"),
    _one_of("kind", KindName),
    _one_of("last_grade", Grade),
    CheckConstraint("number >= 1", name="number_count"),
    CheckConstraint("stability > 0", name="stability_days"),
    CheckConstraint("difficulty BETWEEN 1 AND 10", name="difficulty_range"),
    CheckConstraint("answers >= 1", name="answers_count"),
    CheckConstraint(
        " AND ".join(
            f"(stability IS NULL) = ({column} IS NULL)"
            for column in (
                "difficulty",
                "first_day",
                "last_day",
                "last_grade",
                "answers",
                "due_on",
                "call_on",
            )
        ),
        name="memory_whole",
    ),
    sqlite_with_rowid=False,  # one page fewer to write with every answer
)
UNASKED = and_(items.c.stability.is_(None), not_(items.c.retired))
"""What an item is let in by; said in the same words by the index and by who uses it."""
CALLED = and_(items.c.call_on.is_not(None), not_(items.c.retired))
"""What an item is called by; likewise."""
Index(
    "items_called",
    items.c.reader_id,
    items.c.call_on,
    items.c.id,
    sqlite_where=CALLED,
    postgresql_where=CALLED,
)
Index(
    "items_unasked",
    items.c.reader_id,
    items.c.kind,
    items.c.digest_added_at,
    items.c.digest_id,
    items.c.number,
    items.c.id,
    sqlite_where=UNASKED,
    postgresql_where=UNASKED,
)
Index("items_by_first_day", items.c.reader_id, items.c.first_day, items.c.kind)
Index("items_by_digest", items.c.reader_id, items.c.digest_id, items.c.id)

answers = Table(
    "answers",
    metadata,
    _reader(),
    _id(),
    Column("item_id", ID, nullable=False),
    Column("grade", String(5), nullable=False),
    _instant("answered_at"),
    _day("day"),
    _words("attempt"),
    Column("suggested", String(5)),
    Column("predicted", Double),
    _instant("received_at"),
    _to("items", "item_id"),
    _one_of("grade", Grade),
    _one_of("suggested", Grade),
    CheckConstraint("predicted BETWEEN 0 AND 1", name="predicted_share"),
    sqlite_with_rowid=False,  # one page fewer to write with every answer
)
Index(
    "answers_in_order",
    answers.c.reader_id,
    answers.c.item_id,
    answers.c.answered_at,
    answers.c.id,
)

taken_back = Table(
    "taken_back",
    metadata,
    _reader(),
    _id(),
    Column("answer_id", ID, nullable=False),
    _instant("taken_back_at"),
    _to("answers", "answer_id"),
    UniqueConstraint("reader_id", "answer_id"),
)

check_ins = Table(
    "check_ins",
    metadata,
    _reader(),
    _id(),
    Column("commitment_id", ID, nullable=False),
    Column("outcome", String(6), nullable=False),
    _day("day"),
    _instant("reported_at"),
    _words("note"),
    _to("parts", "commitment_id"),
    _one_of("outcome", Outcome),
)
Index(
    "check_ins_in_order",
    check_ins.c.reader_id,
    check_ins.c.commitment_id,
    check_ins.c.day,
    check_ins.c.id,
)
