"""The talks of a reader about their books: facts, only ever added to."""

from uuid import UUID

from sqlalchemy import Connection, bindparam, select

from cards.talk import Talk
from service.store.inserts import insert_once
from service.store.tables import talks, withdrawals
from service.store.withdrawals import with_withdrawal
from service.use_cases.records import ReaderId

_ADD = insert_once(talks)
_WHOLE = (
    select(
        talks.c.id,
        talks.c.digest_id,
        talks.c.day,
        talks.c.reported_at,
        talks.c.reported_on,
        talks.c.listener,
        talks.c.minutes,
        talks.c.note,
        withdrawals.c.withdrawn_on,
    )
    .select_from(with_withdrawal(talks))
    .where(talks.c.reader_id == bindparam("reader"))
)
_GET = _WHOLE.where(talks.c.id == bindparam("talk"))
_OF_DIGEST = _WHOLE.where(
    talks.c.digest_id == bindparam("digest"), withdrawals.c.id.is_(None)
).order_by(talks.c.day.desc(), talks.c.reported_at.desc(), talks.c.id)


class SqlTalks:
    """The talks, in one transaction; satisfies `ports.Talks`."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def get(self, reader: ReaderId, talk_id: UUID) -> Talk | None:
        """Return one talk, taken back or not."""
        row = self._connection.execute(_GET, {"reader": reader, "talk": talk_id}).first()
        return None if row is None else Talk(*row)

    def of_digest(self, reader: ReaderId, digest_id: UUID) -> list[Talk]:
        """Return those about a book that were not taken back, the latest day first."""
        values = {"reader": reader, "digest": digest_id}
        return [Talk(*row) for row in self._connection.execute(_OF_DIGEST, values)]

    def add(self, reader: ReaderId, talk: Talk) -> None:
        """Append a talk; one whose id is kept already changes nothing."""
        self._connection.execute(
            _ADD,
            {
                "reader_id": reader,
                "id": talk.id,
                "digest_id": talk.digest_id,
                "day": talk.day,
                "reported_at": talk.reported_at,
                "reported_on": talk.reported_on,
                "listener": talk.listener,
                "minutes": talk.minutes,
                "note": talk.note,
            },
        )
