"""The links of a reader's points to other books."""

from collections import defaultdict
from collections.abc import Sequence
from datetime import datetime
from uuid import UUID

from sqlalchemy import Connection, and_, bindparam, delete, not_, select, text

from cards.parts import Link
from service.store.columns import ID, INSTANT, WORDS
from service.store.tables import digests, links, parts
from service.use_cases.records import ReaderId

_MINE = links.c.reader_id == bindparam("reader")
_with_book = links.join(
    digests, and_(digests.c.reader_id == links.c.reader_id, digests.c.id == links.c.book_id)
)
_with_part = and_(parts.c.reader_id == links.c.reader_id, parts.c.id == links.c.part_id)
_theirs = parts.alias("theirs")
_LINK = (
    links.c.id,
    links.c.part_id,
    links.c.book_id,
    digests.c.title,
    digests.c.author,
    links.c.why,
)
_GET = select(*_LINK).select_from(_with_book).where(_MINE, links.c.id == bindparam("link"))
_their_parts = (
    select(_theirs.c.id)
    .where(
        _theirs.c.reader_id == bindparam("reader"),
        _theirs.c.digest_id.in_(bindparam("ids", expanding=True, type_=ID)),
    )
    .scalar_subquery()
)
_OF_DIGESTS = (
    select(parts.c.digest_id, *_LINK)
    .select_from(_with_book.join(parts, _with_part))
    .where(
        _MINE,
        not_(digests.c.removed),
        # A join alone would have SQLite read every link of the reader.
        links.c.part_id.in_(_their_parts),
    )
    .order_by(links.c.made_at, links.c.id)
)
_LEADING_TO = select(parts.c.digest_id).where(
    parts.c.reader_id == bindparam("reader"),
    parts.c.id.in_(select(links.c.part_id).where(_MINE, links.c.book_id == bindparam("book"))),
)
_PUT = text(
    "INSERT INTO links (reader_id, id, part_id, book_id, why, made_at) "
    "VALUES (:reader_id, :id, :part_id, :book_id, :why, :made_at) "
    "ON CONFLICT (reader_id, part_id, book_id) DO UPDATE SET why = excluded.why"
).bindparams(
    bindparam("reader_id", type_=ID),
    bindparam("id", type_=ID),
    bindparam("part_id", type_=ID),
    bindparam("book_id", type_=ID),
    bindparam("why", type_=WORDS),
    bindparam("made_at", type_=INSTANT),
)
_DROP = delete(links).where(_MINE, links.c.id == bindparam("link"))


class SqlLinks:
    """The links, in one transaction; satisfies `ports.Links`."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def get(self, reader: ReaderId, link_id: UUID) -> Link | None:
        """Return one link, unless it was dropped."""
        row = self._connection.execute(_GET, {"reader": reader, "link": link_id}).first()
        return None if row is None else Link(*row)

    def put(self, reader: ReaderId, link: Link, now: datetime) -> None:
        """Keep a link; the same point and book again replace what it says of the why."""
        self._connection.execute(
            _PUT,
            {
                "reader_id": reader,
                "id": link.id,
                "part_id": link.part_id,
                "book_id": link.book_id,
                "why": link.why,
                "made_at": now,
            },
        )

    def drop(self, reader: ReaderId, link_id: UUID) -> None:
        """Forget a link; nothing when there is none."""
        self._connection.execute(_DROP, {"reader": reader, "link": link_id})

    def leading_to(self, reader: ReaderId, book_id: UUID) -> list[UUID]:
        """Return the ids of the digests with a point linked to a book, each once, by id."""
        rows = self._connection.execute(_LEADING_TO, {"reader": reader, "book": book_id})
        return sorted(set(rows.scalars()))

    def of_digests(
        self, reader: ReaderId, digest_ids: Sequence[UUID]
    ) -> dict[UUID, tuple[Link, ...]]:
        """Return the links of the points of some digests to books not removed, the first first."""
        found: defaultdict[UUID, list[Link]] = defaultdict(list)
        rows = self._connection.execute(_OF_DIGESTS, {"reader": reader, "ids": list(digest_ids)})
        for digest_id, *link in rows:
            found[digest_id].append(Link(*link))
        return {digest_id: tuple(each) for digest_id, each in found.items()}
