"""What every kind of item offers: which parts it asks, its cue, its answer, its marking."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from typing import Protocol
from uuid import UUID, uuid5

from cards.answers import Grade
from cards.parts import KeptDigest, Part


class KindName(StrEnum):
    """The kinds of item there are."""

    THEME = "theme"
    PLACE = "place"
    RESTATE = "restate"
    NEXT = "next"
    ORDER = "order"
    COMPLETE = "complete"
    SOURCE = "source"
    ACROSS = "across"


class Asked(StrEnum):
    """How an attempt is given.

    In one's own words, by a gap of the plot, by a number, by putting what is shown in
    order, word by word into blanks, or by choosing one of several books.
    """

    WORDS = "words"
    GAP = "gap"
    PAGE = "page"
    CHAPTER = "chapter"
    ORDER = "order"
    BLANKS = "blanks"
    BOOK = "book"


@dataclass(frozen=True, slots=True)
class Shelved:
    """A book on the reader's shelf, as far as telling it from another needs.

    Attributes:
        id: of its digest.
    """

    id: UUID
    title: str
    author: str | None = None
    finished_on: date | None = None


@dataclass(frozen=True, slots=True)
class Occasion:
    """One asking of an item: all that its cue, its answer and its marking depend on.

    Attributes:
        digest, part: what the item was made from.
        asked: how many answers it had before.
        held: whether it is held by now, so that more of it can be asked.
        shelf: the reader's books, those removed left out; may be empty where no kind
            that chooses among books is asked.
    """

    digest: KeptDigest
    part: Part
    asked: int = 0
    held: bool = False
    shelf: tuple[Shelved, ...] = ()


@dataclass(frozen=True, slots=True)
class Landmark:
    """Something a gap of the plot lies before or after, or that is to be put in order.

    Attributes:
        number: counted from 1, in the book's order; where the order is asked, in the order shown.
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
        pieces: for blanks: the words around them, one piece more than there are blanks;
            a piece may be empty.
        choices: for a book: those to choose among.
        caution: the usual caution where the matter can hurt someone, or None.
    """

    heading: str
    words: str
    question: str
    asked: tuple[Asked, ...] = (Asked.WORDS,)
    landmarks: tuple[Landmark, ...] = ()
    pages: int | None = None
    pieces: tuple[str, ...] = ()
    choices: tuple[Shelved, ...] = ()
    caution: str | None = None


@dataclass(frozen=True, slots=True)
class Attempt:
    """What the reader gave, in one of the ways asked for; or nothing.

    Attributes:
        words: as typed; "" when nothing came back.
        gap: the number of the landmark it was placed after, 0 before all.
        page, chapter: a number.
        order: the numbers of the landmarks as shown, in the order the reader gave them;
            those that were not remembered are left out.
        blanks: the words given for the blanks, "" where none was.
        book: the id of the book chosen.
        landmarks_seen: whether the points were in sight while it was given.
        ticked: the numbers, from 1, of the ideas the reader says came back, in place of
            those that were found; None where they did not correct them.
    """

    words: str = ""
    gap: int | None = None
    page: int | None = None
    chapter: int | None = None
    order: tuple[int, ...] = ()
    blanks: tuple[str, ...] = ()
    book: UUID | None = None
    landmarks_seen: bool = True
    ticked: frozenset[int] | None = None

    @property
    def empty(self) -> bool:
        """Whether nothing came back."""
        nothing = (self.gap, self.page, self.chapter, self.book) == (None, None, None, None)
        given = self.words.strip() or self.order or any(word.strip() for word in self.blanks)
        return nothing and not given

    def as_text(self) -> str:
        """Return it as text, to be kept with the answer; "" for a book, which has a name."""
        if self.page is not None:
            return f"page {self.page}" + ("" if self.landmarks_seen else ", points out of sight")
        if self.chapter is not None:
            return f"chapter {self.chapter}"
        if self.gap is not None:
            return f"after {self.gap}"
        if self.order:
            return "order " + ", ".join(map(str, self.order))
        if self.blanks:
            return " / ".join(word.strip() or "…" for word in self.blanks)
        return self.words


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch of a text, from `start` up to `end`, that was found in the other (`hit`) or not."""

    start: int
    end: int
    hit: bool


