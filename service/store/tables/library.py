"""A reader, their digests with every part and version, and the files these were read from.

What a version holds (`kept`) is JSON, written and read in `service.store.kept_json` alone.
"""

from sqlalchemy import (
    CheckConstraint,
    Column,
    Date,
    Double,
    Index,
    Integer,
    LargeBinary,
    String,
    Table,
    not_,
)

from cards.parts import Care, PartKind
from service.store.columns import ID, WORDS
from service.store.tables.making import (
    choice,
    flag,
    id_key,
    instant,
    key_to,
    metadata,
    number,
    one_of,
    points_to,
    reader_key,
    sha256_whole,
    to_reader,
    words,
)
from service.use_cases.records import Cause

readers = Table(
    "readers",
    metadata,
    reader_key(),
    words("time_zone"),
    number("turns_at"),
    Column("target", Double, nullable=False),
    number("unasked_a_day"),
    number("revision"),
    number("minutes"),
    Column("weights", WORDS),
    CheckConstraint("turns_at BETWEEN 0 AND 23", name="turns_at_hour"),
    CheckConstraint("target > 0 AND target < 1", name="target_share"),
    CheckConstraint("unasked_a_day >= 0", name="unasked_a_day_count"),
    CheckConstraint("minutes >= 1", name="minutes_count"),
    CheckConstraint("revision >= 1", name="revision_count"),
)

digests = Table(
    "digests",
    metadata,
    reader_key(),
    id_key(),
    words("title"),
    Column("author", WORDS),
    Column("isbn", WORDS),
    Column("pages", Integer),
    Column("finished_on", Date),
    Column("judgement", WORDS),
    flag("removed"),
    number("revision"),
    words("key_title"),
    words("key_author"),
    Column("key_isbn", WORDS),
    instant("added_at"),
    Column("edition", WORDS),
    choice("care", Care),
    to_reader(),
    one_of("care", Care),
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
    reader_key(),
    id_key(),
    Column("digest_id", ID, nullable=False),
    Column("kind", String(10), nullable=False),
    number("number"),
    words("text"),
    Column("locator", WORDS),
    Column("stands_after", Integer),
    flag("retired"),
    points_to("digests", "digest_id"),
    one_of("kind", PartKind),
    CheckConstraint("number >= 1", name="number_count"),
    CheckConstraint("stands_after >= 0", name="stands_after_count"),
)
Index("parts_by_digest", parts.c.reader_id, parts.c.digest_id, parts.c.kind, parts.c.number)

originals = Table(
    "originals",
    metadata,
    reader_key(),
    key_to("digest_id"),
    Column("sha256", String(64), primary_key=True),
    number("number"),
    words("name"),
    instant("added_at"),
    Column("content", LargeBinary, nullable=False),
    points_to("digests", "digest_id"),
    sha256_whole(),
    CheckConstraint("number >= 1", name="number_count"),
)
Index("originals_by_number", originals.c.reader_id, originals.c.digest_id, originals.c.number)
Index("originals_by_name", originals.c.reader_id, originals.c.name)

versions = Table(
    "versions",
    metadata,
    reader_key(),
    key_to("digest_id"),
    Column("revision", Integer, primary_key=True, autoincrement=False),
    instant("kept_at"),
    choice("cause", Cause),
    words("kept"),
    points_to("digests", "digest_id"),
    one_of("cause", Cause),
    CheckConstraint("revision >= 1", name="revision_count"),
)
