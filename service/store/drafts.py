"""The drafts of a reader, and the files they were read from.

The bytes of a file are kept once for all the drafts it was read into, loaded by nothing
but `original`, and forgotten with the last of them.
"""

from collections.abc import Iterable
from datetime import datetime
from typing import Any
from uuid import UUID

from sqlalchemy import (
    Connection,
    and_,
    bindparam,
    delete,
    exists,
    func,
    not_,
    select,
    tuple_,
)

from service.store.columns import ID, INSTANT
from service.store.draft_json import (
    left_from_json,
    left_to_json,
    notices_from_json,
    notices_to_json,
    sources_from_json,
    sources_to_json,
    typed_from_json,
    typed_to_json,
)
from service.store.inserts import insert_once, insert_or_update
from service.store.readers import SqlReaders
from service.store.tables import draft_contents, draft_originals, drafts
from service.use_cases.records import Draft, Original, ReaderId

_CHANGING = ("typed", "changed_at", "file", "number", "sources", "left_out", "notices", "revision")

_MINE = drafts.c.reader_id == bindparam("reader")
_THIS = and_(_MINE, drafts.c.id == bindparam("draft"))
_WHOLE = select(drafts.c.id, drafts.c.begun_at, *(drafts.c[name] for name in _CHANGING))
_GET = _WHOLE.where(_THIS)
_FIRST_PAGE = (
    _WHOLE.where(_MINE)
    .order_by(drafts.c.changed_at.desc(), drafts.c.id.desc())
    .limit(bindparam("limit"))
)
_NEXT_PAGE = _FIRST_PAGE.where(
    tuple_(drafts.c.changed_at, drafts.c.id)
    < tuple_(bindparam("changed_at", type_=INSTANT), bindparam("last", type_=ID))
)
_COUNT = select(func.count()).select_from(drafts).where(_MINE)
_PUT = insert_or_update(drafts, _CHANGING)
_DROP = delete(drafts).where(_THIS)

_ITS_ORIGINAL = and_(
    draft_originals.c.reader_id == bindparam("reader"),
    draft_originals.c.draft_id == bindparam("draft"),
)
_KEEP_CONTENT = insert_once(draft_contents)
_KEEP_ORIGINAL = insert_or_update(draft_originals, ("sha256", "name", "added_at"))
_ORIGINAL = (
    select(
        draft_originals.c.name,
        draft_contents.c.content,
        draft_originals.c.sha256,
        draft_originals.c.added_at,
    )
    .join_from(
        draft_originals,
        draft_contents,
        and_(
            draft_contents.c.reader_id == draft_originals.c.reader_id,
            draft_contents.c.sha256 == draft_originals.c.sha256,
        ),
    )
    .where(_ITS_ORIGINAL)
)
_ORIGINAL_HASH = select(draft_originals.c.sha256).where(_ITS_ORIGINAL)
_DROP_ORIGINAL = delete(draft_originals).where(_ITS_ORIGINAL)
_DROP_UNNEEDED = delete(draft_contents).where(
    draft_contents.c.reader_id == bindparam("reader"),
    draft_contents.c.sha256 == bindparam("sha256"),
    not_(
        exists().where(
            draft_originals.c.reader_id == bindparam("reader"),
            draft_originals.c.sha256 == bindparam("sha256"),
        )
    ),
)


class SqlDrafts:
    """The drafts, in one transaction; satisfies `ports.Drafts`."""

    def __init__(self, connection: Connection, readers: SqlReaders) -> None:
        self._connection = connection
        self._readers = readers

    def get(self, reader: ReaderId, draft_id: UUID) -> Draft | None:
        """Return one draft."""
        row = self._connection.execute(_GET, {"reader": reader, "draft": draft_id}).first()
        return None if row is None else _draft(row)

    def page(
        self, reader: ReaderId, after: tuple[datetime, UUID] | None, limit: int
    ) -> list[Draft]:
        """Return the drafts, the last changed first by (changed_at, id), beyond `after`."""
        asked: dict[str, object] = {"reader": reader, "limit": limit}
        if after is None:
            rows = self._connection.execute(_FIRST_PAGE, asked)
        else:
            rows = self._connection.execute(
                _NEXT_PAGE, asked | {"changed_at": after[0], "last": after[1]}
            )
        return [_draft(row) for row in rows]

    def count(self, reader: ReaderId) -> int:
        """Return how many drafts there are."""
        found: int = self._connection.execute(_COUNT, {"reader": reader}).scalar_one()
        return found

    def put(self, reader: ReaderId, draft: Draft) -> None:
        """Keep a draft: insert it, or replace what is typed in it, the revision as given.

        When it was begun stays as it was first put.
        """
        self._readers.ensure(reader)
        self._connection.execute(
            _PUT,
            {
                "reader_id": reader,
                "id": draft.id,
                "typed": typed_to_json(draft.typed),
                "begun_at": draft.begun_at,
                "changed_at": draft.changed_at,
                "file": draft.file,
                "number": draft.number,
                "sources": sources_to_json(draft.sources),
                "left_out": left_to_json(draft.left),
                "notices": notices_to_json(draft.notices),
                "revision": draft.revision,
            },
        )

    def keep_original(self, reader: ReaderId, draft_id: UUID, original: Original) -> None:
        """Keep the file a draft was read from, in place of the one it had.

        The draft is to be kept first.
        """
        former = self._held_hash(reader, draft_id)
        self._connection.execute(
            _KEEP_CONTENT,
            {"reader_id": reader, "sha256": original.sha256, "content": original.content},
        )
        self._connection.execute(
            _KEEP_ORIGINAL,
            {
                "reader_id": reader,
                "draft_id": draft_id,
                "sha256": original.sha256,
                "name": original.name,
                "added_at": original.added_at,
            },
        )
        self._drop_unneeded(reader, former)

    def original(self, reader: ReaderId, draft_id: UUID) -> Original | None:
        """Return the file a draft was read from, or None."""
        row = self._connection.execute(_ORIGINAL, {"reader": reader, "draft": draft_id}).first()
        return None if row is None else Original(*row)

    def drop(self, reader: ReaderId, draft_id: UUID) -> None:
        """Forget a draft and its file; nothing when there is none."""
        this = {"reader": reader, "draft": draft_id}
        sha256 = self._held_hash(reader, draft_id)
        self._connection.execute(_DROP_ORIGINAL, this)
        self._connection.execute(_DROP, this)
        self._drop_unneeded(reader, sha256)

    def _held_hash(self, reader: ReaderId, draft_id: UUID) -> str | None:
        """Return the sha256 of a draft's file, and let nobody else change drafts' files meanwhile.

        Of two who each drop one of the last two drafts of a file, both would else leave its
        bytes to the other.
        """
        self._readers.lock(reader)
        found: str | None = self._connection.execute(
            _ORIGINAL_HASH, {"reader": reader, "draft": draft_id}
        ).scalar_one_or_none()
        return found

    def _drop_unneeded(self, reader: ReaderId, sha256: str | None) -> None:
        if sha256 is not None:
            self._connection.execute(_DROP_UNNEEDED, {"reader": reader, "sha256": sha256})


def _draft(row: Iterable[Any]) -> Draft:
    draft_id, begun_at, typed, changed_at, file, number, sources, left, notices, revision = row
    return Draft(
        id=draft_id,
        typed=typed_from_json(typed),
        begun_at=begun_at,
        changed_at=changed_at,
        file=file,
        number=number,
        sources=sources_from_json(sources),
        left=left_from_json(left),
        notices=notices_from_json(notices),
        revision=revision,
    )
