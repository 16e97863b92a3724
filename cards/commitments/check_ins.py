"""Check-ins: the facts of whether a commitment was kept."""

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum
from uuid import UUID

from cards.errors import Invalid

MAX_NOTE = 2_000
"""Characters in the note of a check-in."""
MAX_WITNESS = 200
"""Characters in the name of who witnessed it."""
MOST_DEEDS = 1_000
"""Deeds one check-in can report."""


class Outcome(StrEnum):
    """What came of a commitment on a day."""

    KEPT = "kept"
    PARTLY = "partly"
    MISSED = "missed"


@dataclass(frozen=True, slots=True)
class CheckIn:
    """One report on a commitment: a fact, never changed once kept.

    Attributes:
        id: made by whoever recorded it.
        commitment_id: the part of the digest it reports on.
        outcome: what came of it.
        day: the reader's day it is about, whenever it was reported.
        reported_at: the instant it was reported, aware, in UTC.
        reported_on: the reader's day it was reported on.
        note: the reader's words about it; may be empty.
        count: how many deeds it reports: one where it was kept and nothing else is said, none
            where it was not.
        witness: who saw it, in the reader's words; may be empty.
        withdrawn_on: the reader's day it was taken back, corrected perhaps, or None.

    Raises:
        Invalid: a text is too long, or the deeds contradict the outcome.
    """

    id: UUID
    commitment_id: UUID
    outcome: Outcome
    day: date
    reported_at: datetime
    reported_on: date
    note: str = ""
    count: int | None = None
    witness: str = ""
    withdrawn_on: date | None = None

    def __post_init__(self) -> None:
        for where, words, most in (
            ("note", self.note, MAX_NOTE),
            ("witness", self.witness, MAX_WITNESS),
        ):
            if len(words) > most:
                raise Invalid(
                    f"The {where} is {len(words)} characters long; at most {most} are kept.",
                    where=where,
                )
        if self.count is not None:
            self._hold_count(self.count)

    def _hold_count(self, count: int) -> None:
        if not 0 <= count <= MOST_DEEDS:
            raise Invalid(
                f"One check-in reports from 0 to {MOST_DEEDS} deeds, not {count}.", where="count"
            )
        if self.outcome is Outcome.MISSED and count:
            raise Invalid("What was missed counts no deeds; say partly, or kept.", where="count")
        if self.outcome is Outcome.KEPT and not count:
            raise Invalid(
                "What was kept counts one deed or more; say missed, or partly.", where="count"
            )

    def known_on(self, day: date) -> bool:
        """Tell whether it was reported by a day, and not taken back by then."""
        return self.reported_on <= day and (self.withdrawn_on is None or self.withdrawn_on > day)

    @property
    def deeds(self) -> int:
        """How many whole deeds it reports."""
        if self.count is not None:
            return self.count
        return 1 if self.outcome is Outcome.KEPT else 0

    @property
    def done(self) -> bool:
        """Whether anything was done."""
        return self.outcome is not Outcome.MISSED
