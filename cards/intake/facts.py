"""The facts of a book in a digest's lines: ISBN, pages, when it was finished, title, author."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date

from cards.digest import MAX_PAGES, Notice
from cards.intake.headings import Part
from cards.intake.isbn import compact, is_isbn
from cards.intake.labels import Fact, fact_label, is_detail_label, label_split
from cards.intake.title import is_prose
from cards.intake.values import fact_leads, finished_off, idle, isbn_off, pages_off
from cards.intake.wording import excerpt, flowing, folded

MAX_RESTS = 20
"""Words left beside facts that are told of one by one."""
_MAX_LINE = 400
_FEW_WORDS = 6
"""Words left of a line of several facts that is no sentence: a name, a publisher's name."""
_PIECES = re.compile(r"\s*(?:[|·•;\n\t]|\s//\s)\s*")
_NEXT_LABEL = re.compile(r"[.,]\s+(?=([^\W\d_][\w -]{0,30}):\s)")
_FIGURES = frozenset({Fact.FINISHED, Fact.ISBN, Fact.PAGES})
_DEEDS = frozenset({"done", "completed", "ended"})
"""Labels that among commitments are of a deed, not of the book."""


@dataclass(slots=True)
class Facts:
    """What is known of the book so far. The first word on each fact stands.

    Attributes:
        rests: words beside facts that a digest does not keep.
    """

    title: str | None = None
    author: str | None = None
    isbn: str | None = None
    pages: int | None = None
    finished_on: date | None = None
    notices: list[Notice] = field(default_factory=list)
    rests: list[str] = field(default_factory=list)

    def take_line(self, text: str) -> str:
        """Take the facts out of a line, and return the words that are left of it.

        Prose stays whole, unless it opens with a fact or gives several.
        """
        if len(text) > _MAX_LINE or (is_prose(text) and not _gives_facts(text)):
            return text
        pieces = _pieces(text)
        left = [self._take_piece(piece) for piece in pieces]
        return text if left == pieces else "\n".join(piece for piece in left if piece)

    def take_within(self, text: str, part: Part) -> str:
        """Take the lines of facts out of a paragraph of a part, and return the other lines.

        There a line has to open with the label of a fact, and the fact has to follow;
        `Pages:` among quotations is a locator.
        """
        kept = []
        for line in text.split("\n"):
            if opens_with_fact(line, part):
                self.rests += filter(None, map(self._take_piece, _pieces(line)))
            else:
                kept.append(line)
        return "\n".join(kept)

    def take_row(self, text: str) -> str:
        """Take the facts of a table row whose cells are names and values by turns."""
        cells = text.split("\t")
        while len(cells) > 1 and self._take_cells(cells[0], cells[1]):
            cells = cells[2:]
        if len(cells) == 1 and len(text.split("\t")) > 1:
            self._rest(cells[0])
            return ""
        return self.take_line("\t".join(cells)) if cells else ""

    def take(self, fact: Fact, value: str) -> bool:
        """Take the value of one fact, and tell whether it could be understood as such."""
        value = flowing(value)
        match fact:
            case Fact.TITLE:
                self._take_name(fact, value)
            case Fact.AUTHOR:
                self._take_name(fact, self._take_figures(value) or value)
            case Fact.ISBN:
                return self._take_isbn(value, labelled=True) is not None
            case Fact.PAGES:
                return self._take_pages(value, labelled=True) is not None
            case Fact.FINISHED:
                return self._take_finished(value, labelled=True) is not None
        return True

    def take_properties(self, properties: Mapping[str, str], *, typed: bool) -> None:
        """Take the facts a document's own properties give.

        Args:
            properties: of the document, title and author apart.
            typed: whether the reader typed them, and is told of what is not kept.
        """
        for key, value in properties.items():
            fact = fact_label(key.replace("_", " ").replace("-", " "))
            taken = fact is not None and (typed or fact in _FIGURES) and self.take(fact, value)
            if typed and not taken:
                self.rests.append(f"{key}: {value}")

    def told(self) -> list[Notice]:
        """Return what to tell the reader of the facts, and of the words beside them."""
        if not self.rests:
            return list(self.notices)
        words = ", ".join(f"“{excerpt(rest)}”" for rest in self.rests[:MAX_RESTS])
        more = len(self.rests) - MAX_RESTS
        words += f" and {more} more" if more > 0 else ""
        said = f"What stands beside the facts of the book is not kept: {words}."
        return [*self.notices, Notice("document", said)]

    def _take_piece(self, piece: str) -> str:
        for label, value in label_split(piece):
            fact = fact_label(label)
            if fact is not None and self.take(fact, value):
                return ""
            if is_detail_label(label):
                left = self._take_figures(value)
                self.rests += [piece if left == value else left] if left else []
                return ""
        return self._take_figures(piece)

    def _take_cells(self, label: str, value: str) -> bool:
        fact = fact_label(label.rstrip(":"))
        if fact is not None:
            return self.take(fact, value)
        left = self._take_figures(flowing(value)) if is_detail_label(label.rstrip(":")) else value
        if left == value:
            return False
        self.rests += [left] if left else []
        return True

    def _take_figures(self, text: str) -> str:
        """Take the facts that need no label out of words, and return what is left of them."""
        for taken in (self._take_isbn, self._take_finished, self._take_pages):
            left = taken(text)
            text = text if left is None else left
        return text

    def _rest(self, text: str) -> None:
        """Take the facts in words that stand behind another, and keep the rest to be told."""
        left = "" if idle(text) else self._take_figures(text)
        self.rests += [left] if left else []

    def _take_name(self, fact: Fact, value: str) -> None:
        known = self.title if fact is Fact.TITLE else self.author
        if known is not None and folded(known) != folded(value):
            self._also(fact, value, f"“{excerpt(known, 60)}”")
        elif fact is Fact.TITLE:
            self.title = known or value
        else:
            self.author = known or value

    def _take_isbn(self, text: str, *, labelled: bool = False) -> str | None:
        found = isbn_off(text, labelled=labelled)
        if found is None:
            return None
        if self.isbn is None:
            self.isbn = compact(found.written)[:40]
            if not is_isbn(self.isbn):
                self.notices.append(
                    Notice(
                        "isbn",
                        f"“{excerpt(found.written, 40)}” is not a valid ISBN: its check digit does "
                        "not agree. It is kept as written; look at the book's back cover.",
                    )
                )
        elif compact(found.written)[-10:-1] != self.isbn[-10:-1]:
            self._also(Fact.ISBN, found.written, self.isbn)
        return self._left(found.rest, labelled=labelled)

    def _take_pages(self, text: str, *, labelled: bool = False) -> str | None:
        found = pages_off(text, labelled=labelled)
        if found is None:
            return None
        if not 1 <= found.number <= MAX_PAGES:
            said = f"{found.number} is not a number of pages a book can have; none is kept."
            self.notices.append(Notice("pages", said))
        elif self.pages is not None and self.pages != found.number:
            self._also(Fact.PAGES, str(found.number), str(self.pages))
        else:
            self.pages = found.number
        return self._left(found.rest, labelled=labelled)

    def _take_finished(self, text: str, *, labelled: bool = False) -> str | None:
        found = finished_off(text, labelled=labelled)
        if found is None:
            return None
        day = found.day.day
        if day is None:
            self.notices.append(
                Notice(
                    "finished_on",
                    f"“{excerpt(found.words, 40)}” does not say on which day the book was "
                    "finished. Write the date as 2025-05-12.",
                )
            )
        elif self.finished_on is not None and self.finished_on != day:
            self._also(Fact.FINISHED, found.words, self.finished_on.isoformat())
        else:
            self.finished_on = day
        return self._left(found.rest, labelled=labelled)

    def _left(self, rest: str, *, labelled: bool) -> str:
        if labelled:
            self._rest(rest)
        return rest

    def _also(self, fact: Fact, value: str, known: str) -> None:
        name = {Fact.FINISHED: "day", Fact.ISBN: "ISBN", Fact.PAGES: "number of pages"}
        what = name.get(fact, fact.value)
        said = f"“{excerpt(value, 60)}” is also given as the {what}; {known} stands."
        self.notices.append(Notice(fact.value, said))


