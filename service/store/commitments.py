"""The commitments of a reader's library, as they came in and as their digests say them now."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from typing import Any
from uuid import UUID

from sqlalchemy import Connection, and_, bindparam, not_, or_, select, update

from cards.commitments import Commitment
from cards.kinds.base import KindName
from cards.parts import PartKind
from service.store.columns import ID
from service.store.inserts import insert_or_update
from service.store.measure_json import measure_from_json, measure_to_json
from service.store.tables import commitments, digests, items, parts
from service.use_cases.commitment_records import KeptCommitment, NewCommitment
from service.use_cases.records import ReaderId

_ROWS = commitments.join(
    parts, and_(parts.c.reader_id == commitments.c.reader_id, parts.c.id == commitments.c.id)
).join(
    digests,
    and_(digests.c.reader_id == commitments.c.reader_id, digests.c.id == commitments.c.digest_id),
)
_MINE = (
    commitments.c.reader_id == bindparam("reader"),
    parts.c.reader_id == bindparam("reader"),
    digests.c.reader_id == bindparam("reader"),
)
_WHOLE = (
    select(
        commitments.c.id,
        commitments.c.text,
        commitments.c.made_on,
        commitments.c.entered_on,
        commitments.c.measure,
        commitments.c.digest_id,
        digests.c.title,
        digests.c.author,
        parts.c.number,
        parts.c.text,
        or_(parts.c.retired, digests.c.removed),
    )
    .select_from(_ROWS)
    .where(*_MINE)
)
_GET = _WHOLE.where(commitments.c.id == bindparam("commitment"))
_OF_DIGESTS = _WHOLE.where(
    commitments.c.digest_id.in_(bindparam("digests", expanding=True, type_=ID))
).order_by(commitments.c.digest_id, parts.c.number, commitments.c.id)
_ALL = _WHOLE.where(not_(parts.c.retired), not_(digests.c.removed)).order_by(
    digests.c.added_at.desc(), digests.c.id.desc(), parts.c.number
)
_entered = (
    select(commitments.c.id)
    .where(commitments.c.reader_id == parts.c.reader_id, commitments.c.id == parts.c.id)
    .exists()
)
_UNENTERED = (
    select(parts.c.digest_id)
    .where(
        parts.c.reader_id == bindparam("reader"),
        parts.c.kind == PartKind.COMMITMENT.value,
        not_(_entered),
    )
    .distinct()
)
_ENTER = insert_or_update(commitments, ("text", "made_on", "measure"))
_REST = (
    update(items)
    .where(
        items.c.reader_id == bindparam("reader"),
        items.c.part_id == bindparam("part"),
        items.c.digest_id == bindparam("digest"),
        items.c.kind == KindName.RESTATE.value,
    )
    .values(rests_from=bindparam("new_rests_from"))
)
_DIGEST_OF = select(commitments.c.id, commitments.c.digest_id).where(
    commitments.c.reader_id == bindparam("reader"),
    commitments.c.id.in_(bindparam("ids", expanding=True, type_=ID)),
)


class SqlCommitments:
    """The commitments, in one transaction; satisfies `ports.Commitments`."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def get(self, reader: ReaderId, commitment_id: UUID) -> KeptCommitment | None:
        """Return one commitment, retired or not."""
        values = {"reader": reader, "commitment": commitment_id}
        row = self._connection.execute(_GET, values).first()
        return None if row is None else _kept(row)

    def of_digests(self, reader: ReaderId, digest_ids: Iterable[UUID]) -> list[KeptCommitment]:
        """Return those of some digests, retired ones too, by digest and number."""
        wanted = list(dict.fromkeys(digest_ids))
        if not wanted:
            return []
        rows = self._connection.execute(_OF_DIGESTS, {"reader": reader, "digests": wanted})
        return [_kept(row) for row in rows]

    def all(self, reader: ReaderId) -> list[KeptCommitment]:
        """Return every one not retired, those of the digest added last first, by number."""
        return [_kept(row) for row in self._connection.execute(_ALL, {"reader": reader})]

    def enter(self, reader: ReaderId, new: Sequence[NewCommitment]) -> None:
        """Enter commitments; of one entered before, replace words, day and measure."""
        if new:
            self._connection.execute(
                _ENTER,
                [
                    {
                        "reader_id": reader,
                        "id": each.commitment.id,
                        "digest_id": each.digest_id,
                        "text": each.commitment.text,
                        "made_on": each.commitment.made_on,
                        "entered_on": each.commitment.entered_on,
                        "measure": measure_to_json(each.commitment.measure),
                    }
                    for each in new
                ],
            )

    def unentered(self, reader: ReaderId) -> list[UUID]:
        """Return the ids of the digests that hold a commitment not entered yet."""
        return list(self._connection.execute(_UNENTERED, {"reader": reader}).scalars())

    def rest(self, reader: ReaderId, days: Mapping[UUID, date | None]) -> None:
        """Keep from which day the items made of some commitments rest, None for not at all."""
        if not days:
            return
        found = self._connection.execute(_DIGEST_OF, {"reader": reader, "ids": list(days)}).all()
        values = [
            {"reader": reader, "part": part, "digest": digest, "new_rests_from": days[part]}
            for part, digest in found
        ]
        if values:
            self._connection.execute(_REST, values)


def _kept(row: Iterable[Any]) -> KeptCommitment:
    part_id, text, made_on, entered_on, measure, digest_id, title, author, number, now, gone = row
    entered = Commitment(part_id, text, made_on, entered_on, measure_from_json(measure))
    return KeptCommitment(entered, digest_id, title, author, number, now, bool(gone))
