"""The versions of the digests: only ever added to."""

from collections import defaultdict
from uuid import UUID

from sqlalchemy import Connection, bindparam, select

from service.store.inserts import insert_once
from service.store.kept_json import kept_from_json, kept_to_json, texts_in_json
from service.store.tables import versions
from service.use_cases.records import Cause, ReaderId, Version, VersionEntry

_ADD = insert_once(versions)
_OF_DIGEST = (
    versions.c.reader_id == bindparam("reader"),
    versions.c.digest_id == bindparam("digest"),
)
_GET = select(versions.c.kept_at, versions.c.cause, versions.c.kept).where(
    *_OF_DIGEST, versions.c.revision == bindparam("revision")
)
_NEWEST_FIRST = versions.c.revision.desc()
_FIRST_PAGE = (
    select(versions.c.revision, versions.c.kept_at, versions.c.cause)
    .where(*_OF_DIGEST)
    .order_by(_NEWEST_FIRST)
    .limit(bindparam("limit"))
)
_NEXT_PAGE = _FIRST_PAGE.where(versions.c.revision < bindparam("before"))
_LATEST = (
    select(versions.c.kept).where(*_OF_DIGEST).order_by(_NEWEST_FIRST).limit(bindparam("limit"))
)


class SqlVersions:
    """The versions, in one transaction; satisfies `ports.Versions`."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def add(self, reader: ReaderId, version: Version) -> None:
        """Append the version of a digest at its revision; one already kept changes nothing.

        The digest is to be kept first.
        """
        self._connection.execute(
            _ADD,
            {
                "reader_id": reader,
                "digest_id": version.kept.id,
                "revision": version.kept.revision,
                "kept_at": version.kept_at,
                "cause": version.cause.value,
                "kept": kept_to_json(version.kept),
            },
        )

    def get(self, reader: ReaderId, digest_id: UUID, revision: int) -> Version | None:
        """Return one version of a digest."""
        row = self._connection.execute(
            _GET, {"reader": reader, "digest": digest_id, "revision": revision}
        ).first()
        if row is None:
            return None
        return Version(row.kept_at, Cause(row.cause), kept_from_json(row.kept))

    def page(
        self, reader: ReaderId, digest_id: UUID, before: int | None, limit: int
    ) -> list[VersionEntry]:
        """Return the versions of a digest, newest first, of revisions below `before`."""
        asked: dict[str, object] = {"reader": reader, "digest": digest_id, "limit": limit}
        if before is None:
            rows = self._connection.execute(_FIRST_PAGE, asked)
        else:
            rows = self._connection.execute(_NEXT_PAGE, asked | {"before": before})
        return [VersionEntry(revision, kept_at, Cause(cause)) for revision, kept_at, cause in rows]

    def wordings(
        self, reader: ReaderId, digest_id: UUID, limit: int
    ) -> dict[UUID, tuple[str, ...]]:
        """Return the wordings each part had in the latest `limit` versions, newest first.

        Each wording once, in one statement; parts that were in none of them are left out.
        """
        found: defaultdict[UUID, dict[str, None]] = defaultdict(dict)
        for written in self._connection.execute(
            _LATEST, {"reader": reader, "digest": digest_id, "limit": limit}
        ).scalars():
            for part_id, text in texts_in_json(written):
                found[part_id][text] = None
        return {part_id: tuple(texts) for part_id, texts in found.items()}
