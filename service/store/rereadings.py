"""The re-readings of a reader: facts, only ever added to. Their items are a list in JSON."""

import json
from collections.abc import Iterable
from typing import Any
from uuid import UUID

from sqlalchemy import Connection, bindparam, select

from cards.rereading import Rereading
from service.store.inserts import insert_once
from service.store.tables import rereadings, withdrawals
from service.store.withdrawals import with_withdrawal
from service.use_cases.records import ReaderId

_ADD = insert_once(rereadings)
_WHOLE = (
    select(
        rereadings.c.id,
        rereadings.c.digest_id,
        rereadings.c.day,
        rereadings.c.reported_at,
        rereadings.c.reported_on,
        rereadings.c.pages,
        rereadings.c.minutes,
        rereadings.c.note,
        rereadings.c.concerned,
        withdrawals.c.withdrawn_on,
    )
    .select_from(with_withdrawal(rereadings))
    .where(rereadings.c.reader_id == bindparam("reader"))
)
_GET = _WHOLE.where(rereadings.c.id == bindparam("rereading"))
_STANDING = _WHOLE.where(withdrawals.c.id.is_(None)).order_by(
    rereadings.c.day.desc(), rereadings.c.reported_at.desc(), rereadings.c.id
)
_OF_DIGEST = _STANDING.where(rereadings.c.digest_id == bindparam("digest"))


class SqlRereadings:
    """The re-readings, in one transaction; satisfies `ports.Rereadings`."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def get(self, reader: ReaderId, rereading_id: UUID) -> Rereading | None:
        """Return one re-reading, taken back or not."""
        values = {"reader": reader, "rereading": rereading_id}
        row = self._connection.execute(_GET, values).first()
        return None if row is None else _rereading(row)

    def of_digest(self, reader: ReaderId, digest_id: UUID) -> list[Rereading]:
        """Return those of a book that were not taken back, the latest day first."""
        values = {"reader": reader, "digest": digest_id}
        return [_rereading(row) for row in self._connection.execute(_OF_DIGEST, values)]

    def all(self, reader: ReaderId) -> list[Rereading]:
        """Return all that were not taken back, the latest day first."""
        return [_rereading(row) for row in self._connection.execute(_STANDING, {"reader": reader})]

    def add(self, reader: ReaderId, rereading: Rereading) -> None:
        """Append a re-reading; one whose id is kept already changes nothing."""
        self._connection.execute(
            _ADD,
            {
                "reader_id": reader,
                "id": rereading.id,
                "digest_id": rereading.digest_id,
                "day": rereading.day,
                "reported_at": rereading.reported_at,
                "reported_on": rereading.reported_on,
                "pages": rereading.pages,
                "minutes": rereading.minutes,
                "note": rereading.note,
                "concerned": json.dumps([str(each) for each in rereading.items]),
            },
        )


def _rereading(row: Iterable[Any]) -> Rereading:
    found, digest_id, day, at, on, pages, minutes, note, items, withdrawn = row
    concerned = tuple(UUID(each) for each in json.loads(items))
    return Rereading(found, digest_id, day, at, on, pages, minutes, note, concerned, withdrawn)
