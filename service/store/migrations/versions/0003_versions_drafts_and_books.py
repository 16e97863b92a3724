"""Versions of digests, drafts, heading words, the texts of books.

Follows: 0002
"""

from alembic import op
from sqlalchemy import (
    CheckConstraint,
    Column,
    DateTime,
    Double,
    ForeignKeyConstraint,
    Integer,
    LargeBinary,
    PrimaryKeyConstraint,
    String,
    Text,
    Uuid,
)

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None

# As they were at this revision; what the tables say now is in service/store/tables/.
ID = Uuid().with_variant(LargeBinary(), "sqlite")
INSTANT = DateTime(timezone=True).with_variant(String(32), "sqlite")
WORDS = Text()


def upgrade() -> None:
    """Make the tables, those that are pointed to first."""
    _versions()
    _drafts()
    _originals_of_drafts()
    _heading_words()
    _book_texts()
    _anchors()


def downgrade() -> None:
    """Drop them again, those that point to others first."""
    for table in (
        "anchors",
        "book_texts",
        "heading_words",
        "draft_originals",
        "draft_contents",
        "drafts",
        "versions",
    ):
        op.drop_table(table)


def _versions() -> None:
    op.create_table(
        "versions",
        Column("reader_id", ID, nullable=False),
        Column("digest_id", ID, nullable=False),
        Column("revision", Integer(), nullable=False, autoincrement=False),
        Column("kept_at", INSTANT, nullable=False),
        Column("cause", String(length=9), nullable=False),
        Column("kept", WORDS, nullable=False),
        CheckConstraint(
            "cause IN ('added', 'changed', 'mended', 'placed', 'proved', 'overruled', 'restored', "
            "'cared', 'removed')",
            name=op.f("versions_cause_known"),
        ),
        CheckConstraint("revision >= 1", name=op.f("versions_revision_count")),
        _to("versions", "digests", "digest_id"),
        PrimaryKeyConstraint("reader_id", "digest_id", "revision", name="versions_pk"),
    )


def _drafts() -> None:
    op.create_table(
        "drafts",
        Column("reader_id", ID, nullable=False),
        Column("id", ID, nullable=False),
        Column("typed", WORDS, nullable=False),
        Column("begun_at", INSTANT, nullable=False),
        Column("changed_at", INSTANT, nullable=False),
        Column("file", WORDS),
        Column("number", Integer(), nullable=False),
        Column("sources", WORDS, nullable=False),
        Column("left_out", WORDS, nullable=False),
        Column("notices", WORDS, nullable=False),
        Column("revision", Integer(), nullable=False),
        CheckConstraint("number >= 1", name=op.f("drafts_number_count")),
        CheckConstraint("revision >= 1", name=op.f("drafts_revision_count")),
        ForeignKeyConstraint(["reader_id"], ["readers.reader_id"], name="drafts_to_readers"),
        PrimaryKeyConstraint("reader_id", "id", name="drafts_pk"),
    )
    op.create_index("drafts_by_change", "drafts", ["reader_id", "changed_at", "id"])


def _originals_of_drafts() -> None:
    op.create_table(
        "draft_contents",
        Column("reader_id", ID, nullable=False),
        Column("sha256", String(length=64), nullable=False),
        Column("content", LargeBinary(), nullable=False),
        CheckConstraint("length(sha256) = 64", name=op.f("draft_contents_sha256_length")),
        ForeignKeyConstraint(
            ["reader_id"], ["readers.reader_id"], name="draft_contents_to_readers"
        ),
        PrimaryKeyConstraint("reader_id", "sha256", name="draft_contents_pk"),
    )
    op.create_table(
        "draft_originals",
        Column("reader_id", ID, nullable=False),
        Column("draft_id", ID, nullable=False),
        Column("sha256", String(length=64), nullable=False),
        Column("name", WORDS, nullable=False),
        Column("added_at", INSTANT, nullable=False),
        _to("draft_originals", "drafts", "draft_id"),
        _to("draft_originals", "draft_contents", "sha256", "sha256"),
        PrimaryKeyConstraint("reader_id", "draft_id", name="draft_originals_pk"),
    )
    op.create_index("draft_originals_by_sha256", "draft_originals", ["reader_id", "sha256"])


def _heading_words() -> None:
    op.create_table(
        "heading_words",
        Column("reader_id", ID, nullable=False),
        Column("word", WORDS, nullable=False),
        Column("part", String(length=11), nullable=False),
        CheckConstraint(
            "part IN ('theme', 'points', 'commitments', 'quotations', 'judgement')",
            name=op.f("heading_words_part_known"),
        ),
        CheckConstraint("length(word) BETWEEN 1 AND 80", name=op.f("heading_words_word_length")),
        ForeignKeyConstraint(["reader_id"], ["readers.reader_id"], name="heading_words_to_readers"),
        PrimaryKeyConstraint("reader_id", "word", name="heading_words_pk"),
    )


def _book_texts() -> None:
    op.create_table(
        "book_texts",
        Column("reader_id", ID, nullable=False),
        Column("digest_id", ID, nullable=False),
        Column("name", WORDS, nullable=False),
        Column("sha256", String(length=64), nullable=False),
        Column("added_at", INSTANT, nullable=False),
        Column("content", LargeBinary(), nullable=False),
        CheckConstraint("length(sha256) = 64", name=op.f("book_texts_sha256_length")),
        _to("book_texts", "digests", "digest_id"),
        PrimaryKeyConstraint("reader_id", "digest_id", name="book_texts_pk"),
    )


def _anchors() -> None:
    op.create_table(
        "anchors",
        Column("reader_id", ID, nullable=False),
        Column("digest_id", ID, nullable=False),
        Column("part_id", ID, nullable=False),
        Column("exact", WORDS, nullable=False),
        Column("prefix", WORDS, nullable=False),
        Column("suffix", WORDS, nullable=False),
        Column("first_offset", Integer(), nullable=False),
        Column("end_offset", Integer(), nullable=False),
        Column("fraction", Double(), nullable=False),
        Column("chapter", Integer()),
        Column("page", WORDS),
        Column("source", String(length=64), nullable=False),
        CheckConstraint(
            "first_offset BETWEEN 0 AND end_offset", name=op.f("anchors_offsets_in_order")
        ),
        CheckConstraint("fraction BETWEEN 0 AND 1", name=op.f("anchors_fraction_share")),
        CheckConstraint("length(source) = 64", name=op.f("anchors_source_length")),
        _to("anchors", "digests", "digest_id"),
        _to("anchors", "parts", "part_id"),
        PrimaryKeyConstraint("reader_id", "digest_id", "part_id", name="anchors_pk"),
    )


def _to(table: str, other: str, column: str, theirs: str = "id") -> ForeignKeyConstraint:
    return ForeignKeyConstraint(
        ["reader_id", column],
        [f"{other}.reader_id", f"{other}.{theirs}"],
        name=f"{table}_to_{other}",
    )
