"""A reader reports what came of a commitment, corrects a report, or takes it back."""

from dataclasses import dataclass, replace
from datetime import date, datetime
from uuid import UUID

from cards.commitments import CheckIn, Outcome
from cards.digest import hold_text
from cards.errors import CheckInMissing, CommitmentMissing, Invalid
from service.use_cases.commitment_records import KeptCommitment
from service.use_cases.facts import hold_come, said_otherwise, take_back
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.standing import keep_resting

MOST_A_DAY = 100
"""Check-ins about one day on one commitment: more is no report but a mistake."""


@dataclass(frozen=True, slots=True)
class Report:
    """A check-in as it arrives.

    Attributes:
        id: made by whoever recorded it.
        day: the reader's day it is about, or None for today.
        count: the deeds it reports, or None: one where it was kept.
        witness: who saw it, in the reader's words.
        instead_of: the check-in it corrects, which is taken back with it; or None.
        digest_id: the digest it is said to be of, or None where nobody says.
    """

    id: UUID
    commitment_id: UUID
    outcome: Outcome
    day: date | None = None
    note: str = ""
    count: int | None = None
    witness: str = ""
    instead_of: UUID | None = None
    digest_id: UUID | None = None


def check_in(desk: Desk, report: Report) -> CheckIn:
    """Append a check-in to a commitment's facts; the very same again changes nothing.

    Raises:
        CommitmentMissing: no digest of this reader's library, or not the one it is said to be
            of, holds such a commitment.
        CheckInMissing: there is none to correct.
        Invalid: it is about a day that has not come yet, or one before the commitment was made;
            its count contradicts its outcome; its words are no text; there are too many about
            that day.
        Conflict: another check-in already bears its id.
    """
    now = desk.now()
    with desk.store.writing() as work:
        today = work.readers.lock(desk.reader).days.of(now)
        commitment = work.commitments.get(desk.reader, report.commitment_id)
        if (
            commitment is None
            or commitment.retired
            or report.digest_id not in {None, commitment.digest_id}
        ):
            raise CommitmentMissing(report.commitment_id)
        fact = _fact(report, today, now)
        kept = work.check_ins.get(desk.reader, report.id)
        if kept is not None:
            return _the_same(kept, fact)
        hold_text(fact.note, "note")
        hold_text(fact.witness, "witness")
        _hold_day(commitment, fact, today)
        if work.check_ins.count_on(desk.reader, report.commitment_id, fact.day) >= MOST_A_DAY:
            raise Invalid(
                f"{MOST_A_DAY} check-ins are kept about one day already; more are not taken. One "
                "check-in can count several deeds.",
                where="day",
            )
        work.check_ins.add(desk.reader, fact)
        if report.instead_of is not None:
            _correct(desk, work, report.instead_of, fact, now)
        keep_resting(desk, work, [report.commitment_id])
        work.commit()
    return fact


def show_check_in(desk: Desk, check_in_id: UUID) -> CheckIn:
    """Return one check-in, taken back or not.

    Raises:
        CheckInMissing: this reader has made no such check-in.
    """
    with desk.store.reading() as work:
        kept = work.check_ins.get(desk.reader, check_in_id)
    if kept is None:
        raise CheckInMissing(check_in_id)
    return kept


def withdraw_check_in(desk: Desk, check_in_id: UUID) -> CheckIn:
    """Take a check-in back: it stays on record, and counts no longer. Twice changes nothing.

    Raises:
        CheckInMissing: this reader has made no such check-in.
    """
    now = desk.now()
    with desk.store.writing() as work:
        today = work.readers.lock(desk.reader).days.of(now)
        kept = work.check_ins.get(desk.reader, check_in_id)
        if kept is None:
            raise CheckInMissing(check_in_id)
        if kept.withdrawn_on is None:
            kept = take_back(desk, work, kept, now, today)
            keep_resting(desk, work, [kept.commitment_id])
            work.commit()
    return kept


def _fact(report: Report, today: date, now: datetime) -> CheckIn:
    return CheckIn(
        id=report.id,
        commitment_id=report.commitment_id,
        outcome=report.outcome,
        day=report.day or today,
        reported_at=now,
        reported_on=today,
        note=report.note,
        count=report.count,
        witness=report.witness,
    )


def _the_same(kept: CheckIn, fact: CheckIn) -> CheckIn:
    sent = replace(
        fact,
        reported_at=kept.reported_at,
        reported_on=kept.reported_on,
        withdrawn_on=kept.withdrawn_on,
    )
    if kept != sent:
        raise said_otherwise("Check-in", kept)
    return kept


def _hold_day(commitment: KeptCommitment, fact: CheckIn, today: date) -> None:
    hold_come(fact.day, today)
    made_on = commitment.commitment.made_on
    # Who moved west since may have a today before it; what is done today can be said.
    if fact.day < made_on and fact.day != today:
        raise Invalid(
            f"The commitment was made on {made_on.isoformat()}; a check-in is about that day or a "
            "later one.",
            where="day",
        )


def _correct(desk: Desk, work: UnitOfWork, former: UUID, fact: CheckIn, now: datetime) -> None:
    kept = work.check_ins.get(desk.reader, former)
    if kept is None or kept.commitment_id != fact.commitment_id or kept.withdrawn_on is not None:
        raise CheckInMissing(former)
    take_back(desk, work, kept, now, fact.reported_on)
