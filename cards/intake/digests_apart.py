"""Several digests in one document, told apart by their title pages.

A new digest begins where a title page stands after parts of a digest, and parts follow it. A
heading alone is a title page only where the first digest's was no more, and where the parts
start over below it: so a chapter's name, or a part headed twice, begins nothing.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import islice, pairwise

from cards.intake.blocks import Block, Document, Shape
from cards.intake.entries import place_in_heading
from cards.intake.fact_lines import MAX_LINE, only_facts, opens_with_fact
from cards.intake.generic_titles import is_generic
from cards.intake.heading_words import HeadingWords, Part
from cards.intake.imprint import is_imprint
from cards.intake.labels import Fact, fact_label, label_split
from cards.intake.outline import outline
from cards.intake.quotation_text import looks_quoted
from cards.intake.sections import Section
from cards.intake.title import (
    TITLE_STYLES,
    author_line,
    is_prose,
    named_in,
    says_by,
)
from cards.intake.values import fact_leads, isbn_off
from cards.intake.wording import marker_of

_MAX_PAGE = 12
"""Lines of a title page between a title that is a mere line and the first part."""
_OWN = frozenset({"title", "author", "header", "footer"})


@dataclass(frozen=True, slots=True)
class Stretch:
    """The lines of one digest.

    Attributes:
        lines: of the digest.
        document: with the properties that are its own.
        before: lines in front of all digests that belong to none.
    """

    lines: tuple[Block, ...]
    document: Document
    before: tuple[Block, ...] = ()


def digests_apart(
    lines: Sequence[Block], document: Document, words: HeadingWords
) -> tuple[Stretch, ...]:
    """Return the lines of each digest of a document, in order."""
    search = _Search(lines, outline(lines, words).sections)
    starts = search.starts()
    if not starts:
        return (Stretch(tuple(lines), document),)
    begin = search.begin(starts)
    first = replace(document, properties=search.properties(document, begin, starts[0]))
    other = replace(document, properties={})
    bounds = [begin, *starts, len(lines)]
    lines = _uncounted(lines, bounds[:-1])
    return tuple(
        Stretch(
            tuple(lines[start:end]),
            other if number else first,
            () if number else tuple(lines[:begin]),
        )
        for number, (start, end) in enumerate(pairwise(bounds))
    )


def _uncounted(lines: Sequence[Block], starts: Sequence[int]) -> list[Block]:
    """Return the lines with the numbers taken off titles that are counted: `2. Emma`."""
    markers = [marker_of(lines[at].text) for at in starts]
    numbers = [None if one is None else one.readings.get("digit") for one in markers]
    kept = list(lines)
    if numbers == list(range(1, len(numbers) + 1)):
        for at, marker in zip(starts, markers, strict=True):
            if marker is not None and marker.rest:
                kept[at] = replace(lines[at], text=marker.rest)
    return kept


class _Search:
    """Where title pages stand among the lines of a document."""

    def __init__(self, lines: Sequence[Block], sections: Sequence[Section]) -> None:
        self.lines = lines
        self.parts = [section for section in sections if section.part is not None]
        self.unknown = {section.at: section for section in sections if section.part is None}
        self.first = self.parts[0].at if self.parts else len(lines)
        front = lines[: self.first]
        self.levels = {block.level for block in front if block.shape is Shape.HEADING}
        self.labelled = any(map(_titles, front))
        self.titled = _names_someone(front)
        self.lined = any(_is_line(block) and _by_in(block) for block in front[:3])

    def starts(self) -> list[int]:
        """Return where each digest after the first begins."""
        sure = list(self._accepted(weak=not self.titled))
        found = list(self._accepted(weak=True)) if sure and self.titled else sure
        return [self._from_above(at) for at in found]

    def _accepted(self, *, weak: bool) -> Iterator[int]:
        begun: set[Part] = set()
        upcoming = iter([*self.parts, None])
        section = next(upcoming)
        for at in range(self.first, len(self.lines)):
            while section is not None and section.at < at:
                if section.part is not None:
                    begun.add(section.part)
                section = next(upcoming)
            if section is None:
                return
            if section.at != at and begun and self._begins(at, section, begun, weak=weak):
                begun = set()
                yield at

    def _begins(self, at: int, following: Section, begun: set[Part], *, weak: bool) -> bool:
        """Tell whether a title page begins at a line that announces no part."""
        block = self.lines[at]
        again = following.part in begun
        if _titles(block):
            return self.labelled or (again and _names_someone(self.lines[at : following.at]))
        if block.style.lower() in TITLE_STYLES:
            return True
        if block.shape is Shape.HEADING:
            return self._heads(at, following, again=again, weak=weak)
        if not again or not _is_line(block) or following.at - at > _MAX_PAGE:
            return False
        page = self.lines[at + 1 : following.at]
        if not all(map(_on_title_page, page)):
            return False
        told = bool(page) and says_by(page[0].text)
        inside = _by_in(block) and (self.lined or block.strong or block.text.isupper())
        under = block.text.partition("\n")[2]
        facts = any(map(_gives, (line for one in page for line in one.text.split("\n"))))
        below = under or (page[0].text if page else "")
        named = bool(below) and author_line(below.partition("\n")[0]) is not None
        explicit = says_by(under) or (named and facts)
        return told or inside or explicit

    def _heads(self, at: int, following: Section, *, again: bool, weak: bool) -> bool:
        block = self.lines[at]
        if is_generic(block.text) or place_in_heading(block.text) is not None or _factual(block):
            return False
        level = following.level or block.level + 1
        if (self.levels and block.level not in self.levels) or block.level > level:
            return False
        page = self.lines[at : following.at]
        named = _names_someone(page)
        if block.level < level:
            return named or (weak and again)
        return named and again

    def _from_above(self, at: int) -> int:
        """Return where a title page begins, with what stands over its title."""
        while at > self.first and self._goes_over(at - 1):
            at -= 1
        return at

    def _goes_over(self, at: int) -> bool:
        block = self.lines[at]
        author = any(fact_label(label) is Fact.AUTHOR for label, _ in label_split(block.text))
        heads = block.shape is Shape.HEADING and at in self.unknown
        return author or (is_generic(block.text) and block.shape is not Shape.ITEM) or heads

    def begin(self, starts: Sequence[int]) -> int:
        """Return where the first digest begins: past a heading over all of them."""
        levels = {self.lines[at].level for at in starts if self.lines[at].shape is Shape.HEADING}
        if len(levels) != 1:
            return 0
        level = levels.pop()
        heads = [at for at in range(self.first) if self.lines[at].shape is Shape.HEADING]
        own = next((at for at in heads if self.lines[at].level == level), 0)
        over = any(self.lines[at].level < level for at in heads if at < own)
        return own if over else 0

    def properties(self, document: Document, begin: int, end: int) -> dict[str, str]:
        """Return the document's properties as far as they are of its first digest."""
        front = self.lines[begin : min(self.first, end)]
        own = any(block.shape is Shape.HEADING or _titles(block) for block in front)
        kept = document.properties.items()
        return {key: value for key, value in kept if not (own and key in _OWN)}


