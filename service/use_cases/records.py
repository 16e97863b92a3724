"""What passes between the use cases and the store: readers, originals, facts with their times."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum
from typing import NewType
from uuid import UUID

from cards.answers import Answer
from cards.commitments import CheckIn, Outcome
from cards.days import TURNS_AT, Days
from cards.digest import Notice, Quotation
from cards.errors import DocumentRefused, InvalidPreference
from cards.intake import Source
from cards.kinds.base import KindName
from cards.parts import Care, KeptDigest
from cards.proving import Anchor, BookText
from cards.schedule import TARGET, Schedule, aimed
from cards.weighting import PUBLISHED, Weighting

ReaderId = NewType("ReaderId", UUID)

UNASKED_A_DAY = 6
"""Unasked items let in a day at the most unless the reader says otherwise."""
MOST_UNASKED_A_DAY = 100

MINUTES = 10
"""Minutes of a day's sitting unless the reader says otherwise."""
FEWEST_MINUTES, MOST_MINUTES = 1, 120


@dataclass(frozen=True, slots=True)
class Reader:
    """A reader and what they set.

    Attributes:
        time_zone: IANA name.
        turns_at: hour, 0 to 23, at which their day turns over.
        target: retention aimed for.
        unasked_a_day: how many unasked items are let in a day at the most, 0 to 100.
        minutes: of a day's sitting, 1 to 120.
        revision: how many times the settings were changed, from 1.
        weighting: the weights that foresee what they recall; learned, not set.

    Raises:
        InvalidPreference: a setting is outside its range.
    """

    id: ReaderId
    time_zone: str = "UTC"
    turns_at: int = TURNS_AT
    target: float = TARGET
    unasked_a_day: int = UNASKED_A_DAY
    minutes: int = MINUTES
    revision: int = 1
    weighting: Weighting = PUBLISHED

    def __post_init__(self) -> None:
        Days(self.time_zone, self.turns_at)
        Schedule(self.target)
        if not 0 <= self.unasked_a_day <= MOST_UNASKED_A_DAY:
            raise InvalidPreference(
                f"Between 0 and {MOST_UNASKED_A_DAY} unasked items can be let in a day, "
                f"not {self.unasked_a_day}.",
                where="unasked_a_day",
            )
        if not FEWEST_MINUTES <= self.minutes <= MOST_MINUTES:
            raise InvalidPreference(
                f"A day’s sitting takes from {FEWEST_MINUTES} to {MOST_MINUTES} minutes, "
                f"not {self.minutes}.",
                where="minutes",
            )

    @property
    def days(self) -> Days:
        """How instants fall into this reader's days."""
        return Days(self.time_zone, self.turns_at)

    def schedule(self, kind: KindName, care: Care = Care.STEADY) -> Schedule:
        """Return the schedule of items of a kind, in a book kept with a care."""
        return self.weighting.schedule(kind, aimed(self.target, care))


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
class BundledFile:
    """One file of many that were handed over together.

    Attributes:
        name: the file's, with the folders it stands in, harmless to show.
        content: its bytes, or None when it was refused.
        refusal: why it was, or None.
        number: which of the files handed over together, from 1.
        of: how many they are.
    """

    name: str
    content: bytes | None
    refusal: DocumentRefused | None = None
    number: int = 1
    of: int = 1


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


class Form(StrEnum):
    """What a digest is written out as."""

    PDF = "pdf"
    DOCX = "docx"
    ODT = "odt"
    MARKDOWN = "md"
    JSON = "json"


@dataclass(frozen=True, slots=True)
class BookFacts:
    """What a bibliography says about a book, as far as a digest holds it; None where it does not.

    Attributes:
        edition: number, publisher and year, in words.
        isbn: 10 or 13 digits, checked.
    """

    title: str | None = None
    author: str | None = None
    edition: str | None = None
    isbn: str | None = None
    pages: int | None = None


@dataclass(frozen=True, slots=True)
class AnnotatedQuotation:
    """A quotation as Web Annotations hold it.

    Attributes:
        quotation: its words, and its locator where one is given.
        anchor: where it stands in a text, or None when only its words are given.
    """

    quotation: Quotation
    anchor: Anchor | None = None


class Cause(StrEnum):
    """What a version of a digest came of."""

    ADDED = "added"
    CHANGED = "changed"
    MENDED = "mended"
    PLACED = "placed"
    PROVED = "proved"
    OVERRULED = "overruled"
    RESTORED = "restored"
    CARED = "cared"
    REMOVED = "removed"


@dataclass(frozen=True, slots=True)
class Version:
    """A digest as one revision of it was.

    Attributes:
        kept_at: when it was kept, aware, in UTC.
        cause: what it came of.
        kept: as it was then: every part it held or had held, with its identity.
    """

    kept_at: datetime
    cause: Cause
    kept: KeptDigest


@dataclass(frozen=True, slots=True)
class VersionEntry:
    """A version without what it says."""

    revision: int
    kept_at: datetime
    cause: Cause


@dataclass(frozen=True, slots=True)
class Draft:
    """A digest that is being written, or looked over before it is kept.

    Attributes:
        id: of the draft.
        typed: the fields of the form as typed, valid or not, by their names.
        begun_at, changed_at: instants, aware, in UTC.
        file: the name of the file it was read from, or None.
        number: which of the digests of that file, from 1.
        sources: the words of the document each part came from.
        left: the words of the document that were not taken in.
        notices: what to tell the reader about how it was understood.
        revision: how many times it was changed, from 1.
    """

    id: UUID
    typed: Mapping[str, str]
    begun_at: datetime
    changed_at: datetime
    file: str | None = None
    number: int = 1
    sources: tuple[Source, ...] = ()
    left: tuple[str, ...] = ()
    notices: tuple[Notice, ...] = ()
    revision: int = 1


@dataclass(frozen=True, slots=True)
class BookFile:
    """The text of a book as the reader gave it, to prove quotations against.

    Attributes:
        name: the file's name, without folders.
        sha256: of its bytes, 64 hexadecimal digits.
        added_at: when it was given, aware, in UTC.
        text: what was read of it.
    """

    name: str
    sha256: str
    added_at: datetime
    text: BookText


@dataclass(frozen=True, slots=True)
class PartAnchor:
    """Where the words of a kept quotation were found in the text of its book."""

    part_id: UUID
    anchor: Anchor
