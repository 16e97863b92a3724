"""A book's text may be known by its file's name and hash alone: an archive brings no more.

Follows: 0006
"""

from alembic import op

revision = "0007"
down_revision = "0006"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Let the text of a book be absent where its file is known."""
    with op.batch_alter_table("book_texts") as book_texts:
        book_texts.alter_column("content", nullable=True)


def downgrade() -> None:
    """Undo it; files whose text is not at hand go, and the reader may give them again."""
    op.execute("DELETE FROM book_texts WHERE content IS NULL")
    with op.batch_alter_table("book_texts") as book_texts:
        book_texts.alter_column("content", nullable=False)
