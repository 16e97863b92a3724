"""How the commitments of a library stand on a day, told from the facts known on it."""

from collections.abc import Iterable, Sequence
from datetime import date
from uuid import UUID

from cards.commitments import Stand, needed_from, pace_of, rests_from
from service.use_cases.commitment_records import KeptCommitment
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.records import ReaderId

_MANY = 200
"""Commitments from which on all decisions of the reader are read at once."""


def stands_on(
    work: UnitOfWork, reader: ReaderId, commitments: Sequence[KeptCommitment], day: date
) -> dict[UUID, Stand]:
    """Return how commitments stand on a day, in a few statements however many there are.

    Those that came into the library after the day are left out: nobody knew of them.
    """
    known = [each for each in commitments if each.commitment.entered_on <= day]
    if not known:
        return {}
    ids = [each.commitment.id for each in known]
    decisions = work.decisions.all(reader) if len(known) > _MANY else work.decisions.of(reader, ids)
    first_days = {
        each.commitment.id: needed_from(each.commitment, decisions.get(each.commitment.id, ()), day)
        for each in known
    }
    check_ins = work.check_ins.since(reader, first_days)
    return {
        each.commitment.id: pace_of(
            each.commitment,
            decisions.get(each.commitment.id, ()),
            check_ins.get(each.commitment.id, ()),
            day,
        )
        for each in known
    }


def keep_resting(desk: Desk, work: UnitOfWork, ids: Iterable[UUID]) -> None:
    """Keep from which day on commitments are recalled no longer, as their facts are now."""
    wanted = list(ids)
    if not wanted:
        return
    found = [work.commitments.get(desk.reader, each) for each in wanted]
    commitments = [each for each in found if each is not None]
    today = work.readers.get(desk.reader).days.of(desk.now())
    stands = stands_on(work, desk.reader, commitments, today)
    work.commitments.rest(desk.reader, {each: rests_from(stand) for each, stand in stands.items()})