def _titles(block: Block) -> bool:
    """Tell whether a line is the label of a title: `Title: Emma`."""
    if block.shape is Shape.QUOTE:
        return False
    if block.shape is Shape.ROW:
        label, _, value = block.text.partition("\t")
        return fact_label(label.rstrip(":")) is Fact.TITLE and bool(value.strip())
    names = block.strong or block.shape is Shape.HEADING or block.text.endswith(":")
    if names and fact_label(block.text.rstrip(":")) is Fact.TITLE:
        return True
    return any(fact_label(label) is Fact.TITLE for label, _ in _labels(block.text))


def _factual(block: Block) -> bool:
    """Tell whether a line gives a fact of the book and is no title."""
    labels = (fact_label(label) for label, _ in _labels(block.text))
    named = fact_label(block.text.rstrip(":")) is not None
    return named or only_facts(block.text) or any(labels) or fact_leads(block.text)


def _labels(text: str) -> Iterator[tuple[str, str]]:
    """Yield the labels of a line that are ended by a colon."""
    return ((label, rest) for label, rest in label_split(text) if text[: len(label) + 8].count(":"))


def _names_someone(page: Iterable[Block]) -> bool:
    """Tell whether a title page gives an author or a fact of the book."""
    for number, block in enumerate(islice(page, _MAX_PAGE)):
        if block.shape is Shape.QUOTE or looks_quoted(block.text):
            continue
        text = block.text
        label = text.partition("\t")[0].rstrip(":") if block.shape is Shape.ROW else ""
        labels = (label, *(label for label, _ in _labels(text)))
        if any(fact_label(label) is not None for label in labels):
            return True
        first = text.partition("\n")[0]
        under = number == 1 and block.shape is Shape.PARAGRAPH and not is_prose(text)
        if (
            (number == 0 and named_in(first).author is not None)
            or any(map(_gives, text.split("\n")[:_MAX_PAGE]))
            or (under and author_line(first, right_under=True) is not None)
        ):
            return True
    return False


def _gives(line: str) -> bool:
    """Tell whether a line gives an author, or a fact of the book, in so many words."""
    if says_by(line) or opens_with_fact(line) or fact_leads(line):
        return True
    return isbn_off(line[:MAX_LINE]) is not None


def _is_line(block: Block) -> bool:
    """Tell whether a paragraph is a line that may be a title."""
    return (
        block.shape is Shape.PARAGRAPH
        and not is_prose(block.text.partition("\n")[0])
        and not looks_quoted(block.text)
        and not says_by(block.text)
        and not opens_with_fact(block.text)
    )


def _by_in(block: Block) -> bool:
    """Tell whether a title line gives its author too."""
    return named_in(block.text.partition("\n")[0]).author is not None


def _on_title_page(block: Block) -> bool:
    if block.shape is Shape.QUOTE or looks_quoted(block.text):
        return False
    lines = block.text.split("\n")
    return all(
        _gives(line) or is_imprint(line) or author_line(line, right_under=True) is not None
        for line in lines
    )
