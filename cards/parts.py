"""The parts of a digest once they are kept: each with an identity that survives edits."""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from uuid import UUID

from cards.digest import Commitment, Digest, Point, Quotation
from cards.locators import page_of


class Care(StrEnum):
    """How much of a book to keep: everything, the usual, or nothing new and little of the rest."""

    CLOSE = "close"
    STEADY = "steady"
    RESTING = "resting"


class PartKind(StrEnum):
    """What a part of a digest is."""

    THEME = "theme"
    POINT = "point"
    COMMITMENT = "commitment"
    QUOTATION = "quotation"


@dataclass(frozen=True, slots=True)
class Part:
    """A theme, point, commitment or quotation with its identity.

    Attributes:
        id: stays the same when the part is edited, moved, removed and restored.
        kind: what it is.
        number: its place among the parts of its kind, from 1; of a retired part,
            the last it had.
        text: its words.
        locator: of a point or a quotation, else None.
        after: of a quotation: the number of the point it stands after, or None.
        retired: whether the digest no longer holds it; its history is kept.
    """

    id: UUID
    kind: PartKind
    number: int
    text: str
    locator: str | None = None
    after: int | None = None
    retired: bool = False

    @property
    def page(self) -> int | None:
        """The page its locator names, or None."""
        return page_of(self.locator)


@dataclass(frozen=True, slots=True)
class Link:
    """What the reader found: a point of one book that another book of theirs speaks to.

    Attributes:
        id: made by whoever recorded it.
        part_id: of the point.
        book_id: of the other book's digest.
        title, author: of the other book, as its digest says them now.
        why: what the one says to the other, in the reader's words; may be empty.
    """

    id: UUID
    part_id: UUID
    book_id: UUID
    title: str
    author: str | None = None
    why: str = ""


@dataclass(frozen=True, slots=True)
class KeptDigest:
    """A digest in a reader's library, its parts identified.

    Attributes:
        id: of the digest.
        parts: every part it holds or ever held, in no order that matters.
        removed: whether the reader took the whole digest out; it can come back.
        revision: how many times it was changed, from 1.
        care: how much of the book to keep.
        links: from its points to other books that are not removed. They are the library's,
            not what a version of the digest says.
    """

    id: UUID
    title: str
    author: str | None
    edition: str | None
    isbn: str | None
    pages: int | None
    finished_on: date | None
    judgement: str | None
    parts: tuple[Part, ...]
    removed: bool = False
    revision: int = 1
    care: Care = Care.STEADY
    links: tuple[Link, ...] = ()

    def held(self, kind: PartKind) -> tuple[Part, ...]:
        """Return the parts of one kind it holds now, in the digest's order."""
        parts = (part for part in self.parts if part.kind is kind and not part.retired)
        return tuple(sorted(parts, key=lambda part: part.number))

    def part(self, part_id: UUID) -> Part:
        """Return one part, held or retired. KeyError when it never had it."""
        for part in self.parts:
            if part.id == part_id:
                return part
        raise KeyError(part_id)

    def digest(self) -> Digest:
        """Return the digest it holds now, without identities."""
        theme = self.held(PartKind.THEME)
        return Digest(
            title=self.title,
            author=self.author,
            edition=self.edition,
            isbn=self.isbn,
            pages=self.pages,
            finished_on=self.finished_on,
            theme=theme[0].text if theme else None,
            judgement=self.judgement,
            points=tuple(Point(part.text, part.locator) for part in self.held(PartKind.POINT)),
            commitments=tuple(Commitment(part.text) for part in self.held(PartKind.COMMITMENT)),
            quotations=tuple(
                Quotation(part.text, part.locator, part.after)
                for part in self.held(PartKind.QUOTATION)
            ),
        )
