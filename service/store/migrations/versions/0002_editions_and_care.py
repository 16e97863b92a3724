"""Editions, and the care of books.

Follows: 0001
"""

from alembic import op
from sqlalchemy import Column, String, Text, text

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None

# As they were at this revision; what the tables say now is in service/store/tables/.
WORDS = Text()
_NARROW = {"sqlite_with_rowid": False}
"""What SQLite does not tell of a table when it is made anew."""
_CARE = "care IN ('close', 'steady', 'resting')"


def upgrade() -> None:
    """Let digests say their edition, and digests and items their care, steady so far."""
    op.add_column("digests", Column("edition", WORDS))
    for table in ("digests", "items"):
        op.add_column(
            table, Column("care", String(length=7), nullable=False, server_default="steady")
        )
    with op.batch_alter_table("digests") as digests:
        digests.alter_column("care", server_default=None)
        digests.create_check_constraint(op.f("digests_care_known"), _CARE)
    _unasked_dropped()
    with op.batch_alter_table("items", table_kwargs=_NARROW) as items:
        items.alter_column("care", server_default=None)
        items.create_check_constraint(op.f("items_care_known"), _CARE)
    _unasked_indexed(" AND care != 'resting'")


def downgrade() -> None:
    """Undo it."""
    _unasked_dropped()
    with op.batch_alter_table("items", table_kwargs=_NARROW) as items:
        items.drop_constraint(op.f("items_care_known"), type_="check")
        items.drop_column("care")
    _unasked_indexed("")
    with op.batch_alter_table("digests") as digests:
        digests.drop_constraint(op.f("digests_care_known"), type_="check")
        digests.drop_column("care")
        digests.drop_column("edition")


def _unasked_dropped() -> None:
    op.drop_index("items_unasked", "items")


def _unasked_indexed(narrower: str) -> None:
    op.create_index(
        "items_unasked",
        "items",
        ["reader_id", "kind", "digest_added_at", "digest_id", "number", "id"],
        sqlite_where=text(f"stability IS NULL AND retired = 0{narrower}"),
        postgresql_where=text(f"stability IS NULL AND NOT retired{narrower}"),
    )
