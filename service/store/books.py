"""The texts of a reader's books, and where quotations were found in them.

A text is loaded by nothing but `get`.
"""

from collections.abc import Iterable, Sequence
from typing import Any
from uuid import UUID

from sqlalchemy import Connection, and_, bindparam, delete, select

from cards.proving import Anchor
from service.store.book_json import book_from_bytes, book_to_bytes
from service.store.inserts import insert_or_update
from service.store.tables import anchors, book_texts
from service.use_cases.records import BookFile, PartAnchor, ReaderId

_ANCHOR = (
    "exact",
    "prefix",
    "suffix",
    "first_offset",
    "end_offset",
    "fraction",
    "chapter",
    "page",
    "source",
)

_ITS_BOOK = and_(
    book_texts.c.reader_id == bindparam("reader"), book_texts.c.digest_id == bindparam("digest")
)
_GET = select(
    book_texts.c.name, book_texts.c.sha256, book_texts.c.added_at, book_texts.c.content
).where(_ITS_BOOK)
_NAME = select(book_texts.c.name).where(_ITS_BOOK)
_PUT = insert_or_update(book_texts, ("name", "sha256", "added_at", "content"))
_DROP = delete(book_texts).where(_ITS_BOOK)
_ANCHORS = (
    select(anchors.c.part_id, *(anchors.c[name] for name in _ANCHOR))
    .where(anchors.c.reader_id == bindparam("reader"), anchors.c.digest_id == bindparam("digest"))
    .order_by(anchors.c.part_id)
)
_PUT_ANCHOR = insert_or_update(anchors, _ANCHOR)


class SqlBooks:
    """The texts of books, in one transaction; satisfies `ports.Books`."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def get(self, reader: ReaderId, digest_id: UUID) -> BookFile | None:
        """Return the text of a digest's book, or None where it is not at hand."""
        row = self._connection.execute(_GET, {"reader": reader, "digest": digest_id}).first()
        if row is None or row.content is None:
            return None
        return BookFile(row.name, row.sha256, row.added_at, book_from_bytes(row.content))

    def name(self, reader: ReaderId, digest_id: UUID) -> str | None:
        """Return the name of its file without loading it."""
        found: str | None = self._connection.execute(
            _NAME, {"reader": reader, "digest": digest_id}
        ).scalar_one_or_none()
        return found

    def put(self, reader: ReaderId, digest_id: UUID, book: BookFile) -> None:
        """Keep the text of a digest's book in place of the one there was.

        The digest is to be kept first.
        """
        self._connection.execute(
            _PUT,
            {
                "reader_id": reader,
                "digest_id": digest_id,
                "name": book.name,
                "sha256": book.sha256,
                "added_at": book.added_at,
                "content": book_to_bytes(book.text),
            },
        )

    def drop(self, reader: ReaderId, digest_id: UUID) -> None:
        """Forget the text of a digest's book; the anchors stay."""
        self._connection.execute(_DROP, {"reader": reader, "digest": digest_id})

    def anchors(self, reader: ReaderId, digest_id: UUID) -> list[PartAnchor]:
        """Return where the quotations of a digest were found, retired ones too, by part."""
        rows = self._connection.execute(_ANCHORS, {"reader": reader, "digest": digest_id})
        return [_anchor(row) for row in rows]

    def put_anchors(self, reader: ReaderId, digest_id: UUID, anchors: Sequence[PartAnchor]) -> None:
        """Keep anchors, each in place of the one its quotation had."""
        if anchors:
            self._connection.execute(
                _PUT_ANCHOR, [_anchor_row(reader, digest_id, each) for each in anchors]
            )


def _anchor_row(reader: ReaderId, digest_id: UUID, each: PartAnchor) -> dict[str, object]:
    anchor = each.anchor
    return {
        "reader_id": reader,
        "digest_id": digest_id,
        "part_id": each.part_id,
        "exact": anchor.exact,
        "prefix": anchor.prefix,
        "suffix": anchor.suffix,
        "first_offset": anchor.start,
        "end_offset": anchor.end,
        "fraction": anchor.fraction,
        "chapter": anchor.chapter,
        "page": anchor.page,
        "source": anchor.source,
    }


def _anchor(row: Iterable[Any]) -> PartAnchor:
    part_id, exact, prefix, suffix, start, end, fraction, chapter, page, source = row
    return PartAnchor(
        part_id,
        Anchor(
            exact=exact,
            prefix=prefix,
            suffix=suffix,
            start=start,
            end=end,
            fraction=fraction,
            chapter=chapter,
            page=page,
            source=source,
        ),
    )
