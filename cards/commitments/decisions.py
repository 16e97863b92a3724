"""Decisions: what a reader settled about a commitment, each a fact with its own date."""

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum
from uuid import UUID

from cards.commitments.check_ins import Outcome
from cards.commitments.measure import Measure
from cards.errors import Invalid

MAX_REASON = 2_000
"""Characters in the words of a decision: a reason, or a new wording."""


class Act(StrEnum):
    """What was decided.

    `start`, `measure` and `move` correct the term that runs; `renew`, `halve` and `reword`
    begin another one; `release` and `close` end it.
    """

    START = "start"
    MEASURE = "measure"
    MOVE = "move"
    PAUSE = "pause"
    RESUME = "resume"
    RENEW = "renew"
    HALVE = "halve"
    REWORD = "reword"
    RELEASE = "release"
    CLOSE = "close"


_WANTED: dict[Act, tuple[str, str]] = {
    Act.MEASURE: ("measure", "Say the measure it is to have."),
    Act.HALVE: ("measure", "Say the measure it is to have."),
    Act.MOVE: ("until", "Say the day it is moved to."),
    Act.RELEASE: ("words", "Say in a few words why you release it."),
    Act.REWORD: ("words", "Say how it is worded from now on."),
    Act.CLOSE: ("outcome", "Say what came of it: kept, partly or missed."),
}


@dataclass(frozen=True, slots=True)
class Decision:
    """One decision about a commitment: a fact, never changed once kept.

    Attributes:
        id: made by whoever recorded it.
        commitment_id: the part of the digest it is about.
        act: what was decided.
        day: the reader's day it holds from.
        decided_at: the instant it was recorded, aware, in UTC.
        decided_on: the reader's day it was recorded on.
        measure: of `measure`, `renew`, `halve` and `reword`; None leaves it as it was.
        until: of `pause` the last day of it, None for an open one; of `move` the new last day.
        outcome: of `close`: what came of it in the reader's judgement.
        words: of `release` the reason, of `reword` the new wording, else a note; may be empty.
        withdrawn_on: the reader's day it was taken back, or None.

    Raises:
        Invalid: something the act needs is missing, or the words are too long.
    """

    id: UUID
    commitment_id: UUID
    act: Act
    day: date
    decided_at: datetime
    decided_on: date
    measure: Measure | None = None
    until: date | None = None
    outcome: Outcome | None = None
    words: str = ""
    withdrawn_on: date | None = None

    def __post_init__(self) -> None:
        field, said = _WANTED.get(self.act, ("", ""))
        if field and not getattr(self, field):
            raise Invalid(said, where=field)
        if len(self.words) > MAX_REASON:
            raise Invalid(
                f"The words are {len(self.words)} characters long; at most {MAX_REASON} are kept.",
                where="words",
            )
        if self.act is Act.PAUSE and self.until is not None and self.until < self.day:
            raise Invalid("A pause cannot end before it begins.", where="until")

    def known_on(self, day: date) -> bool:
        """Tell whether it was recorded by a day, holds by then, and was not taken back.

        A start is known at once, so that nothing is asked before a day still to come.
        """
        standing = self.withdrawn_on is None or self.withdrawn_on > day
        holds = self.day <= day or self.act is Act.START
        return self.decided_on <= day and holds and standing

    @property
    def place(self) -> tuple[date, datetime, UUID]:
        """Its place among the decisions about one commitment, in whatever order they came.

        By the day it holds from; a start corrects the term that runs when it is recorded.
        """
        day = self.decided_on if self.act is Act.START else self.day
        return day, self.decided_at, self.id