def _pieces(text: str) -> list[str]:
    """Part a line where a sign or another label parts its facts."""
    pieces = []
    for stretch in _PIECES.split(text):
        start = 0
        for found in _NEXT_LABEL.finditer(stretch):
            if fact_label(found[1]) is not None or is_detail_label(found[1]):
                pieces.append(stretch[start : found.start()])
                start = found.end()
        pieces.append(stretch[start:])
    return pieces


def _gives_facts(text: str) -> bool:
    """Tell whether a line that is as long as prose is there for its facts."""
    if opens_with_fact(text):
        return True
    left = text
    taken = []
    for off in (isbn_off, finished_off, pages_off):
        found = off(left)
        if found is not None:
            left = found.rest
            taken.append(off)
    leads = isbn_off in taken or fact_leads(text) or len(left.split()) <= _FEW_WORDS
    return leads and len(taken) > 1 and not is_prose(left)


def opens_with_fact(line: str, part: Part | None = None) -> bool:
    """Tell whether a line is the label of a fact with its value right behind."""
    for label, value in label_split(line[:_MAX_LINE]):
        fact = fact_label(label)
        if part is Part.COMMITMENTS and folded(label) in _DEEDS:
            continue
        if fact is Fact.FINISHED and (found := finished_off(value, labelled=True)) is not None:
            return idle(value[: found.day.start])
        if fact is Fact.PAGES and part is not Part.QUOTATIONS:
            return pages_off(value[:12], labelled=True) is not None
        if fact is Fact.ISBN:
            return isbn_off(value[:30], labelled=True) is not None
    return False
