"""That a book was talked over: a fact."""

from dataclasses import dataclass
from datetime import date, datetime
from uuid import UUID

from cards.errors import Invalid

MAX_LISTENER = 200
"""Characters of with whom a talk was."""
MAX_NOTE = 2_000
"""Characters of what came of it."""
MOST_MINUTES = 1_440
"""Minutes of one talk: a day."""


@dataclass(frozen=True, slots=True)
class Talk:
    """One talk about a book: a fact, never changed once kept.

    Attributes:
        id: made by whoever recorded it.
        digest_id: of the book.
        day: the reader's day it took place on.
        reported_at, reported_on: when it was recorded: the instant in UTC, the reader's day.
        listener: with whom, in the reader's words; may be empty.
        minutes: how long it took, or None.
        note: what came of it; may be empty.
        withdrawn_on: the reader's day it was taken back, or None.

    Raises:
        Invalid: a text is too long, or the minutes are none.
    """

    id: UUID
    digest_id: UUID
    day: date
    reported_at: datetime
    reported_on: date
    listener: str = ""
    minutes: int | None = None
    note: str = ""
    withdrawn_on: date | None = None

    def __post_init__(self) -> None:
        for where, words, most in (
            ("listener", self.listener, MAX_LISTENER),
            ("note", self.note, MAX_NOTE),
        ):
            if len(words) > most:
                raise Invalid(
                    f"At most {most} characters are kept here, not {len(words)}.", where=where
                )
        if self.minutes is not None and not 1 <= self.minutes <= MOST_MINUTES:
            raise Invalid(
                f"A talk takes from 1 to {MOST_MINUTES} minutes, not {self.minutes}.",
                where="minutes",
            )
