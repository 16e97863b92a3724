"""What holds of every fact a reader records: kept once, never changed, taken back by another."""

from dataclasses import replace
from datetime import date, datetime
from typing import TypeVar

from cards.commitments import CheckIn, Decision
from cards.errors import Conflict, Invalid
from cards.rereading import Rereading
from cards.talk import Talk
from service.use_cases.ports import Desk, UnitOfWork

Fact = TypeVar("Fact", CheckIn, Decision, Rereading, Talk)


def hold_come(day: date, today: date) -> None:
    """Refuse a fact about a day to come.

    Raises:
        Invalid: the day has not come yet.
    """
    if day > today:
        raise Invalid(f"{day.isoformat()} has not come yet.", where="day")


def said_otherwise(what: str, kept: Fact) -> Conflict:
    """Return the refusal of a fact whose id is that of another, by what it is called."""
    return Conflict(
        f"{what} {kept.id} is already kept, and says something else. Send this one under an id of "
        "its own.",
        where="id",
    )


def take_back(desk: Desk, work: UnitOfWork, kept: Fact, now: datetime, today: date) -> Fact:
    """Append that a fact was taken back, without committing, and return it as it is then."""
    work.withdrawals.add(desk.reader, desk.new_id(), kept.id, now, today)
    return replace(kept, withdrawn_on=today)
