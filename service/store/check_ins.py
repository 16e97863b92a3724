"""The check-ins of a reader: facts, only ever added to."""

from collections import defaultdict
from collections.abc import Iterable
from typing import Any
from uuid import UUID

from sqlalchemy import Connection, and_, bindparam, func, select

from cards.commitments import CheckIn, Outcome
from cards.parts import PartKind
from service.store.columns import ID
from service.store.inserts import insert_once
from service.store.tables import check_ins, parts
from service.use_cases.records import ReaderId, Tally

_ADD = insert_once(check_ins)
_MINE = check_ins.c.reader_id == bindparam("reader")
_WHOLE = select(
    check_ins.c.id,
    check_ins.c.commitment_id,
    check_ins.c.outcome,
    check_ins.c.day,
    check_ins.c.reported_at,
    check_ins.c.note,
).where(_MINE)
_WITH_COMMITMENTS = check_ins.join(
    parts,
    and_(parts.c.reader_id == check_ins.c.reader_id, parts.c.id == check_ins.c.commitment_id),
)
_MY_PART = parts.c.reader_id == bindparam("reader")
_OF_DIGEST = (
    _WHOLE.select_from(_WITH_COMMITMENTS)
    .where(_MY_PART, parts.c.digest_id == bindparam("digest"))
    .order_by(check_ins.c.day, check_ins.c.id)
)
_OF_DIGESTS = and_(
    _MY_PART,
    parts.c.digest_id.in_(bindparam("digests", expanding=True, type_=ID)),
    parts.c.kind == PartKind.COMMITMENT.value,
)
_COUNTS = (
    select(check_ins.c.commitment_id, check_ins.c.outcome, func.count())
    .select_from(_WITH_COMMITMENTS)
    .where(_MINE, _OF_DIGESTS)
    .group_by(check_ins.c.commitment_id, check_ins.c.outcome)
)
_later = check_ins.alias("later")
_OF_LAST_DAY = (
    _WHOLE.select_from(_WITH_COMMITMENTS)
    .where(
        _OF_DIGESTS,
        ~select(_later.c.id)
        .where(
            _later.c.reader_id == bindparam("reader"),
            _later.c.commitment_id == check_ins.c.commitment_id,
            _later.c.day > check_ins.c.day,
        )
        .exists(),
    )
    .order_by(check_ins.c.reported_at, check_ins.c.id)
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
        return [_kept(row) for row in rows]

    def tallies(self, reader: ReaderId, digest_ids: Iterable[UUID]) -> dict[UUID, Tally]:
        """Return what came of each commitment of several digests, in two statements.

        One nobody checked in on is left out.
        """
        wanted = {"reader": reader, "digests": list(dict.fromkeys(digest_ids))}
        if not wanted["digests"]:
            return {}
        counts: defaultdict[UUID, dict[Outcome, int]] = defaultdict(dict)
        for commitment_id, outcome, count in self._connection.execute(_COUNTS, wanted):
            counts[commitment_id][Outcome(outcome)] = count
        of_last_day = map(_kept, self._connection.execute(_OF_LAST_DAY, wanted))
        last = {each.commitment_id: each for each in of_last_day}
        return {each: Tally(count, last[each]) for each, count in counts.items()}


def _kept(row: Iterable[Any]) -> CheckIn:
    check_in_id, commitment_id, outcome, *rest = row
    return CheckIn(check_in_id, commitment_id, Outcome(outcome), *rest)
