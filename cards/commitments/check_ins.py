"""Check-ins: the facts of whether a commitment was kept."""

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum
from uuid import UUID

from cards.errors import Invalid

MAX_NOTE = 2_000
"""Characters in the note of a check-in."""


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
        note: the reader's words about it; may be empty.
    """

    id: UUID
    commitment_id: UUID
    outcome: Outcome
    day: date
    reported_at: datetime
    note: str = ""

    def __post_init__(self) -> None:
        if len(self.note) > MAX_NOTE:
            raise Invalid(
                f"The note is {len(self.note)} characters long; at most {MAX_NOTE} are kept.",
                where="note",
            )
