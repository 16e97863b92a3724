"""What a sitting brings up when it is done: one commitment that wants a word."""

from uuid import UUID

from cards.commitments import Pace
from service.use_cases.commitments import AllCommitments, HeldCommitment, all_commitments
from service.use_cases.ports import Desk

_FIRST = (Pace.STALLED, Pace.UNJUDGED, Pace.ENDED, Pace.DONE)
"""What is brought up before what: where nothing is done now, then what was never judged, then
what is over and was not settled. Our own order."""


def brought_up(desk: Desk) -> HeldCommitment | None:
    """Return the one commitment today's sitting brings up, or None where nothing wants a word.

    One a sitting, and none any more on a day on which the reader decided about one. Of several
    each comes up in its turn, day by day: what is passed over today does not stand in the way.
    """
    found = all_commitments(desk)
    if _decided_today(desk, found):
        return None
    for pace in _FIRST:
        waiting = [each for each in found.by_pace.get(pace, ()) if _waits(each)]
        if waiting:
            in_turn = sorted(waiting, key=lambda each: each.id)
            return in_turn[found.day.toordinal() % len(in_turn)]
    return None


def _waits(held: HeldCommitment) -> bool:
    return held.stand is not None and not held.stand.settled and held.offer is not None


def _decided_today(desk: Desk, found: AllCommitments) -> bool:
    ids: list[UUID] = [each.id for those in found.by_pace.values() for each in those]
    with desk.store.reading() as work:
        decisions = work.decisions.of(desk.reader, ids) if ids else {}
    return any(
        each.decided_on == found.day and each.withdrawn_on is None
        for those in decisions.values()
        for each in those
    )
