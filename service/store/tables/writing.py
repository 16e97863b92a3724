"""What a reader writes by: drafts, the files these were read from, their own heading words.

What a draft holds in several (`typed`, `sources`, `left_out`, `notices`) is JSON, written
and read in `service.store.draft_json` alone. Bytes stand apart, once for all the drafts
one file was read into, so that no listing comes near them.
"""

from sqlalchemy import CheckConstraint, Column, Index, LargeBinary, String, Table

from cards.intake.heading_words import MAX_HEADING, Part
from service.store.columns import WORDS
from service.store.tables.making import (
    choice,
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

drafts = Table(
    "drafts",
    metadata,
    reader_key(),
    id_key(),
    words("typed"),
    instant("begun_at"),
    instant("changed_at"),
    Column("file", WORDS),
    number("number"),
    words("sources"),
    words("left_out"),
    words("notices"),
    number("revision"),
    to_reader(),
    CheckConstraint("number >= 1", name="number_count"),
    CheckConstraint("revision >= 1", name="revision_count"),
)
Index("drafts_by_change", drafts.c.reader_id, drafts.c.changed_at, drafts.c.id)

draft_contents = Table(
    "draft_contents",
    metadata,
    reader_key(),
    Column("sha256", String(64), primary_key=True),
    Column("content", LargeBinary, nullable=False),
    to_reader(),
    sha256_whole(),
)

draft_originals = Table(
    "draft_originals",
    metadata,
    reader_key(),
    key_to("draft_id"),
    Column("sha256", String(64), nullable=False),
    words("name"),
    instant("added_at"),
    points_to("drafts", "draft_id"),
    points_to("draft_contents", "sha256", "sha256"),
)
Index("draft_originals_by_sha256", draft_originals.c.reader_id, draft_originals.c.sha256)

heading_words = Table(
    "heading_words",
    metadata,
    reader_key(),
    Column("word", WORDS, primary_key=True),
    choice("part", Part),
    to_reader(),
    one_of("part", Part),
    CheckConstraint(f"length(word) BETWEEN 1 AND {MAX_HEADING}", name="word_length"),
)
