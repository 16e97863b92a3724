"""Weights of the reader's own, the fits they come from, and tallies of retention.

Follows: 0005
"""

from alembic import op
from sqlalchemy import (
    BigInteger,
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
    Uuid,
    text,
)

revision = "0006"
down_revision = "0005"
branch_labels = None
depends_on = None

# As they were at this revision; what the tables say now is in service/store/tables/.
ID = Uuid().with_variant(LargeBinary(), "sqlite")
INSTANT = DateTime(timezone=True).with_variant(String(32), "sqlite")
WORDS = Text()
_NARROW = {"sqlite_with_rowid": False}
"""What SQLite does not tell of a table when it is made anew."""


def upgrade() -> None:
    """Keep a reader's own weights with their fits, and what the answers add up to."""
    op.add_column("readers", Column("weights", WORDS))
    op.add_column("items", Column("moves_to", Date()))
    op.create_index(
        "items_moving",
        "items",
        ["reader_id", "moves_to", "id"],
        sqlite_where=text("moves_to IS NOT NULL AND retired = 0"),
        postgresql_where=text("moves_to IS NOT NULL AND NOT retired"),
    )
    op.create_table(
        "fittings",
        Column("reader_id", ID, nullable=False),
        Column("id", ID, nullable=False),
        Column("fitted_at", INSTANT, nullable=False),
        Column("fitted_on", Date(), nullable=False),
        Column("answers", Integer(), nullable=False),
        Column("adopted", Boolean(), nullable=False),
        Column("weights", WORDS, nullable=False),
        Column("verdicts", WORDS, nullable=False),
        Column("refolded", Boolean(), nullable=False),
        Column("moved_on", Date()),
        CheckConstraint("answers >= 0", name=op.f("fittings_answers_count")),
        _to_reader("fittings"),
        PrimaryKeyConstraint("reader_id", "id", name="fittings_pk"),
    )
    op.create_table(
        "tallies",
        Column("reader_id", ID, nullable=False),
        Column("of", String(10), nullable=False),
        Column("key", String(80), nullable=False),
        *(
            Column(name, BigInteger(), nullable=False)
            for name in ("n", "recalled", "foreseen", "came", "predicted", "squares", "logs")
        ),
        _to_reader("tallies"),
        PrimaryKeyConstraint("reader_id", "of", "key", name="tallies_pk"),
    )
    op.create_table(
        "tallied",
        Column("reader_id", ID, nullable=False),
        Column("through", Date(), nullable=False),
        _to_reader("tallied"),
        PrimaryKeyConstraint("reader_id", name="tallied_pk"),
    )


def downgrade() -> None:
    """Undo it; a reader's own weights go, and every memory follows the published ones again."""
    for table in ("tallied", "tallies", "fittings"):
        op.drop_table(table)
    op.drop_index("items_moving", "items")
    with op.batch_alter_table("items", table_kwargs=_NARROW) as items:
        items.drop_column("moves_to")
    with op.batch_alter_table("readers") as readers:
        readers.drop_column("weights")


def _to_reader(table: str) -> ForeignKeyConstraint:
    return ForeignKeyConstraint(["reader_id"], ["readers.reader_id"], name=f"{table}_to_readers")
