"""The commitments of a digest enter the library beside it: when they were made, their measure."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date

from cards.commitments import Act, Commitment, Decision, pace_of, rests_from
from cards.parts import KeptDigest, Part, PartKind
from cards.wording import measure_in
from service.use_cases.commitment_records import KeptCommitment, NewCommitment
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.standing import keep_resting


def enter_commitments(
    desk: Desk, work: UnitOfWork, kept: KeptDigest, former: KeptDigest | None = None
) -> None:
    """Enter what a digest asks now, without committing; what was entered before is read anew.

    What comes with a digest was made the day the book was finished, which "tomorrow" and "for a
    month" count from; what is added to it later, the day it is added. Once a commitment was
    reworded by decision, or given another measure, an edit of its words changes neither.
    """
    parts = kept.held(PartKind.COMMITMENT)
    if not parts:
        return
    today = work.readers.get(desk.reader).days.of(desk.now())
    known = {
        each.commitment.id: each for each in work.commitments.of_digests(desk.reader, [kept.id])
    }
    decisions = work.decisions.of(desk.reader, known)
    arriving = all(each.commitment.entered_on == today for each in known.values())
    new = []
    for part in parts:
        before = known.get(part.id)
        if before is None:
            made_on = _finished(kept, today) if arriving else today
            entered = Commitment(part.id, part.text, made_on, today, measure_in(part.text, made_on))
        else:
            entered = _read_anew(part, kept, former, before, decisions.get(part.id, ()))
        if before is None or entered != before.commitment:
            new.append(NewCommitment(entered, kept.id))
    work.commitments.enter(desk.reader, new)
    keep_resting(desk, work, [each.commitment.id for each in new if each.commitment.id in known])
    # Of what just came in nothing is known but itself, and as a rule it does not rest.
    fresh = [each.commitment for each in new if each.commitment.id not in known]
    resting = {each.id: rests_from(pace_of(each, (), (), today)) for each in fresh}
    work.commitments.rest(
        desk.reader, {each: day for each, day in resting.items() if day is not None}
    )


def enter_missing(desk: Desk) -> int:
    """Enter the commitments of digests kept before these were, and return of how many digests."""
    with desk.store.reading() as work:
        missing = work.commitments.unentered(desk.reader)
    if not missing:
        return 0
    with desk.store.writing() as work:
        work.readers.lock(desk.reader)
        for kept in work.digests.many(
            desk.reader, work.commitments.unentered(desk.reader)
        ).values():
            enter_commitments(desk, work, _with_retired(kept))
        work.commit()
    return len(missing)


def _with_retired(kept: KeptDigest) -> KeptDigest:
    """Return a digest as if it held every commitment it ever held: those may come back."""
    return replace(
        kept,
        parts=tuple(
            replace(part, retired=False) if part.kind is PartKind.COMMITMENT else part
            for part in kept.parts
        ),
    )


def _finished(kept: KeptDigest, today: date) -> date:
    finished = kept.finished_on
    return today if finished is None else min(finished, today)


def _read_anew(
    part: Part,
    kept: KeptDigest,
    former: KeptDigest | None,
    before: KeptCommitment,
    decisions: Sequence[Decision],
) -> Commitment:
    entered = before.commitment
    acts = {each.act for each in decisions}
    if Act.REWORD in acts:
        return entered
    if Act.START in acts:
        return replace(entered, text=part.text)
    made_on = entered.made_on
    if former is not None and made_on == _finished(former, entered.entered_on):
        made_on = _finished(kept, entered.entered_on)
    if (part.text, made_on) == (entered.text, entered.made_on):
        return entered
    return Commitment(
        part.id, part.text, made_on, entered.entered_on, measure_in(part.text, made_on)
    )
