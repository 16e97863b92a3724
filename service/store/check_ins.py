"""The check-ins of a reader: facts, only ever added to."""

from uuid import UUID

from sqlalchemy import Connection, and_, bindparam, select

from cards.commitments import CheckIn, Outcome
from service.store.inserts import insert_once
from service.store.tables import check_ins, parts
from service.use_cases.ports import ReaderId

_ADD = insert_once(check_ins)
_OF_DIGEST = (
    select(
        check_ins.c.id,
        check_ins.c.commitment_id,
        check_ins.c.outcome,
        check_ins.c.day,
        check_ins.c.reported_at,
        check_ins.c.note,
    )
    .select_from(
        check_ins.join(
            parts,
            and_(
                parts.c.reader_id == check_ins.c.reader_id,
                parts.c.id == check_ins.c.commitment_id,
            ),
        )
    )
    .where(
        check_ins.c.reader_id == bindparam("reader"),
        parts.c.reader_id == bindparam("reader"),
        parts.c.digest_id == bindparam("digest"),
    )
    .order_by(check_ins.c.day, check_ins.c.id)
)


class SqlCheckIns:
    """The check-ins, in one transaction; satisfies `ports.CheckIns`."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def add(self, reader: ReaderId, check_in: CheckIn) -> None:
        """Append a check-in; one whose id is already kept changes nothing."""
        self._connection.execute(
            _ADD,
            {
                "reader_id": reader,
                "id": check_in.id,
                "commitment_id": check_in.commitment_id,
                "outcome": check_in.outcome.value,
                "day": check_in.day,
                "reported_at": check_in.reported_at,
                "note": check_in.note,
            },
        )

    def of_digest(self, reader: ReaderId, digest_id: UUID) -> list[CheckIn]:
        """Return the check-ins on a digest's commitments, by day and id."""
        rows = self._connection.execute(_OF_DIGEST, {"reader": reader, "digest": digest_id})
        return [
            CheckIn(check_in_id, commitment_id, Outcome(outcome), *rest)
            for check_in_id, commitment_id, outcome, *rest in rows
        ]
