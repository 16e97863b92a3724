"""The first tables.

Follows: nothing
"""

from alembic import op
from sqlalchemy import (
    Boolean,
    CheckConstraint,
    Column,
    Date,
    DateTime,
    Double,
    ForeignKeyConstraint,
    Integer,
    LargeBinary,
    PrimaryKeyConstraint,
    String,
    Text,
    UniqueConstraint,
    Uuid,
    text,
)

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None

# As they were at this revision; what the tables say now is in service/store/tables.py.
ID = Uuid().with_variant(LargeBinary(), "sqlite")
INSTANT = DateTime(timezone=True).with_variant(String(32), "sqlite")
WORDS = Text()

_ALL_OR_NONE = (
    "(stability IS NULL) = (difficulty IS NULL) AND (stability IS NULL) = (first_day IS NULL) "
    "AND (stability IS NULL) = (last_day IS NULL) AND (stability IS NULL) = (last_grade IS NULL) "
    "AND (stability IS NULL) = (answers IS NULL) AND (stability IS NULL) = (due_on IS NULL) "
    "AND (stability IS NULL) = (call_on IS NULL)"
)


def upgrade() -> None:
    """Make the tables, those that are pointed to first."""
    _readers()
    _digests()
    _originals()
    _parts()
    _check_ins()
    _items()
    _answers()
    _taken_back()


def downgrade() -> None:
    """Drop them again, those that point to others first."""
    for table in (
        "taken_back",
        "answers",
        "items",
        "check_ins",
        "parts",
        "originals",
        "digests",
        "readers",
    ):
        op.drop_table(table)


def _readers() -> None:
    op.create_table(
        "readers",
        Column("reader_id", ID, nullable=False),
        Column("time_zone", WORDS, nullable=False),
        Column("turns_at", Integer(), nullable=False),
        Column("target", Double(), nullable=False),
        Column("unasked_a_day", Integer(), nullable=False),
        Column("revision", Integer(), nullable=False),
        CheckConstraint("revision >= 1", name=op.f("readers_revision_count")),
        CheckConstraint("target > 0 AND target < 1", name=op.f("readers_target_share")),
        CheckConstraint("turns_at BETWEEN 0 AND 23", name=op.f("readers_turns_at_hour")),
        CheckConstraint("unasked_a_day >= 0", name=op.f("readers_unasked_a_day_count")),
        PrimaryKeyConstraint("reader_id", name="readers_pk"),
    )


def _digests() -> None:
    op.create_table(
        "digests",
        Column("reader_id", ID, nullable=False),
        Column("id", ID, nullable=False),
        Column("title", WORDS, nullable=False),
        Column("author", WORDS),
        Column("isbn", WORDS),
        Column("pages", Integer()),
        Column("finished_on", Date()),
        Column("judgement", WORDS),
        Column("removed", Boolean(), nullable=False),
        Column("revision", Integer(), nullable=False),
        Column("key_title", WORDS, nullable=False),
        Column("key_author", WORDS, nullable=False),
        Column("key_isbn", WORDS),
        Column("added_at", INSTANT, nullable=False),
        CheckConstraint("pages >= 1", name=op.f("digests_pages_count")),
        CheckConstraint("revision >= 1", name=op.f("digests_revision_count")),
        ForeignKeyConstraint(["reader_id"], ["readers.reader_id"], name="digests_to_readers"),
        PrimaryKeyConstraint("reader_id", "id", name="digests_pk"),
    )
    op.create_index(
        "digests_by_arrival",
        "digests",
        ["reader_id", "added_at", "id"],
        sqlite_where=text("removed = 0"),
        postgresql_where=text("NOT removed"),
    )
    op.create_index("digests_by_book", "digests", ["reader_id", "key_title", "key_author"])
    op.create_index("digests_by_isbn", "digests", ["reader_id", "key_isbn"])


def _originals() -> None:
    op.create_table(
        "originals",
        Column("reader_id", ID, nullable=False),
        Column("digest_id", ID, nullable=False),
        Column("sha256", String(length=64), nullable=False),
        Column("number", Integer(), nullable=False),
        Column("name", WORDS, nullable=False),
        Column("added_at", INSTANT, nullable=False),
        Column("content", LargeBinary(), nullable=False),
        CheckConstraint("length(sha256) = 64", name=op.f("originals_sha256_length")),
        CheckConstraint("number >= 1", name=op.f("originals_number_count")),
        ForeignKeyConstraint(
            ["reader_id", "digest_id"],
            ["digests.reader_id", "digests.id"],
            name="originals_to_digests",
        ),
        PrimaryKeyConstraint("reader_id", "digest_id", "sha256", name="originals_pk"),
    )
    op.create_index("originals_by_name", "originals", ["reader_id", "name"])
    op.create_index("originals_by_number", "originals", ["reader_id", "digest_id", "number"])


def _parts() -> None:
    op.create_table(
        "parts",
        Column("reader_id", ID, nullable=False),
        Column("id", ID, nullable=False),
        Column("digest_id", ID, nullable=False),
        Column("kind", String(length=10), nullable=False),
        Column("number", Integer(), nullable=False),
        Column("text", WORDS, nullable=False),
        Column("locator", WORDS),
        Column("stands_after", Integer()),
        Column("retired", Boolean(), nullable=False),
        CheckConstraint(
            "kind IN ('theme', 'point', 'commitment', 'quotation')", name=op.f("parts_kind_known")
        ),
        CheckConstraint("number >= 1", name=op.f("parts_number_count")),
        CheckConstraint("stands_after >= 0", name=op.f("parts_stands_after_count")),
        ForeignKeyConstraint(
            ["reader_id", "digest_id"], ["digests.reader_id", "digests.id"], name="parts_to_digests"
        ),
        PrimaryKeyConstraint("reader_id", "id", name="parts_pk"),
    )
    op.create_index("parts_by_digest", "parts", ["reader_id", "digest_id", "kind", "number"])


