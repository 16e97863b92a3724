"""Commitments with their decisions, re-readings, talks, what was taken back, reminders.

Follows: 0004
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
    text,
)

revision = "0005"
down_revision = "0004"
branch_labels = None
depends_on = None

# As they were at this revision; what the tables say now is in service/store/tables/.
ID = Uuid().with_variant(LargeBinary(), "sqlite")
INSTANT = DateTime(timezone=True).with_variant(String(32), "sqlite")
WORDS = Text()
_NARROW = {"sqlite_with_rowid": False}
"""What SQLite does not tell of a table when it is made anew."""
_ACTS = (
    "act IN ('start', 'measure', 'move', 'pause', 'resume', 'renew', 'halve', 'reword', "
    "'release', 'close')"
)


def upgrade() -> None:
    """Keep what is made of commitments, what is read again and told, and how to remind."""
    op.add_column("items", Column("rests_from", Date()))
    op.add_column("items", Column("afresh_on", Date()))
    op.create_index(
        "items_afresh",
        "items",
        ["reader_id", "afresh_on", "id"],
        sqlite_where=text("afresh_on IS NOT NULL AND retired = 0"),
        postgresql_where=text("afresh_on IS NOT NULL AND NOT retired"),
    )
    _check_ins()
    _commitments()
    _books()
    _reminders()


def downgrade() -> None:
    """Undo it; what is kept of all this goes, and what was taken back stands again."""
    for table in (
        "mails",
        "reminders",
        "feed_addresses",
        "withdrawals",
        "talks",
        "rereadings",
        "decisions",
        "commitments",
    ):
        op.drop_table(table)
    with op.batch_alter_table("check_ins") as check_ins:
        check_ins.drop_constraint(op.f("check_ins_count_of_deeds"), type_="check")
        for column in ("witness", "count", "reported_on"):
            check_ins.drop_column(column)
    op.drop_index("items_afresh", "items")
    with op.batch_alter_table("items", table_kwargs=_NARROW) as items:
        items.drop_column("afresh_on")
        items.drop_column("rests_from")


def _check_ins() -> None:
    op.add_column("check_ins", Column("reported_on", Date()))
    op.add_column("check_ins", Column("count", Integer()))
    op.add_column("check_ins", Column("witness", WORDS, nullable=False, server_default=""))
    # The reader's own day of a report was not kept: its day in UTC, but not before the day
    # it is about, since none is about a day that has not come.
    on_sqlite = op.get_bind().dialect.name == "sqlite"
    reported = (
        "substr(reported_at, 1, 10)" if on_sqlite else "(reported_at AT TIME ZONE 'UTC')::date"
    )
    op.execute(
        f"UPDATE check_ins SET reported_on = CASE WHEN day > {reported} THEN day "  # noqa: S608
        f"ELSE {reported} END"
    )
    with op.batch_alter_table("check_ins") as check_ins:
        check_ins.alter_column("reported_on", nullable=False)
        check_ins.alter_column("witness", server_default=None)
        check_ins.create_check_constraint(op.f("check_ins_count_of_deeds"), "count >= 0")


def _commitments() -> None:
    op.create_table(
        "commitments",
        *_key(),
        Column("digest_id", ID, nullable=False),
        Column("text", WORDS, nullable=False),
        Column("made_on", Date(), nullable=False),
        Column("entered_on", Date(), nullable=False),
        Column("measure", WORDS),
        _to("commitments", "parts", "id"),
        _to("commitments", "digests", "digest_id"),
        PrimaryKeyConstraint("reader_id", "id", name="commitments_pk"),
    )
    op.create_index("commitments_by_digest", "commitments", ["reader_id", "digest_id", "id"])
    op.create_table(
        "decisions",
        *_key(),
        Column("commitment_id", ID, nullable=False),
        Column("act", String(7), nullable=False),
        Column("day", Date(), nullable=False),
        Column("decided_at", INSTANT, nullable=False),
        Column("decided_on", Date(), nullable=False),
        Column("measure", WORDS),
        Column("until", Date()),
        Column("outcome", String(6)),
        Column("words", WORDS, nullable=False),
        CheckConstraint(_ACTS, name=op.f("decisions_act_known")),
        CheckConstraint(
            "outcome IN ('kept', 'partly', 'missed')", name=op.f("decisions_outcome_known")
        ),
        _to("decisions", "parts", "commitment_id"),
        PrimaryKeyConstraint("reader_id", "id", name="decisions_pk"),
    )
    op.create_index("decisions_in_order", "decisions", ["reader_id", "commitment_id", "day", "id"])
    op.create_table(
        "withdrawals",
        *_key(),
        Column("fact_id", ID, nullable=False),
        Column("withdrawn_at", INSTANT, nullable=False),
        Column("withdrawn_on", Date(), nullable=False),
        UniqueConstraint("reader_id", "fact_id", name="withdrawals_fact_id_once"),
        PrimaryKeyConstraint("reader_id", "id", name="withdrawals_pk"),
    )


def _books() -> None:
    op.create_table(
        "rereadings",
        *_key(),
        Column("digest_id", ID, nullable=False),
        Column("day", Date(), nullable=False),
        Column("reported_at", INSTANT, nullable=False),
        Column("reported_on", Date(), nullable=False),
        Column("pages", WORDS, nullable=False),
        Column("minutes", Integer()),
        Column("note", WORDS, nullable=False),
        Column("concerned", WORDS, nullable=False),
        CheckConstraint("minutes >= 1", name=op.f("rereadings_minutes_count")),
        _to("rereadings", "digests", "digest_id"),
        PrimaryKeyConstraint("reader_id", "id", name="rereadings_pk"),
    )
    op.create_index("rereadings_in_order", "rereadings", ["reader_id", "digest_id", "day", "id"])
    op.create_table(
        "talks",
        *_key(),
        Column("digest_id", ID, nullable=False),
        Column("day", Date(), nullable=False),
        Column("reported_at", INSTANT, nullable=False),
        Column("reported_on", Date(), nullable=False),
        Column("listener", WORDS, nullable=False),
        Column("minutes", Integer()),
        Column("note", WORDS, nullable=False),
        CheckConstraint("minutes >= 1", name=op.f("talks_minutes_count")),
        _to("talks", "digests", "digest_id"),
        PrimaryKeyConstraint("reader_id", "id", name="talks_pk"),
    )
    op.create_index("talks_in_order", "talks", ["reader_id", "digest_id", "day", "id"])


def _reminders() -> None:
    op.create_table(
        "feed_addresses",
        *_key(),
        Column("sha256", String(64), nullable=False),
        Column("name", WORDS, nullable=False),
        Column("made_at", INSTANT, nullable=False),
        Column("revoked_at", INSTANT),
        CheckConstraint("length(sha256) = 64", name=op.f("feed_addresses_sha256_length")),
        _to_reader("feed_addresses"),
        UniqueConstraint("reader_id", "sha256", name="feed_addresses_sha256_once"),
        PrimaryKeyConstraint("reader_id", "id", name="feed_addresses_pk"),
    )
    op.create_index("feed_addresses_by_making", "feed_addresses", ["reader_id", "made_at", "id"])
    op.create_table(
        "reminders",
        Column("reader_id", ID, nullable=False),
        Column("mail", Boolean(), nullable=False),
        Column("mail_to", WORDS),
        Column("mail_at", Integer(), nullable=False),
        Column("revision", Integer(), nullable=False),
        CheckConstraint("mail_at BETWEEN 0 AND 23", name=op.f("reminders_mail_at_hour")),
        CheckConstraint("revision >= 1", name=op.f("reminders_revision_count")),
        _to_reader("reminders"),
        PrimaryKeyConstraint("reader_id", name="reminders_pk"),
    )
    op.create_table(
        "mails",
        Column("reader_id", ID, nullable=False),
        Column("day", Date(), nullable=False),
        Column("begun_at", INSTANT, nullable=False),
        Column("sent_at", INSTANT),
        Column("sha256", String(64), nullable=False),
        CheckConstraint("length(sha256) = 64", name=op.f("mails_sha256_length")),
        _to_reader("mails"),
        UniqueConstraint("reader_id", "sha256", name="mails_sha256_once"),
        PrimaryKeyConstraint("reader_id", "day", name="mails_pk"),
    )


def _key() -> tuple[Column[object], Column[object]]:
    return Column("reader_id", ID, nullable=False), Column("id", ID, nullable=False)


def _to(table: str, other: str, column: str) -> ForeignKeyConstraint:
    return ForeignKeyConstraint(
        ["reader_id", column],
        [f"{other}.reader_id", f"{other}.id"],
        name=f"{table}_to_{other}",
    )


def _to_reader(table: str) -> ForeignKeyConstraint:
    return ForeignKeyConstraint(["reader_id"], ["readers.reader_id"], name=f"{table}_to_readers")
