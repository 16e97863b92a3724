"""The files digests were read from. Their bytes are loaded by nothing but `latest`."""

from uuid import UUID

from sqlalchemy import Connection, bindparam, exists, func, not_, select

from service.store.inserts import insert_or_update
from service.store.tables import originals
from service.use_cases.records import Original, ReaderId

_of = (
    originals.c.reader_id == bindparam("reader"),
    originals.c.digest_id == bindparam("digest"),
)
_newest = originals.c.number.desc()
_LATEST = (
    select(originals.c.name, originals.c.content, originals.c.sha256, originals.c.added_at)
    .where(*_of)
    .order_by(_newest)
    .limit(1)
)
_LATEST_HASH = select(originals.c.sha256).where(*_of).order_by(_newest).limit(1)
_LATEST_NAME = select(originals.c.name).where(*_of).order_by(_newest).limit(1)
_NEXT_NUMBER = select(func.coalesce(func.max(originals.c.number), 0) + 1).where(*_of)
_KEEP = insert_or_update(originals, ("number", "name", "added_at"))

_later = originals.alias("later")
LATEST_NAMED = select(originals.c.digest_id).where(
    originals.c.reader_id == bindparam("reader"),
    originals.c.name == bindparam("name"),
    not_(
        exists().where(
            _later.c.reader_id == originals.c.reader_id,
            _later.c.digest_id == originals.c.digest_id,
            _later.c.number > originals.c.number,
        )
    ),
)
"""The ids of the digests whose latest original bears `name`."""


class SqlOriginals:
    """The originals, in one transaction."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def keep(self, reader: ReaderId, digest_id: UUID, original: Original) -> None:
        """Keep a file as the latest original of a digest, its bytes only once.

        Its number is read before it is written, so the reader is to be locked first.
        """
        number = self._connection.execute(
            _NEXT_NUMBER, {"reader": reader, "digest": digest_id}
        ).scalar_one()
        self._connection.execute(
            _KEEP,
            {
                "reader_id": reader,
                "digest_id": digest_id,
                "sha256": original.sha256,
                "number": number,
                "name": original.name,
                "added_at": original.added_at,
                "content": original.content,
            },
        )

    def latest(self, reader: ReaderId, digest_id: UUID) -> Original | None:
        """Return the latest file a digest was read from, with its bytes, or None."""
        row = self._connection.execute(_LATEST, {"reader": reader, "digest": digest_id}).first()
        return None if row is None else Original(*row)

    def latest_hash(self, reader: ReaderId, digest_id: UUID) -> str | None:
        """Return the sha256 of that file, or None."""
        found: str | None = self._connection.execute(
            _LATEST_HASH, {"reader": reader, "digest": digest_id}
        ).scalar_one_or_none()
        return found

    def latest_name(self, reader: ReaderId, digest_id: UUID) -> str | None:
        """Return the name of that file, or None."""
        found: str | None = self._connection.execute(
            _LATEST_NAME, {"reader": reader, "digest": digest_id}
        ).scalar_one_or_none()
        return found
