"""The digests of a reader's library, with their parts."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from datetime import datetime
from typing import Any
from uuid import UUID

from sqlalchemy import (
    Connection,
    and_,
    bindparam,
    not_,
    or_,
    select,
    tuple_,
    update,
)

from cards.kinds.base import Shelved
from cards.parts import Care, KeptDigest, Link, Part, PartKind
from service.store.columns import ID, INSTANT
from service.store.inserts import insert_or_update
from service.store.links import SqlLinks
from service.store.originals import LATEST_NAMED, SqlOriginals
from service.store.readers import SqlReaders
from service.store.tables import digests, parts
from service.use_cases.records import BookKey, DigestEntry, Original, ReaderId

_FACTS = (
    "title",
    "author",
    "edition",
    "isbn",
    "pages",
    "finished_on",
    "judgement",
    "removed",
    "revision",
    "care",
)
_KEYS = ("key_title", "key_author", "key_isbn")
_PART = ("number", "text", "locator", "stands_after", "retired")

_MINE = digests.c.reader_id == bindparam("reader")
_WHOLE = select(
    digests.c.id,
    *(digests.c[name] for name in _FACTS),
    digests.c.added_at,
).where(_MINE)
_OLDEST_FIRST = (digests.c.added_at, digests.c.id)
_MANY = _WHOLE.where(digests.c.id.in_(bindparam("ids", expanding=True, type_=ID)))
_ALIKE = _WHOLE.where(
    or_(
        and_(
            digests.c.key_title == bindparam("title"),
            digests.c.key_author == bindparam("author"),
        ),
        digests.c.key_isbn == bindparam("isbn"),
    )
).order_by(*_OLDEST_FIRST)
_FROM_FILE = _WHOLE.where(digests.c.id.in_(LATEST_NAMED)).order_by(*_OLDEST_FIRST)
_FIRST_PAGE = (
    _WHOLE.where(not_(digests.c.removed))
    .order_by(digests.c.added_at.desc(), digests.c.id.desc())
    .limit(bindparam("limit"))
)
_SHELF = (
    select(digests.c.id, digests.c.title, digests.c.author, digests.c.finished_on)
    .where(_MINE, not_(digests.c.removed))
    .order_by(digests.c.added_at.desc(), digests.c.id.desc())
    .limit(bindparam("limit"))
)
_NEXT_PAGE = _FIRST_PAGE.where(
    tuple_(digests.c.added_at, digests.c.id)
    < tuple_(bindparam("added_at", type_=INSTANT), bindparam("last", type_=ID))
)
_PARTS = (
    select(
        parts.c.digest_id,
        parts.c.id,
        parts.c.kind,
        parts.c.number,
        parts.c.text,
        parts.c.locator,
        parts.c.stands_after,
        parts.c.retired,
    )
    .where(
        parts.c.reader_id == bindparam("reader"),
        parts.c.digest_id.in_(bindparam("ids", expanding=True, type_=ID)),
    )
    .order_by(parts.c.digest_id, parts.c.kind, parts.c.number)
)
_PUT = insert_or_update(digests, (*_FACTS, *_KEYS))
_RETIRE_PARTS = (
    update(parts)
    .where(
        parts.c.reader_id == bindparam("reader"),
        parts.c.digest_id == bindparam("digest"),
        not_(parts.c.retired),
    )
    .values(retired=True)
)
_PART_KINDS = {kind.value: kind for kind in PartKind}  # quicker than the enumeration's look-up
_PUT_PART = insert_or_update(parts, _PART)


class SqlDigests:
    """The digests, in one transaction; satisfies `ports.Digests`."""

    def __init__(self, connection: Connection, readers: SqlReaders) -> None:
        self._connection = connection
        self._readers = readers
        self._originals = SqlOriginals(connection)
        self._links = SqlLinks(connection)

    def get(self, reader: ReaderId, digest_id: UUID) -> KeptDigest | None:
        """Return one digest with every part it holds or held."""
        return self.many(reader, (digest_id,)).get(digest_id)

    def many(self, reader: ReaderId, ids: Iterable[UUID]) -> dict[UUID, KeptDigest]:
        """Return several by id, in three statements."""
        wanted = list(dict.fromkeys(ids))
        if not wanted:
            return {}
        found = self._connection.execute(_MANY, {"reader": reader, "ids": wanted}).all()
        return {entry.kept.id: entry.kept for entry in self._entries(reader, found)}

    def shelf(self, reader: ReaderId, limit: int) -> tuple[Shelved, ...]:
        """Return the books not removed without what is in them, newest first."""
        rows = self._connection.execute(_SHELF, {"reader": reader, "limit": limit})
        return tuple(Shelved(*row) for row in rows)

    def alike(self, reader: ReaderId, key: BookKey) -> list[KeptDigest]:
        """Return those with the same folded title and author, or the same ISBN; oldest first."""
        found = self._connection.execute(
            _ALIKE,
            {"reader": reader, "title": key.title, "author": key.author, "isbn": key.isbn},
        ).all()
        return [entry.kept for entry in self._entries(reader, found)]

    def from_file(self, reader: ReaderId, name: str) -> list[KeptDigest]:
        """Return those whose latest original bears a file name; oldest first."""
        found = self._connection.execute(_FROM_FILE, {"reader": reader, "name": name}).all()
        return [entry.kept for entry in self._entries(reader, found)]

    def put(self, reader: ReaderId, kept: KeptDigest, key: BookKey, now: datetime) -> None:
        """Keep a digest: insert it, or replace its facts and parts, the revision as given.

        `now` is when it was added, if it is new. Rows of parts are never deleted: one
        that `kept` does not name is kept as retired.
        """
        self._readers.ensure(reader)
        self._connection.execute(
            _PUT,
            {name: getattr(kept, name) for name in _FACTS}
            | {
                "reader_id": reader,
                "id": kept.id,
                "key_title": key.title,
                "key_author": key.author,
                "key_isbn": key.isbn,
                "added_at": now,
            },
        )
        self._connection.execute(_RETIRE_PARTS, {"reader": reader, "digest": kept.id})
        if kept.parts:
            self._connection.execute(
                _PUT_PART, [_part_row(reader, kept.id, part) for part in kept.parts]
            )

    def page(
        self, reader: ReaderId, after: tuple[datetime, UUID] | None, limit: int
    ) -> list[DigestEntry]:
        """Return those not removed, newest first by (added_at, id), beyond `after`."""
        values: dict[str, object] = {"reader": reader, "limit": limit}
        if after is None:
            found = self._connection.execute(_FIRST_PAGE, values).all()
        else:
            values |= {"added_at": after[0], "last": after[1]}
            found = self._connection.execute(_NEXT_PAGE, values).all()
        return self._entries(reader, found)

    def keep_original(self, reader: ReaderId, digest_id: UUID, original: Original) -> None:
        """Keep a file a digest was read from; the same bytes for the same digest only once.

        Keeping the same bytes again makes them the latest original.
        """
        self._originals.keep(reader, digest_id, original)

    def original(self, reader: ReaderId, digest_id: UUID) -> Original | None:
        """Return the latest file a digest was read from, if it came from one."""
        return self._originals.latest(reader, digest_id)

    def original_name(self, reader: ReaderId, digest_id: UUID) -> str | None:
        """Return the name of that file without loading it."""
        return self._originals.latest_name(reader, digest_id)

    def original_hash(self, reader: ReaderId, digest_id: UUID) -> str | None:
        """Return the sha256 of that file without loading it."""
        return self._originals.latest_hash(reader, digest_id)

    def _entries(self, reader: ReaderId, found: Sequence[Any]) -> list[DigestEntry]:
        """Join rows of digests with their parts, keeping the order of the rows."""
        if not found:
            return []
        of_digest: dict[UUID, list[Part]] = defaultdict(list)
        rows = self._connection.execute(
            _PARTS, {"reader": reader, "ids": [row.id for row in found]}
        ).all()
        for digest_id, part_id, kind, *rest in rows:
            of_digest[digest_id].append(Part(part_id, _PART_KINDS[kind], *rest))
        linked = self._links.of_digests(reader, [row.id for row in found])
        return [_entry(row, tuple(of_digest[row.id]), linked.get(row.id, ())) for row in found]


def _entry(row: Iterable[Any], its_parts: tuple[Part, ...], links: tuple[Link, ...]) -> DigestEntry:
    (
        digest_id,
        title,
        author,
        edition,
        isbn,
        pages,
        finished_on,
        judgement,
        removed,
        revision,
        care,
        added_at,
    ) = row
    return DigestEntry(
        KeptDigest(
            digest_id,
            title,
            author,
            edition,
            isbn,
            pages,
            finished_on,
            judgement,
            its_parts,
            removed,
            revision,
            Care(care),
            links,
        ),
        added_at,
    )


def _part_row(reader: ReaderId, digest_id: UUID, part: Part) -> dict[str, object]:
    return {
        "reader_id": reader,
        "id": part.id,
        "digest_id": digest_id,
        "kind": part.kind.value,
        "number": part.number,
        "text": part.text,
        "locator": part.locator,
        "stands_after": part.after,
        "retired": part.retired,
    }
