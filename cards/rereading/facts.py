"""That pages of a book were read again: a fact."""

from dataclasses import dataclass
from datetime import date, datetime
from uuid import UUID

from cards.answers import Answer
from cards.errors import Invalid

MAX_PAGES = 200
"""Characters of the pages of a re-reading, as the reader writes them."""
MAX_NOTE = 2_000
"""Characters of its note."""
MOST_MINUTES = 10_000
"""Minutes of one re-reading: a long book, whole."""


@dataclass(frozen=True, slots=True)
class Rereading:
    """One re-reading: a fact, never changed once kept.

    Attributes:
        id: made by whoever recorded it.
        digest_id: of the book.
        day: the reader's day it took place on.
        reported_at, reported_on: when it was recorded: the instant in UTC, the reader's day.
        pages: which, in the reader's words; may be empty.
        minutes: how long it took, or None.
        note: the reader's words about it; may be empty.
        items: the ids of the items it was for, which are asked afresh after it.
        withdrawn_on: the reader's day it was taken back, or None.

    Raises:
        Invalid: a text is too long, or the minutes are none.
    """

    id: UUID
    digest_id: UUID
    day: date
    reported_at: datetime
    reported_on: date
    pages: str = ""
    minutes: int | None = None
    note: str = ""
    items: tuple[UUID, ...] = ()
    withdrawn_on: date | None = None

    def __post_init__(self) -> None:
        for where, words, most in (
            ("pages", self.pages, MAX_PAGES),
            ("note", self.note, MAX_NOTE),
        ):
            if len(words) > most:
                raise Invalid(
                    f"At most {most} characters are kept here, not {len(words)}.", where=where
                )
        if self.minutes is not None and not 1 <= self.minutes <= MOST_MINUTES:
            raise Invalid(
                f"Reading again takes from 1 to {MOST_MINUTES} minutes, not {self.minutes}.",
                where="minutes",
            )

    def before(self, answer: Answer) -> bool:
        """Tell whether an answer was given after it.

        Of an answer of the same day only the hour tells, and of a re-reading only when it was
        recorded is known to the hour.
        """
        if answer.day != self.day:
            return answer.day > self.day
        return answer.answered_at > self.reported_at