def _check_ins() -> None:
    op.create_table(
        "check_ins",
        Column("reader_id", ID, nullable=False),
        Column("id", ID, nullable=False),
        Column("commitment_id", ID, nullable=False),
        Column("outcome", String(length=6), nullable=False),
        Column("day", Date(), nullable=False),
        Column("reported_at", INSTANT, nullable=False),
        Column("note", WORDS, nullable=False),
        CheckConstraint(
            "outcome IN ('kept', 'partly', 'missed')", name=op.f("check_ins_outcome_known")
        ),
        ForeignKeyConstraint(
            ["reader_id", "commitment_id"],
            ["parts.reader_id", "parts.id"],
            name="check_ins_to_parts",
        ),
        PrimaryKeyConstraint("reader_id", "id", name="check_ins_pk"),
    )
    op.create_index("check_ins_in_order", "check_ins", ["reader_id", "commitment_id", "day", "id"])


def _items() -> None:
    op.create_table(
        "items",
        Column("reader_id", ID, nullable=False),
        Column("id", ID, nullable=False),
        Column("digest_id", ID, nullable=False),
        Column("part_id", ID, nullable=False),
        Column("kind", String(length=10), nullable=False),
        Column("number", Integer(), nullable=False),
        Column("retired", Boolean(), nullable=False),
        Column("added_at", INSTANT, nullable=False),
        Column("digest_added_at", INSTANT, nullable=False),
        Column("stability", Double()),
        Column("difficulty", Double()),
        Column("first_day", Date()),
        Column("last_day", Date()),
        Column("last_grade", String(length=5)),
        Column("answers", Integer()),
        Column("due_on", Date()),
        Column("call_on", Date()),
        CheckConstraint("kind IN ('theme', 'place', 'restate')", name=op.f("items_kind_known")),
        CheckConstraint(
            "last_grade IN ('blank', 'hazy', 'clear', 'vivid')", name=op.f("items_last_grade_known")
        ),
        CheckConstraint(_ALL_OR_NONE, name=op.f("items_memory_whole")),
        CheckConstraint("answers >= 1", name=op.f("items_answers_count")),
        CheckConstraint("difficulty BETWEEN 1 AND 10", name=op.f("items_difficulty_range")),
        CheckConstraint("number >= 1", name=op.f("items_number_count")),
        CheckConstraint("stability > 0", name=op.f("items_stability_days")),
        ForeignKeyConstraint(
            ["reader_id", "digest_id"], ["digests.reader_id", "digests.id"], name="items_to_digests"
        ),
        ForeignKeyConstraint(
            ["reader_id", "part_id"], ["parts.reader_id", "parts.id"], name="items_to_parts"
        ),
        PrimaryKeyConstraint("reader_id", "id", name="items_pk"),
        sqlite_with_rowid=False,
    )
    op.create_index("items_by_digest", "items", ["reader_id", "digest_id", "id"])
    op.create_index("items_by_first_day", "items", ["reader_id", "first_day", "kind"])
    op.create_index(
        "items_called",
        "items",
        ["reader_id", "call_on", "id"],
        sqlite_where=text("call_on IS NOT NULL AND retired = 0"),
        postgresql_where=text("call_on IS NOT NULL AND NOT retired"),
    )
    op.create_index(
        "items_unasked",
        "items",
        ["reader_id", "kind", "digest_added_at", "digest_id", "number", "id"],
        sqlite_where=text("stability IS NULL AND retired = 0"),
        postgresql_where=text("stability IS NULL AND NOT retired"),
    )


def _answers() -> None:
    op.create_table(
        "answers",
        Column("reader_id", ID, nullable=False),
        Column("id", ID, nullable=False),
        Column("item_id", ID, nullable=False),
        Column("grade", String(length=5), nullable=False),
        Column("answered_at", INSTANT, nullable=False),
        Column("day", Date(), nullable=False),
        Column("attempt", WORDS, nullable=False),
        Column("suggested", String(length=5)),
        Column("predicted", Double()),
        Column("received_at", INSTANT, nullable=False),
        CheckConstraint(
            "grade IN ('blank', 'hazy', 'clear', 'vivid')", name=op.f("answers_grade_known")
        ),
        CheckConstraint(
            "suggested IN ('blank', 'hazy', 'clear', 'vivid')", name=op.f("answers_suggested_known")
        ),
        CheckConstraint("predicted BETWEEN 0 AND 1", name=op.f("answers_predicted_share")),
        ForeignKeyConstraint(
            ["reader_id", "item_id"], ["items.reader_id", "items.id"], name="answers_to_items"
        ),
        PrimaryKeyConstraint("reader_id", "id", name="answers_pk"),
        sqlite_with_rowid=False,
    )
    op.create_index("answers_in_order", "answers", ["reader_id", "item_id", "answered_at", "id"])


def _taken_back() -> None:
    op.create_table(
        "taken_back",
        Column("reader_id", ID, nullable=False),
        Column("id", ID, nullable=False),
        Column("answer_id", ID, nullable=False),
        Column("taken_back_at", INSTANT, nullable=False),
        ForeignKeyConstraint(
            ["reader_id", "answer_id"],
            ["answers.reader_id", "answers.id"],
            name="taken_back_to_answers",
        ),
        PrimaryKeyConstraint("reader_id", "id", name="taken_back_pk"),
        UniqueConstraint("reader_id", "answer_id", name="taken_back_answer_id_once"),
    )
