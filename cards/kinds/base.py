"""What every kind of item offers: which parts it asks, its cue, its answer, its marking."""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from typing import Protocol
from uuid import UUID

from cards.answers import Grade
from cards.parts import KeptDigest, Part


class KindName(StrEnum):
    """The kinds of item there are."""

    THEME = "theme"
    PLACE = "place"
    RESTATE = "restate"


class Asked(StrEnum):
    """How an attempt is given: in one's own words, by a gap of the plot, or by a number."""

    WORDS = "words"
    GAP = "gap"
    PAGE = "page"
    CHAPTER = "chapter"


@dataclass(frozen=True, slots=True)
class Landmark:
    """Something a gap of the plot lies before or after.

    Attributes:
        number: counted from 1 in the book's order.
        text: what it says.
        page: where it stands, when that is known.
    """

    number: int
    text: str
    page: int | None = None


@dataclass(frozen=True, slots=True)
class Cue:
    """What an item shows first. It never contains its answer.

    Attributes:
        heading: what is to be done, in a few words.
        words: the words shown: a title, a quotation, a situation.
        question: what is asked, in one sentence.
        asked: the ways an attempt can be given, the first being the usual one.
        landmarks: for a gap: what the gaps lie between. Gap 0 is before all of
            them, gap n after the n-th.
        pages: for a page: how many the book has, when that is known.
        caution: the usual caution where the matter can hurt someone, or None.
    """

    heading: str
    words: str
    question: str
    asked: tuple[Asked, ...] = (Asked.WORDS,)
    landmarks: tuple[Landmark, ...] = ()
    pages: int | None = None
    caution: str | None = None


@dataclass(frozen=True, slots=True)
class Attempt:
    """What the reader gave: words, or a gap, or a page, or a chapter; or nothing.

    Attributes:
        words: as typed; "" when nothing came back.
        gap: the number of the landmark it was placed after, 0 before all.
        page, chapter: a number.
        landmarks_seen: whether the points were in sight while it was given.
    """

    words: str = ""
    gap: int | None = None
    page: int | None = None
    chapter: int | None = None
    landmarks_seen: bool = True

    def as_text(self) -> str:
        """Return it as one line, to be kept with the answer."""
        if self.page is not None:
            return f"page {self.page}" + ("" if self.landmarks_seen else ", points out of sight")
        if self.chapter is not None:
            return f"chapter {self.chapter}"
        if self.gap is not None:
            return f"after {self.gap}"
        return self.words


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch of a text, from `start` up to `end`, that was found in the other (`hit`) or not."""

    start: int
    end: int
    hit: bool


@dataclass(frozen=True, slots=True)
class Mark:
    """The suggested grade with its evidence. The reader's grade decides.

    Attributes:
        grade: the suggestion.
        reason: why, in one sentence.
        answer_spans: stretches of the digest's words found in the attempt, or missed.
        attempt_spans: stretches of the attempt that hold them.
    """

    grade: Grade
    reason: str
    answer_spans: tuple[Span, ...] = ()
    attempt_spans: tuple[Span, ...] = ()


@dataclass(frozen=True, slots=True)
class Answered:
    """What the digest says: the right page after an attempt.

    Attributes:
        words: the digest's words, or the place in words.
        gap: for a place known by the points: the right gap.
        page, chapter: where it stands, when known.
        locator: as the reader wrote it, or None.
        caution: as on the cue.
    """

    words: str
    gap: int | None = None
    page: int | None = None
    chapter: int | None = None
    locator: str | None = None
    caution: str | None = None


class Kind(Protocol):
    """One kind of item. Stateless; one module in `cards/kinds/` each.

    `part` is always a part the digest holds and one that `sources` yields.
    """

    name: KindName

    def sources(self, digest: KeptDigest) -> Iterator[Part]:
        """Yield the parts of a digest that each make one item of this kind."""
        ...

    def cue(self, digest: KeptDigest, part: Part) -> Cue:
        """Return what the item shows first."""
        ...

    def answer(self, digest: KeptDigest, part: Part) -> Answered:
        """Return what the digest says."""
        ...

    def mark(self, digest: KeptDigest, part: Part, attempt: Attempt) -> Mark:
        """Compare an attempt with the digest and suggest a grade, with the reason."""
        ...

    def asks(self, digest: KeptDigest, part: Part) -> frozenset[UUID]:
        """Return the ids of the parts whose words the reader is to recall."""
        ...

    def shows(self, digest: KeptDigest, part: Part) -> frozenset[UUID]:
        """Return the ids of the parts whose words its pages let the reader read."""
        ...