@dataclass(frozen=True, slots=True)
class Idea:
    """One idea unit of the digest's words, held against an attempt.

    Attributes:
        start, end: where it stands in the words of `Answered`.
        weight: how much it counts; a main idea counts double.
        found: whether it came back, by the comparison or by the reader's word.
        turned: whether the attempt seems to say the opposite of it.
    """

    start: int
    end: int
    weight: int
    found: bool
    turned: bool = False


@dataclass(frozen=True, slots=True)
class Mark:
    """The suggested grade with its evidence. The reader's grade decides.

    Attributes:
        grade: the suggestion.
        reason: why, in one sentence.
        answer_spans: stretches of the digest's words found in the attempt, or missed.
        attempt_spans: stretches of the attempt that hold them.
        ideas: the idea units of the digest's words, for the reader to tick or untick;
            empty where it is not ideas that are compared.
    """

    grade: Grade
    reason: str
    answer_spans: tuple[Span, ...] = ()
    attempt_spans: tuple[Span, ...] = ()
    ideas: tuple[Idea, ...] = ()


@dataclass(frozen=True, slots=True)
class Answered:
    """What the digest says: the right page after an attempt.

    Attributes:
        words: the digest's words, or the place in words.
        gap: for a place known by the points: the right gap.
        page, chapter: where it stands, when known.
        order: for an order: the numbers of the landmarks as shown, in the book's order.
        blanks: for blanks: the words left out.
        book: for a book: the id of the right one.
        locator: as the reader wrote it, or None.
        caution: as on the cue.
    """

    words: str
    gap: int | None = None
    page: int | None = None
    chapter: int | None = None
    order: tuple[int, ...] = ()
    blanks: tuple[str, ...] = ()
    book: UUID | None = None
    locator: str | None = None
    caution: str | None = None


_WHAT_IS_NO_PART = UUID("3f0a6c52-9f0e-5d0c-8a35-2f1d9a4a7c10")


def order_of(digest: KeptDigest) -> UUID:
    """Return what the order of a book's points goes by in `Kind.asks` and `Kind.shows`."""
    return uuid5(_WHAT_IS_NO_PART, f"order of {digest.id}")


def place_of(part: Part) -> UUID:
    """Return what the place of a quotation goes by in `Kind.asks` and `Kind.shows`."""
    return uuid5(_WHAT_IS_NO_PART, f"place of {part.id}")


def link_of(part: Part) -> UUID:
    """Return what the books linked to a point go by in `Kind.asks` and `Kind.shows`."""
    return uuid5(_WHAT_IS_NO_PART, f"links of {part.id}")


class Kind(Protocol):
    """One kind of item. Stateless; one module in `cards/kinds/` each.

    The part of an occasion is always one that its digest holds and that `sources` yields.
    """

    name: KindName

    def sources(self, digest: KeptDigest) -> Iterator[Part]:
        """Yield the parts of a digest that each make one item of this kind."""
        ...

    def cue(self, occasion: Occasion) -> Cue:
        """Return what the item shows first."""
        ...

    def answer(self, occasion: Occasion) -> Answered:
        """Return what the digest says."""
        ...

    def mark(self, occasion: Occasion, attempt: Attempt) -> Mark:
        """Compare an attempt with the digest and suggest a grade, with the reason."""
        ...

    def asks(self, occasion: Occasion) -> frozenset[UUID]:
        """Return the ids of what the reader is to recall: parts, or the order of a book's points.

        What another item's page shows of these gives this one away.
        """
        ...

    def shows(self, occasion: Occasion) -> frozenset[UUID]:
        """Return the ids of all that its pages let the reader read."""
        ...

    def secret(self, occasion: Occasion) -> str:
        """Return the words the reader is to recall; "" where it is no words.

        A page that holds half of their content words gives them away, whatever it is of.
        """
        ...
