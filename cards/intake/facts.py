"""The facts of a book in a digest's lines: ISBN, pages, when it was finished, title, author."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date

from cards.digest import MAX_PAGES, Notice
from cards.intake.dates import date_in
from cards.intake.headings import Part
from cards.intake.isbn import compact, is_isbn
from cards.intake.labels import Fact, fact_label, label_split
from cards.intake.wording import excerpt, flowing

_MAX_LINE = 400
_PIECES = re.compile(r"\s*(?:[|·•;\n\t]|\s//\s)\s*")
_ISBN = re.compile(
    r"\bISBN(?:[- ]?1[03](?![\d-]))?\s*:?\s*(\d[\dXx \-–]{8,18}[\dXx])", re.IGNORECASE
)
_PAGES = re.compile(
    r"(?<![\w.,-])(\d{1,6})\s?(?:pages|pp\.?|p\.|seiten|páginas|paginas|pagine|pagina's|s\.)(?!\w)",
    re.IGNORECASE,
)
_FINISHED = re.compile(
    r"\b(?:finished|completed|read|gelesen|beendet|lu|terminado|leído|letto|lido|gelezen)"
    r"(?:\s(?:reading|it|on|in|am|le|el|il|em|op)){0,3}\s*:?\s+(?=.{0,40}\d{4})",
    re.IGNORECASE,
)
_DIGITS = re.compile(r"\d{1,6}")
_ANY = frozenset(Fact)
_WITHIN_PART = frozenset({Fact.FINISHED, Fact.ISBN, Fact.PAGES})
_OF_PROPERTIES = frozenset({Fact.ISBN, Fact.PAGES, Fact.FINISHED})
_EDGE = " ,;:.()[]–—-"


@dataclass(slots=True)
class Facts:
    """What is known of the book so far. The first word on each fact stands."""

    title: str | None = None
    author: str | None = None
    isbn: str | None = None
    pages: int | None = None
    finished_on: date | None = None
    notices: list[Notice] = field(default_factory=list)

    def take_line(self, text: str, within: Part | None = None) -> str:
        """Take the facts out of a line, and return the words that are left of it.

        Args:
            text: one line or several.
            within: the part it stands in; there only a few facts behind a label
                count, and `Pages:` among quotations is a locator.
        """
        if len(text) > _MAX_LINE:
            return text
        allowed = _ANY if within is None else _WITHIN_PART
        if within is Part.QUOTATIONS:
            allowed = allowed - {Fact.PAGES}
        pieces = _PIECES.split(text)
        left = [self._take_piece(piece, allowed, bare=within is None) for piece in pieces]
        if left == pieces:
            return text
        return "\n".join(piece for piece in left if piece)

    def take_row(self, text: str) -> str:
        """Take the fact of a table row or an item with its name in front, as `take_line`."""
        label, found, value = text.partition("\t")
        fact = fact_label(label.rstrip(":")) if found else None
        if fact is not None and self.take(fact, value):
            return ""
        return self.take_line(text)

    def take(self, fact: Fact, value: str) -> bool:
        """Take the value of one fact, and tell whether it could be understood as such."""
        value = flowing(value)
        match fact:
            case Fact.TITLE:
                self.title = self.title or value
            case Fact.AUTHOR:
                self.author = self.author or value
            case Fact.ISBN:
                self._take_isbn(value)
            case Fact.PAGES:
                return self._take_pages(value)
            case Fact.FINISHED:
                return self._take_finished(value)
        return True

    def take_properties(self, properties: Mapping[str, str]) -> None:
        """Take the facts a document's own properties give, titles and authors apart."""
        for key, value in properties.items():
            fact = fact_label(key.replace("_", " ").replace("-", " "))
            if fact is not None and fact in _OF_PROPERTIES:
                self.take(fact, value)

    def _take_piece(self, piece: str, allowed: frozenset[Fact], *, bare: bool) -> str:
        for label, rest in label_split(piece):
            fact = fact_label(label)
            if fact is not None and fact in allowed and self.take(fact, rest):
                return ""
        if not bare:
            return piece
        left = piece
        if (found := _ISBN.search(left)) is not None:
            self._take_isbn(found[1])
            left = _without(left, found.start(), found.end())
        found = _FINISHED.search(left)
        if found is not None and self._take_finished(left[found.end() :]):
            left = left[: found.start()].strip(_EDGE)
        if (found := _PAGES.search(left)) is not None and self._take_pages(found[1]):
            left = _without(left, found.start(), found.end())
        return left

    def _take_isbn(self, value: str) -> None:
        if self.isbn is not None:
            return
        self.isbn = compact(value)[:40]
        if not is_isbn(self.isbn):
            self.notices.append(
                Notice(
                    "isbn",
                    f"“{excerpt(value, 40)}” is not a valid ISBN: its check digit does not agree. "
                    "It is kept as written; look at the book's back cover.",
                )
            )

    def _take_pages(self, value: str) -> bool:
        found = _DIGITS.search(value.replace(",", "").replace("’", ""))
        if found is None:
            return False
        count = int(found[0])
        if not 1 <= count <= MAX_PAGES:
            self.notices.append(
                Notice("pages", f"{count} is not a number of pages a book can have; none is kept.")
            )
        elif self.pages is None:
            self.pages = count
        return True

    def _take_finished(self, value: str) -> bool:
        written = date_in(value)
        if written is None:
            return False
        if written.day is None:
            self.notices.append(
                Notice(
                    "finished_on",
                    f"“{excerpt(value, 40)}” does not say on which day the book was finished. "
                    "Write the date as 2025-05-12.",
                )
            )
        elif self.finished_on is None:
            self.finished_on = written.day
        return True


def _without(text: str, start: int, end: int) -> str:
    before, after = text[:start].rstrip(_EDGE), text[end:].lstrip(_EDGE)
    return f"{before}, {after}" if before and after else before or after
