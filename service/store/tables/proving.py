"""The texts of books, and where quotations were found in them.

A text (`content`) is compressed JSON, written and read in `service.store.book_json` alone. It is
absent where an archive was read back: that brings the file's name and hash, never the text.
"""

from sqlalchemy import CheckConstraint, Column, Double, Integer, LargeBinary, String, Table

from service.store.columns import WORDS
from service.store.tables.making import (
    instant,
    key_to,
    metadata,
    number,
    points_to,
    reader_key,
    sha256_whole,
    words,
)

book_texts = Table(
    "book_texts",
    metadata,
    reader_key(),
    key_to("digest_id"),
    words("name"),
    Column("sha256", String(64), nullable=False),
    instant("added_at"),
    Column("content", LargeBinary),
    points_to("digests", "digest_id"),
    sha256_whole(),
)

anchors = Table(
    "anchors",
    metadata,
    reader_key(),
    key_to("digest_id"),
    key_to("part_id"),
    words("exact"),
    words("prefix"),
    words("suffix"),
    number("first_offset"),
    number("end_offset"),
    Column("fraction", Double, nullable=False),
    Column("chapter", Integer),
    Column("page", WORDS),
    Column("source", String(64), nullable=False),
    points_to("digests", "digest_id"),
    points_to("parts", "part_id"),
    CheckConstraint("first_offset BETWEEN 0 AND end_offset", name="offsets_in_order"),
    CheckConstraint("fraction BETWEEN 0 AND 1", name="fraction_share"),
    CheckConstraint("length(source) = 64", name="source_length"),
)
