"""Every kind of item, the minutes of a sitting, what answers took, links, sheets.

Follows: 0003
"""

from alembic import op
from sqlalchemy import (
    Boolean,
    CheckConstraint,
    Column,
    Date,
    DateTime,
    ForeignKeyConstraint,
    Integer,
    LargeBinary,
    PrimaryKeyConstraint,
    String,
    Text,
    UniqueConstraint,
    Uuid,
    false,
    text,
)

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None

# As they were at this revision; what the tables say now is in service/store/tables/.
ID = Uuid().with_variant(LargeBinary(), "sqlite")
INSTANT = DateTime(timezone=True).with_variant(String(32), "sqlite")
WORDS = Text()
_NARROW = {"sqlite_with_rowid": False}
"""What SQLite does not tell of a table when it is made anew."""
_FORMERLY = "kind IN ('theme', 'place', 'restate')"
_KINDS = "kind IN ('theme', 'place', 'restate', 'next', 'order', 'complete', 'source', 'across')"


def upgrade() -> None:
    """Let items be of every kind, and keep what a sitting needs."""
    _kinds(_KINDS)
    op.create_index(
        "items_committed",
        "items",
        ["reader_id", "call_on", "id"],
        sqlite_where=text("call_on IS NOT NULL AND retired = 0 AND kind = 'restate'"),
        postgresql_where=text("call_on IS NOT NULL AND NOT retired AND kind = 'restate'"),
    )
    _readers()
    _answers()
    _sitting_days()
    _links()
    _sheets()


def downgrade() -> None:
    """Undo it; items of the new kinds, with what was answered to them, go."""
    for table in ("sheets", "links", "left_out", "sitting_days"):
        op.drop_table(table)
    op.execute(
        "DELETE FROM taken_back WHERE answer_id IN (SELECT a.id FROM answers a JOIN items i "
        "ON i.reader_id = a.reader_id AND i.id = a.item_id "
        "WHERE i.kind NOT IN ('theme', 'place', 'restate'))"
    )
    op.execute(
        "DELETE FROM answers WHERE item_id IN (SELECT id FROM items "
        "WHERE kind NOT IN ('theme', 'place', 'restate'))"
    )
    op.execute("DELETE FROM items WHERE kind NOT IN ('theme', 'place', 'restate')")
    op.drop_index("answers_by_day", "answers")
    with op.batch_alter_table("answers", table_kwargs=_NARROW) as answers:
        answers.drop_constraint(op.f("answers_seconds_taken"), type_="check")
        for column in ("seconds", "graded_first", "ticked"):
            answers.drop_column(column)
    with op.batch_alter_table("readers") as readers:
        readers.drop_constraint(op.f("readers_minutes_count"), type_="check")
        readers.drop_column("minutes")
    op.drop_index("items_committed", "items")
    _kinds(_FORMERLY)


def _kinds(kinds: str) -> None:
    with op.batch_alter_table("items", table_kwargs=_NARROW) as items:
        items.drop_constraint(op.f("items_kind_known"), type_="check")
        items.create_check_constraint(op.f("items_kind_known"), kinds)


def _readers() -> None:
    op.add_column("readers", Column("minutes", Integer(), nullable=False, server_default="10"))
    with op.batch_alter_table("readers") as readers:
        readers.alter_column("minutes", server_default=None)
        readers.create_check_constraint(op.f("readers_minutes_count"), "minutes >= 1")


def _answers() -> None:
    op.add_column("answers", Column("seconds", Integer()))
    op.add_column(
        "answers", Column("graded_first", Boolean(), nullable=False, server_default=false())
    )
    op.add_column("answers", Column("ticked", WORDS))
    with op.batch_alter_table("answers", table_kwargs=_NARROW) as answers:
        answers.alter_column("graded_first", server_default=None)
        answers.create_check_constraint(op.f("answers_seconds_taken"), "seconds BETWEEN 1 AND 600")
    op.create_index("answers_by_day", "answers", ["reader_id", "day", "answered_at", "id"])


def _sitting_days() -> None:
    op.create_table(
        "sitting_days",
        Column("reader_id", ID, nullable=False),
        Column("day", Date(), nullable=False),
        Column("minutes", Integer(), nullable=False),
        CheckConstraint("minutes >= 1", name=op.f("sitting_days_minutes_count")),
        ForeignKeyConstraint(["reader_id"], ["readers.reader_id"], name="sitting_days_to_readers"),
        PrimaryKeyConstraint("reader_id", "day", name="sitting_days_pk"),
    )
    op.create_table(
        "left_out",
        Column("reader_id", ID, nullable=False),
        Column("day", Date(), nullable=False),
        Column("item_id", ID, nullable=False),
        Column("left_out_at", INSTANT, nullable=False),
        _to("left_out", "items", "item_id"),
        PrimaryKeyConstraint("reader_id", "day", "item_id", name="left_out_pk"),
    )


def _links() -> None:
    op.create_table(
        "links",
        Column("reader_id", ID, nullable=False),
        Column("id", ID, nullable=False),
        Column("part_id", ID, nullable=False),
        Column("book_id", ID, nullable=False),
        Column("why", WORDS, nullable=False),
        Column("made_at", INSTANT, nullable=False),
        _to("links", "parts", "part_id"),
        _to("links", "digests", "book_id"),
        UniqueConstraint("reader_id", "part_id", "book_id", name="links_part_id_once"),
        PrimaryKeyConstraint("reader_id", "id", name="links_pk"),
    )
    op.create_index("links_by_book", "links", ["reader_id", "book_id", "part_id"])


def _sheets() -> None:
    op.create_table(
        "sheets",
        Column("reader_id", ID, nullable=False),
        Column("id", ID, nullable=False),
        Column("made_at", INSTANT, nullable=False),
        Column("minutes", Integer(), nullable=False),
        Column("lines", WORDS, nullable=False),
        Column("entered_at", INSTANT),
        CheckConstraint("minutes >= 1", name=op.f("sheets_minutes_count")),
        ForeignKeyConstraint(["reader_id"], ["readers.reader_id"], name="sheets_to_readers"),
        PrimaryKeyConstraint("reader_id", "id", name="sheets_pk"),
    )
    op.create_index("sheets_by_making", "sheets", ["reader_id", "made_at", "id"])


def _to(table: str, other: str, column: str) -> ForeignKeyConstraint:
    return ForeignKeyConstraint(
        ["reader_id", column],
        [f"{other}.reader_id", f"{other}.id"],
        name=f"{table}_to_{other}",
    )
