"""That facts were taken back: check-ins, decisions, re-readings, talks."""

from datetime import date, datetime
from uuid import UUID

from sqlalchemy import ColumnElement, Connection, FromClause, and_

from service.store.inserts import insert_once
from service.store.tables import withdrawals
from service.use_cases.records import ReaderId

_ADD = insert_once(withdrawals)


def with_withdrawal(facts: FromClause) -> FromClause:
    """Return facts beside what says that they were taken back, where something does."""
    return facts.outerjoin(withdrawals, _of(facts))


def _of(facts: FromClause) -> ColumnElement[bool]:
    return and_(withdrawals.c.reader_id == facts.c.reader_id, withdrawals.c.fact_id == facts.c.id)


class SqlWithdrawals:
    """What was taken back, in one transaction; satisfies `ports.Withdrawals`."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def add(
        self, reader: ReaderId, withdrawal_id: UUID, fact_id: UUID, now: datetime, day: date
    ) -> None:
        """Append that a fact was taken back; a second time changes nothing."""
        self._connection.execute(
            _ADD,
            {
                "reader_id": reader,
                "id": withdrawal_id,
                "fact_id": fact_id,
                "withdrawn_at": now,
                "withdrawn_on": day,
            },
        )
