"""A reader reports what came of a commitment."""

from dataclasses import dataclass, replace
from datetime import date
from uuid import UUID

from cards.commitments import CheckIn, Outcome
from cards.errors import CommitmentMissing, Conflict, Invalid
from cards.parts import PartKind
from service.use_cases.ports import Desk


@dataclass(frozen=True, slots=True)
class Report:
    """A check-in as it arrives.

    Attributes:
        id: made by whoever recorded it.
        day: the reader's day it is about, or None for today.
    """

    id: UUID
    digest_id: UUID
    commitment_id: UUID
    outcome: Outcome
    day: date | None = None
    note: str = ""


def check_in(desk: Desk, report: Report) -> CheckIn:
    """Append a check-in to a commitment's facts; the very same again changes nothing.

    Raises:
        CommitmentMissing: this reader has made no such commitment.
        Invalid: it is about a day that has not come yet.
        Conflict: another check-in already bears its id.
    """
    now = desk.now()
    with desk.store.writing() as work:
        reader = work.readers.get(desk.reader)
        digest = work.digests.get(desk.reader, report.digest_id)
        parts = () if digest is None else digest.parts
        if not any(
            part.id == report.commitment_id and part.kind is PartKind.COMMITMENT for part in parts
        ):
            raise CommitmentMissing(report.commitment_id)
        today = reader.days.of(now)
        day = report.day or today
        if day > today:
            raise Invalid(f"{day.isoformat()} has not come yet.", where="day")
        fact = CheckIn(
            report.id, report.commitment_id, report.outcome, day, now, today, report.note
        )
        work.check_ins.add(desk.reader, fact)
        kept = next(
            (
                each
                for each in work.check_ins.of_digest(desk.reader, report.digest_id)
                if each.id == report.id
            ),
            None,
        )
        if kept is None or replace(kept, reported_at=now, reported_on=today) != fact:
            raise Conflict(
                f"Check-in {report.id} is already kept, and says something else. Send this one "
                "under an id of its own.",
                where="id",
            )
        work.commit()
    return kept
