"""What passes between the use cases and the store: readers, originals, facts with their times."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import NewType
from uuid import UUID

from cards.answers import Answer
from cards.commitments import CheckIn, Outcome
from cards.days import TURNS_AT, Days
from cards.errors import InvalidPreference
from cards.parts import KeptDigest
from cards.schedule import TARGET, Schedule

ReaderId = NewType("ReaderId", UUID)

UNASKED_A_DAY = 6
"""Unasked items let in a day unless the reader says otherwise: each kind of a new book twice."""
MOST_UNASKED_A_DAY = 100


@dataclass(frozen=True, slots=True)
class Reader:
    """A reader and what they set.

    Attributes:
        time_zone: IANA name.
        turns_at: hour, 0 to 23, at which their day turns over.
        target: retention aimed for.
        unasked_a_day: how many unasked items are let in a day, 0 to 100.
        revision: how many times it was changed, from 1.

    Raises:
        InvalidPreference: a setting is outside its range.
    """

    id: ReaderId
    time_zone: str = "UTC"
    turns_at: int = TURNS_AT
    target: float = TARGET
    unasked_a_day: int = UNASKED_A_DAY
    revision: int = 1

    def __post_init__(self) -> None:
        Days(self.time_zone, self.turns_at)
        Schedule(self.target)
        if not 0 <= self.unasked_a_day <= MOST_UNASKED_A_DAY:
            raise InvalidPreference(
                f"Between 0 and {MOST_UNASKED_A_DAY} unasked items can be let in a day, "
                f"not {self.unasked_a_day}.",
                where="unasked_a_day",
            )

    @property
    def days(self) -> Days:
        """How instants fall into this reader's days."""
        return Days(self.time_zone, self.turns_at)


@dataclass(frozen=True, slots=True)
class Original:
    """A file a digest was read from, as it came.

    Attributes:
        name: the file's name, without folders.
        content: its bytes.
        sha256: of the bytes, 64 hexadecimal digits.
        added_at: when it was added, aware, in UTC.
    """

    name: str
    content: bytes
    sha256: str
    added_at: datetime


@dataclass(frozen=True, slots=True)
class BookKey:
    """What a digest is recognised by when its book comes again.

    Attributes:
        title, author: folded (case, accents, punctuation and spaces); author "" if none.
        isbn: digits, or None.
    """

    title: str
    author: str
    isbn: str | None


@dataclass(frozen=True, slots=True)
class DigestEntry:
    """A digest with the instant it was first added."""

    kept: KeptDigest
    added_at: datetime


@dataclass(frozen=True, slots=True)
class KeptAnswer:
    """An answer with what happened to it.

    Attributes:
        received_at: when it arrived, aware, in UTC.
        taken_back_at: when the reader took it back, or None.
    """

    answer: Answer
    received_at: datetime
    taken_back_at: datetime | None = None


@dataclass(frozen=True, slots=True)
class Tally:
    """What came of a commitment so far.

    Attributes:
        counts: its check-ins by outcome; an outcome never reported is left out.
        last: the check-in about the latest day, of several on it the one reported last;
            None without any.
    """

    counts: Mapping[Outcome, int] = field(default_factory=dict)
    last: CheckIn | None = None
