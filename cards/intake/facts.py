"""The facts of a book in a digest's lines: ISBN, pages, when it was finished, title, author."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from itertools import takewhile

from cards.digest import MAX_EDITION, MAX_PAGES, Notice
from cards.intake.blocks import Block
from cards.intake.fact_lines import MAX_LINE, gives_facts, opens_with_fact, pieces_of
from cards.intake.heading_words import Part
from cards.intake.imprint import (
    detail,
    is_imprint,
    is_imprint_name,
    may_be_of_imprint,
    unbracketed,
)
from cards.intake.isbn import compact, is_isbn
from cards.intake.labels import Fact, fact_label, is_detail_label, label_split, names_both
from cards.intake.title import is_prose, named_in
from cards.intake.traces import lines_apart, together
from cards.intake.values import finished_off, idle, isbn_off, pages_off
from cards.intake.wording import excerpt, flowing, folded

MAX_RESTS = 20
"""Words left beside facts that are told of one by one."""
_FIGURES = frozenset({Fact.FINISHED, Fact.ISBN, Fact.PAGES})


@dataclass(slots=True)
class Facts:
    """What is known of the book so far. The first word on each fact stands.

    Attributes:
        makers: what is said of the edition: publisher, year, number, translator.
        rests: words beside facts that a digest does not keep, and the lines they stand on.
        found: for each fact, the lines of the document that gave it.
        outside: for each fact, the words beside the text that gave it.
        at: the lines that are being read.
        day_first: whether figures such as `3/4/2025` begin with the day.
    """

    title: str | None = None
    author: str | None = None
    makers: list[str] = field(default_factory=list)
    isbn: str | None = None
    pages: int | None = None
    finished_on: date | None = None
    notices: list[Notice] = field(default_factory=list)
    rests: list[tuple[str, tuple[int, ...]]] = field(default_factory=list)
    found: dict[Fact, list[int]] = field(default_factory=dict)
    outside: dict[Fact, list[str]] = field(default_factory=dict)
    at: tuple[int, ...] = ()
    day_first: bool = False

    @property
    def edition(self) -> str | None:
        """The edition in words, or None when nothing is said of it."""
        return ", ".join(dict.fromkeys(self.makers))[:MAX_EDITION].strip(" ,") or None

    def read(self, fact: Fact, origins: tuple[int, ...] | None = None) -> None:
        """Record that a fact was read from these lines, or else from those being read."""
        self.found.setdefault(fact, []).extend(self.at if origins is None else origins)

    def rest(self, words: str) -> None:
        """Keep words beside the facts: those of the edition as such, others to be told of."""
        if is_imprint(words) or (self.at and is_imprint_name(words) and len(words.split()) == 1):
            self.take(Fact.EDITION, words)
        else:
            self.rests.append((words, self.at))

    def beside(self, words: str) -> None:
        """Keep words left of a line of facts: a publisher's name as the edition."""
        pieces = unbracketed(words).split(", ")
        made = sum(1 for _ in takewhile(may_be_of_imprint, pieces))
        if 0 < made < len(pieces) and is_imprint(", ".join(pieces[:made])):
            self.take(Fact.EDITION, ", ".join(pieces[:made]))
            self.beside(", ".join(pieces[made:]))
        elif is_imprint_name(words) and finished_off(words) is None:
            self.take(Fact.EDITION, words)
        else:
            self.rest(words)

    def take_line(self, text: str) -> str:
        """Take the facts out of a line, and return the words that are left of it.

        Prose stays whole, unless it opens with a fact or gives several.
        """
        if len(text) > MAX_LINE or (is_prose(text) and not gives_facts(text)):
            return text
        pieces = pieces_of(text)
        left = [self._take_piece(piece) for piece in pieces]
        if left == pieces:
            return text
        return "\n".join(piece for piece in left if piece and not self._take_bare_day(piece))

    def take_within(self, block: Block, part: Part) -> Block | None:
        """Take the lines of facts out of a paragraph of a part, and return its other lines.

        There a line has to open with the label of a fact, and the fact has to follow;
        `Pages:` among quotations is a locator.
        """
        kept = []
        for line in lines_apart(block):
            if opens_with_fact(line.text, part):
                self.at = line.origins
                for left in filter(None, map(self._take_piece, pieces_of(line.text))):
                    self.rest(left)
            else:
                kept.append(line)
        return together(kept) if kept else None

    def take_row(self, text: str) -> str:
        """Take the facts of a table row whose cells are names and values by turns."""
        cells = text.split("\t")
        while len(cells) > 1 and self._take_cells(cells[0], cells[1]):
            cells = cells[2:]
        if len(cells) == 1 and len(text.split("\t")) > 1:
            self._beside(cells[0])
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
            case Fact.EDITION:
                self.makers.append(unbracketed(value))
                self.read(fact)
            case Fact.ISBN:
                return self._take_isbn(value, labelled=True) is not None
            case Fact.PAGES:
                return self._take_pages(value, labelled=True) is not None
            case Fact.FINISHED:
                return self._take_finished(value, labelled=True) is not None
        return True

    def take_labelled(self, fact: Fact, label: str, value: str) -> bool:
        """Take the value behind a label; one label may stand before title and author in one."""
        if not names_both(label):
            return self.take(fact, value)
        named = named_in(value)
        if named.author is not None:
            self.take(Fact.AUTHOR, named.author)
        return self.take(Fact.TITLE, named.title)

    def take_properties(self, properties: Mapping[str, str], *, typed: bool) -> None:
        """Take the facts a document's own properties give.

        Args:
            properties: of the document, title and author apart.
            typed: whether the reader typed them, and is told of what is not kept.
        """
        self.at = ()
        for key, value in properties.items():
            label = key.replace("_", " ").replace("-", " ")
            fact, said = fact_label(label), value
            if fact is None and typed and is_detail_label(label):
                fact, said = Fact.EDITION, detail(label, value)
            taken = fact is not None and (typed or fact in _FIGURES) and self.take(fact, said)
            if taken and fact is not None:
                self.outside.setdefault(fact, []).append(f"{key}: {value}")
            elif typed:
                self.rests.append((f"{key}: {value}", ()))

    def told(self) -> list[Notice]:
        """Return what to tell the reader of the facts, and of the words beside them."""
        if not self.rests:
            return list(self.notices)
        words = ", ".join(f"“{excerpt(rest)}”" for rest, _ in self.rests[:MAX_RESTS])
        more = len(self.rests) - MAX_RESTS
        words += f" and {more} more" if more > 0 else ""
        said = f"What stands beside the facts of the book is not kept: {words}."
        return [*self.notices, Notice("document", said)]

    def _take_piece(self, piece: str) -> str:
        for label, value in label_split(piece):
            fact = fact_label(label)
            if fact is not None and self.take_labelled(fact, label, value):
                return ""
            if is_detail_label(label):
                self._take_detail(label, value)
                return ""
        return self._take_figures(piece)

    def _take_cells(self, label: str, value: str) -> bool:
        label = label.rstrip(":")
        fact = fact_label(label)
        if fact is not None:
            return self.take_labelled(fact, label, value)
        if not is_detail_label(label):
            return False
        self._take_detail(label, flowing(value))
        return True

    def _take_detail(self, label: str, value: str) -> None:
        left = self._take_figures(value)
        if left:
            self.take(Fact.EDITION, detail(label, left))

    def _take_figures(self, text: str) -> str:
        """Take the facts that need no label out of words, and return what is left of them."""
        for taken in (self._take_isbn, self._take_finished, self._take_pages):
            left = taken(text)
            text = text if left is None else left
        return text

    def _beside(self, text: str) -> None:
        """Take the facts in words that stand behind another, and keep the rest to be told."""
        left = "" if idle(text) else self._take_piece(text)
        if left:
            self.rest(left)

    def _take_name(self, fact: Fact, value: str) -> None:
        self.read(fact)
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
        self.read(Fact.ISBN)
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
        self.read(Fact.PAGES)
        if not 1 <= found.number <= MAX_PAGES:
            said = f"{found.number} is not a number of pages a book can have; none is kept."
            self.notices.append(Notice("pages", said))
        elif self.pages is not None and self.pages != found.number:
            self._also(Fact.PAGES, str(found.number), str(self.pages))
        else:
            self.pages = found.number
        return self._left(found.rest, labelled=labelled)

    def _take_finished(self, text: str, *, labelled: bool = False) -> str | None:
        found = finished_off(text, labelled=labelled, day_first=self.day_first)
        if found is None:
            return None
        self.read(Fact.FINISHED)
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

    def _take_bare_day(self, words: str) -> bool:
        """Take a day that nothing but other facts stands beside; it says when, as a label would."""
        found = finished_off(words, labelled=True, day_first=self.day_first)
        if self.finished_on is not None or found is None or found.day.day is None or found.rest:
            return False
        return self.take(Fact.FINISHED, words)

    def _left(self, rest: str, *, labelled: bool) -> str:
        if labelled:
            self._beside(rest)
        return rest

    def _also(self, fact: Fact, value: str, known: str) -> None:
        name = {Fact.FINISHED: "day", Fact.ISBN: "ISBN", Fact.PAGES: "number of pages"}
        what = name.get(fact, fact.value)
        said = f"“{excerpt(value, 60)}” is also given as the {what}; {known} stands."
        self.notices.append(Notice(fact.value, said))
