"""The decisions of a reader about their commitments: facts, only ever added to."""

from collections import defaultdict
from collections.abc import Iterable
from typing import Any
from uuid import UUID

from sqlalchemy import Connection, bindparam, select

from cards.commitments import Act, Decision, Outcome
from service.store.columns import ID
from service.store.inserts import insert_once
from service.store.measure_json import measure_from_json, measure_to_json
from service.store.tables import decisions, withdrawals
from service.store.withdrawals import with_withdrawal
from service.use_cases.records import ReaderId

_ADD = insert_once(decisions)
_WHOLE = (
    select(
        decisions.c.id,
        decisions.c.commitment_id,
        decisions.c.act,
        decisions.c.day,
        decisions.c.decided_at,
        decisions.c.decided_on,
        decisions.c.measure,
        decisions.c.until,
        decisions.c.outcome,
        decisions.c.words,
        withdrawals.c.withdrawn_on,
    )
    .select_from(with_withdrawal(decisions))
    .where(decisions.c.reader_id == bindparam("reader"))
)
_GET = _WHOLE.where(decisions.c.id == bindparam("decision"))
_IN_ORDER = _WHOLE.order_by(decisions.c.day, decisions.c.id)
_OF = _IN_ORDER.where(decisions.c.commitment_id.in_(bindparam("ids", expanding=True, type_=ID)))


class SqlDecisions:
    """The decisions, in one transaction; satisfies `ports.Decisions`."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def get(self, reader: ReaderId, decision_id: UUID) -> Decision | None:
        """Return one decision, taken back or not."""
        values = {"reader": reader, "decision": decision_id}
        row = self._connection.execute(_GET, values).first()
        return None if row is None else _decision(row)

    def of(self, reader: ReaderId, ids: Iterable[UUID]) -> dict[UUID, list[Decision]]:
        """Return the decisions about some commitments, taken back ones too, by day and id."""
        wanted = list(dict.fromkeys(ids))
        if not wanted:
            return {}
        return _by_commitment(self._connection.execute(_OF, {"reader": reader, "ids": wanted}))

    def all(self, reader: ReaderId) -> dict[UUID, list[Decision]]:
        """Return all decisions by commitment, in one statement."""
        return _by_commitment(self._connection.execute(_IN_ORDER, {"reader": reader}))

    def add(self, reader: ReaderId, decision: Decision) -> None:
        """Append a decision; one whose id is kept already changes nothing."""
        self._connection.execute(
            _ADD,
            {
                "reader_id": reader,
                "id": decision.id,
                "commitment_id": decision.commitment_id,
                "act": decision.act.value,
                "day": decision.day,
                "decided_at": decision.decided_at,
                "decided_on": decision.decided_on,
                "measure": measure_to_json(decision.measure),
                "until": decision.until,
                "outcome": None if decision.outcome is None else decision.outcome.value,
                "words": decision.words,
            },
        )


def _by_commitment(rows: Iterable[Any]) -> dict[UUID, list[Decision]]:
    found: defaultdict[UUID, list[Decision]] = defaultdict(list)
    for row in rows:
        decision = _decision(row)
        found[decision.commitment_id].append(decision)
    return dict(found)


def _decision(row: Iterable[Any]) -> Decision:
    found_id, commitment_id, act, day, at, on, measure, until, outcome, words, withdrawn = row
    return Decision(
        id=found_id,
        commitment_id=commitment_id,
        act=Act(act),
        day=day,
        decided_at=at,
        decided_on=on,
        measure=measure_from_json(measure),
        until=until,
        outcome=None if outcome is None else Outcome(outcome),
        words=words,
        withdrawn_on=withdrawn,
    )
