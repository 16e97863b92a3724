"""The check-ins of a reader: facts, only ever added to."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from datetime import date
from itertools import groupby
from typing import Any
from uuid import UUID

from sqlalchemy import Connection, and_, bindparam, func, select

from cards.commitments import CheckIn, Outcome
from service.store.columns import ID
from service.store.inserts import insert_once
from service.store.tables import check_ins, parts, withdrawals
from service.store.withdrawals import with_withdrawal
from service.use_cases.records import ReaderId, Tally

_ADD = insert_once(check_ins)
_MINE = check_ins.c.reader_id == bindparam("reader")
_COLUMNS = (
    check_ins.c.id,
    check_ins.c.commitment_id,
    check_ins.c.outcome,
    check_ins.c.day,
    check_ins.c.reported_at,
    check_ins.c.reported_on,
    check_ins.c.note,
    check_ins.c.count,
    check_ins.c.witness,
    withdrawals.c.withdrawn_on,
)
_WHOLE = select(*_COLUMNS).select_from(with_withdrawal(check_ins)).where(_MINE)
_STANDS = withdrawals.c.id.is_(None)
_WITH_COMMITMENTS = with_withdrawal(check_ins).join(
    parts,
    and_(parts.c.reader_id == check_ins.c.reader_id, parts.c.id == check_ins.c.commitment_id),
)
_MY_PART = parts.c.reader_id == bindparam("reader")
_GET = _WHOLE.where(check_ins.c.id == bindparam("check_in"))
_OF_DIGEST = (
    select(*_COLUMNS)
    .select_from(_WITH_COMMITMENTS)
    .where(_MINE, _STANDS, _MY_PART, parts.c.digest_id == bindparam("digest"))
    .order_by(check_ins.c.day, check_ins.c.id)
)
_OF_COMMITMENT = (
    _WHOLE.where(check_ins.c.commitment_id == bindparam("commitment"))
    .order_by(check_ins.c.day.desc(), check_ins.c.reported_at.desc(), check_ins.c.id)
    .limit(bindparam("limit"))
)
_COUNT_ON = select(func.count()).where(
    _MINE,
    check_ins.c.commitment_id == bindparam("commitment"),
    check_ins.c.day == bindparam("on"),
)
_SINCE = _WHOLE.where(
    check_ins.c.commitment_id.in_(bindparam("ids", expanding=True, type_=ID)),
    check_ins.c.day >= bindparam("first"),
)
_OF_COMMITMENTS = check_ins.c.commitment_id.in_(bindparam("ids", expanding=True, type_=ID))
_COUNTS = (
    select(check_ins.c.commitment_id, check_ins.c.outcome, func.count())
    .select_from(with_withdrawal(check_ins))
    .where(_MINE, _STANDS, _OF_COMMITMENTS)
    .group_by(check_ins.c.commitment_id, check_ins.c.outcome)
)
_later = check_ins.alias("later")
_later_withdrawn = (
    select(withdrawals.c.id)
    .where(withdrawals.c.reader_id == bindparam("reader"), withdrawals.c.fact_id == _later.c.id)
    .exists()
)
_OF_LAST_DAY = _WHOLE.where(
    _STANDS,
    _OF_COMMITMENTS,
    ~select(_later.c.id)
    .where(
        _later.c.reader_id == bindparam("reader"),
        _later.c.commitment_id == check_ins.c.commitment_id,
        _later.c.day > check_ins.c.day,
        ~_later_withdrawn,
    )
    .exists(),
).order_by(check_ins.c.reported_at, check_ins.c.id)
_OUTCOMES = {outcome.value: outcome for outcome in Outcome}
_APART = 8
"""Times as far back as the nearest of a statement its farthest first day may lie: what is asked
every day and what is asked every year are not read alike."""


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
                "reported_on": check_in.reported_on,
                "note": check_in.note,
                "count": check_in.count,
                "witness": check_in.witness,
            },
        )

    def get(self, reader: ReaderId, check_in_id: UUID) -> CheckIn | None:
        """Return one check-in, taken back or not."""
        values = {"reader": reader, "check_in": check_in_id}
        row = self._connection.execute(_GET, values).first()
        return None if row is None else _kept(row)

    def of_digest(self, reader: ReaderId, digest_id: UUID) -> list[CheckIn]:
        """Return the check-ins on a digest's commitments, taken back ones left out.

        By day and id.
        """
        rows = self._connection.execute(_OF_DIGEST, {"reader": reader, "digest": digest_id})
        return [_kept(row) for row in rows]

    def of_commitment(self, reader: ReaderId, commitment_id: UUID, limit: int) -> list[CheckIn]:
        """Return the latest check-ins on a commitment, taken back ones too, the latest first."""
        values = {"reader": reader, "commitment": commitment_id, "limit": limit}
        return [_kept(row) for row in self._connection.execute(_OF_COMMITMENT, values)]

    def count_on(self, reader: ReaderId, commitment_id: UUID, day: date) -> int:
        """Return how many check-ins on a commitment are about a day, taken back ones too."""
        values = {"reader": reader, "commitment": commitment_id, "on": day}
        found: int = self._connection.execute(_COUNT_ON, values).scalar_one()
        return found

    def since(self, reader: ReaderId, first_days: Mapping[UUID, date]) -> dict[UUID, list[CheckIn]]:
        """Return the check-ins on commitments about a day or later, each from its own on.

        Taken back ones too, in any order; some about earlier days may be among them. A few
        statements, however many commitments there are.
        """
        found: defaultdict[UUID, list[CheckIn]] = defaultdict(list)
        for first, ids in _together(first_days):
            values = {"reader": reader, "ids": ids, "first": first}
            for row in self._connection.execute(_SINCE, values):
                found[row[1]].append(_kept(row))
        return dict(found)

    def tallies(self, reader: ReaderId, ids: Iterable[UUID]) -> dict[UUID, Tally]:
        """Return what came of each of several commitments, in two statements.

        One nobody checked in on is left out, and so is what was taken back.
        """
        wanted = {"reader": reader, "ids": list(dict.fromkeys(ids))}
        if not wanted["ids"]:
            return {}
        counts: defaultdict[UUID, dict[Outcome, int]] = defaultdict(dict)
        for commitment_id, outcome, count in self._connection.execute(_COUNTS, wanted):
            counts[commitment_id][Outcome(outcome)] = count
        of_last_day = map(_kept, self._connection.execute(_OF_LAST_DAY, wanted))
        last = {each.commitment_id: each for each in of_last_day}
        return {each: Tally(count, last[each]) for each, count in counts.items()}


def _together(first_days: Mapping[UUID, date]) -> Iterable[tuple[date, list[UUID]]]:
    """Yield commitments that are read in one statement, with the earliest of their first days."""
    if not first_days:
        return
    latest = max(first_days.values())

    def distance(commitment_id: UUID) -> int:
        days, steps = (latest - first_days[commitment_id]).days, 0
        while days >= _APART**2:
            days, steps = days // _APART, steps + 1
        return steps

    for _, group in groupby(sorted(first_days, key=distance), key=distance):
        ids = list(group)
        yield min(first_days[each] for each in ids), ids


def _kept(row: Iterable[Any]) -> CheckIn:
    check_in_id, commitment_id, outcome, *rest = row
    return CheckIn(check_in_id, commitment_id, _OUTCOMES[outcome], *rest)
