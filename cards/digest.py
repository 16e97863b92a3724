"""What a finished digest holds, and what makes one valid."""

import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from cards.errors import Invalid, InvalidDigest
from cards.locators import page_of

MAX_TITLE = 500
"""Characters in a title or an author: room for the longest title page, no room for a book."""
MAX_EDITION = 500
"""Characters in the words of an edition: publisher, place, year, number, translator."""
MAX_ISBN = 40
"""Characters in an ISBN: 17 as printed, and room for one that is wrong and kept as written."""
MAX_TEXT = 20_000
"""Characters in one theme, point, commitment, quotation or judgement: ten times a full page."""
MAX_PARTS = 500
"""Points, commitments or quotations in one digest; two pages hold a tenth of that."""
MAX_WHOLE = 200_000
"""Characters in all parts together: thirty times the two pages a digest is meant to fill."""
MAX_LOCATOR = 200
"""Characters in a locator."""
MAX_PAGES = 50_000
"""Pages in a book: beyond the longest work printed in many volumes."""

_NO_TEXT = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x84\x86-\x9f\ud800-\udfff\ufffe\uffff]")
"""What is no text: controls other than tab and new line, halves of pairs, no characters.

XML 1.0 (W3C, section 2.2) allows none of the first 32 but those and the carriage return,
nor halves of pairs, U+FFFE and U+FFFF; so what holds one could not be written to a DOCX."""


@dataclass(frozen=True, slots=True)
class Point:
    """One of the ordered ideas or events that carry the theme."""

    text: str
    locator: str | None = None

    @property
    def page(self) -> int | None:
        """The page its locator names, or None."""
        return page_of(self.locator)


@dataclass(frozen=True, slots=True)
class Commitment:
    """What the book asks the reader to do."""

    text: str


@dataclass(frozen=True, slots=True)
class Quotation:
    """Words of the book with a locator, and the point they stand after.

    Attributes:
        text: the words, without the quotation marks around them.
        locator: where they stand, as the reader wrote it, or None.
        after: number of the point they stand after, counted from 1; 0 when they
            stand before all points; None when nothing says so.
    """

    text: str
    locator: str | None = None
    after: int | None = None

    @property
    def page(self) -> int | None:
        """The page its locator names, or None."""
        return page_of(self.locator)


@dataclass(frozen=True, slots=True)
class Notice:
    """Something to tell the reader about one part of a digest as it was understood.

    Attributes:
        part: `title`, `author`, `theme`, `points`, `commitments`, `quotations`,
            `judgement`, `finished_on`, `edition`, `isbn`, `pages` or `document`, with a number
            after a space where it is about one of several (`quotations 3`).
        message: one sentence.
    """

    part: str
    message: str


@dataclass(frozen=True, slots=True)
class Digest:
    """The two-page record of one finished book.

    `edition` is the edition in words (publisher, year, number, translator), as printed
    or as the reader wrote it; its ISBN and page count stand apart. `theme` and
    `judgement` are None when the digest has none; the sequences may be empty, but a
    digest holds at least one part. Valid from construction.

    Raises:
        InvalidDigest: it has no title, nothing to keep, a part without words, or
            a number or length beyond its bound.
    """

    title: str
    author: str | None = None
    edition: str | None = None
    isbn: str | None = None
    pages: int | None = None
    finished_on: date | None = None
    theme: str | None = None
    judgement: str | None = None
    points: tuple[Point, ...] = ()
    commitments: tuple[Commitment, ...] = ()
    quotations: tuple[Quotation, ...] = ()

    def __post_init__(self) -> None:
        _bounded(self.title, "title", MAX_TITLE)
        if self.author is not None:
            _bounded(self.author, "author", MAX_TITLE)
        if self.edition is not None:
            _bounded(self.edition, "edition", MAX_EDITION)
        if self.isbn is not None:
            _bounded(self.isbn, "isbn", MAX_ISBN)
        for where, text in self._texts():
            _bounded(text, where, MAX_TEXT)
        whole = sum(len(text) for _, text in self._texts())
        if whole > MAX_WHOLE:
            raise InvalidDigest(
                f"A digest is two pages; this one has {whole} characters, and at most {MAX_WHOLE} "
                "are kept.",
                where="document",
            )
        for where, count in (
            ("points", len(self.points)),
            ("commitments", len(self.commitments)),
            ("quotations", len(self.quotations)),
        ):
            if count > MAX_PARTS:
                raise InvalidDigest(
                    f"A digest keeps at most {MAX_PARTS} {where}; this one has {count}.",
                    where=where,
                )
        if self.pages is not None and not 1 <= self.pages <= MAX_PAGES:
            raise InvalidDigest(
                f"A book has between 1 and {MAX_PAGES} pages, not {self.pages}.", where="pages"
            )
        self._check_places()
        if not (self.theme or self.points or self.commitments or self.quotations):
            raise InvalidDigest(
                "A digest needs at least a theme, a point, a commitment or a quotation.",
                where="theme",
            )

    def _texts(self) -> Iterator[tuple[str, str]]:
        if self.theme is not None:
            yield "theme", self.theme
        if self.judgement is not None:
            yield "judgement", self.judgement
        for number, point in enumerate(self.points, 1):
            yield f"points {number}", point.text
        for number, commitment in enumerate(self.commitments, 1):
            yield f"commitments {number}", commitment.text
        for number, quotation in enumerate(self.quotations, 1):
            yield f"quotations {number}", quotation.text

    def _check_places(self) -> None:
        located = [(f"points {n}", p.locator) for n, p in enumerate(self.points, 1)]
        located += [(f"quotations {n}", q.locator) for n, q in enumerate(self.quotations, 1)]
        for where, locator in located:
            if locator is not None:
                _bounded(locator, where, MAX_LOCATOR)
        for number, quotation in enumerate(self.quotations, 1):
            if quotation.after is not None and not 0 <= quotation.after <= len(self.points):
                raise InvalidDigest(
                    f"Quotation {number} is said to stand after point {quotation.after}, but the "
                    f"digest has {len(self.points)} points.",
                    where=f"quotations {number}",
                )


def _bounded(text: str, where: str, limit: int) -> None:
    if not text.strip():
        raise InvalidDigest(f"The digest's {where} has no words.", where=where)
    if _NO_TEXT.search(text):
        raise InvalidDigest(
            f"The digest's {where} holds a character that is no text (a NUL or another control, "
            "or half of a pair).",
            where=where,
        )
    if len(text) > limit:
        raise InvalidDigest(
            f"The digest's {where} is {len(text)} characters long; at most {limit} are kept.",
            where=where,
        )


def hold_text(words: str, where: str) -> None:
    """Refuse words a reader adds to a digest, a note or a reason, that are no text.

    What cannot be printed or written to a document would keep all that stands beside it from
    being so, and a terminal would obey it.

    Raises:
        Invalid: they hold a control, or half of a pair.
    """
    if _NO_TEXT.search(words):
        raise Invalid(
            f"A character of the {where} is no text, but a control or half a pair; leave it out.",
            where=where,
        )


def folded(text: str | None) -> str:
    """Return a title or a name without case, accents, punctuation and spare spaces.

    What is left tells whether two title pages are of the same book; "" for None.
    """
    plain = unicodedata.normalize("NFKD", text or "").casefold()
    kept = (
        character if character.isalnum() else " "
        for character in plain
        if not unicodedata.combining(character)
    )
    return " ".join("".join(kept).split())
