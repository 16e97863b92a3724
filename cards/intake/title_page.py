"""The top of a digest: its title page, the facts on it, and words that have no heading."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from cards.digest import MAX_TITLE, Notice
from cards.intake.blocks import Block, Document, Shape
from cards.intake.dates import date_in
from cards.intake.facts import Facts, opens_with_fact
from cards.intake.imprint import is_imprint, names_makers
from cards.intake.labels import Fact, fact_label
from cards.intake.title import (
    author_line,
    is_generic,
    is_prose,
    named_in,
    named_in_file_name,
    title_block,
    worth_trusting,
)
from cards.intake.values import fact_leads
from cards.intake.wording import excerpt, flowing, folded, tidied

_DELIBERATE = (".md", ".markdown", ".txt", ".text")
"""Endings of files whose properties are front matter, typed by hand over the digest."""
_MAX_DATE_WORDS = 5
_LAST_BRACKET = re.compile(r"\s*\(([^()]*)\)\s*$")


@dataclass(slots=True)
class TitlePage:
    """What the top of a document says.

    Attributes:
        facts: of the book, gathered here and later from the sections.
        prose: paragraphs under no heading.
        left: blocks that say nothing known.
        notices: about title and author.
        title: of the book; "" until it is known.
        beside: what was left of lines that gave facts.
    """

    facts: Facts
    prose: list[str] = field(default_factory=list)
    left: list[Block] = field(default_factory=list)
    notices: list[Notice] = field(default_factory=list)
    title: str = ""
    beside: set[str] = field(default_factory=set)

    def read(self, front: Sequence[Block], document: Document) -> None:
        """Read the blocks before the first part."""
        properties = {key: tidied(value) for key, value in document.properties.items()}
        typed = document.name.lower().endswith(_DELIBERATE)
        if typed:
            self.facts.title = flowing(properties.get("title", "")) or None
            self.facts.author = flowing(properties.get("author", "")) or None
        blocks = self._without_facts(front)
        self._find_title(blocks)
        self.title = self.facts.title or ""
        others = {key: properties[key] for key in properties if key not in {"title", "author"}}
        self.facts.take_properties(others, typed=typed)

    def settle(self, document: Document) -> None:
        """Fall back on what the file says of itself, once the whole document was read."""
        self.title = self.facts.title or ""
        own = flowing(tidied(document.properties.get("title", "")))
        if not self.title and worth_trusting(own):
            named = named_in(own)
            self.title = named.title
            self.facts.author = self.facts.author or named.author
        if not self.title:
            self._from_file_name(document.name)
        author = flowing(tidied(document.properties.get("author", "")))
        if self.facts.author is None and author and folded(own) == folded(self.title):
            self.facts.author = author
        if self.facts.author is not None:
            self.facts.author = self.facts.author[:MAX_TITLE].strip() or None
        if self.facts.author is None:
            self.notices.append(
                Notice("author", "No author was found. Put “by” and the name under the title.")
            )

    def _without_facts(self, front: Sequence[Block]) -> list[Block]:
        """Return the blocks with the lines of facts taken out."""
        blocks: list[Block] = []
        index = 0
        while index < len(front):
            block = front[index]
            fact = fact_label(block.text.rstrip(":"))
            following = front[index + 1] if index + 1 < len(front) else None
            names = block.strong or block.shape is Shape.HEADING or block.text.endswith(":")
            follows = fact is not None and names and following is not None
            if follows and fact is not None and self.facts.take(fact, front[index + 1].text):
                index += 2
                continue
            left = without_facts(block, self.facts)
            if left != [block]:
                self.beside.update(
                    one.text for one in left if one.text not in block.text.split("\n")
                )
            blocks += left
            index += 1
        return blocks

    def _find_title(self, blocks: list[Block]) -> None:
        at = title_block(blocks)
        for index, block in enumerate(blocks):
            if index == at:
                self._take_title(block)
            elif is_generic(block.text) or folded(block.text) == folded(self.facts.title or ""):
                continue
            elif block.shape is Shape.PARAGRAPH and is_imprint(block.text):
                self.facts.rests.append(block.text)
            elif block.shape is Shape.PARAGRAPH and is_prose(block.text) and not block.strong:
                self.prose.append(flowing(block.text))
            elif not self._take_by_line(block, 0 if at is None else index - at):
                self._leave(block)

    def _take_title(self, block: Block) -> None:
        first, _, rest = block.text.partition("\n")
        maker = _LAST_BRACKET.search(first)
        if maker is not None and maker.start() and names_makers(maker[1]):
            self.facts.rests.append(maker[1])
            first = first[: maker.start()]
        named = named_in(first)
        known = self.facts.title
        if known is not None and folded(known) != folded(named.title):
            if not self._take_by_line(block, 1):
                self._leave(block)
            return
        self.facts.title = known or named.title or None
        if named.author is not None:
            self.facts.take(Fact.AUTHOR, named.author)
        for line in filter(None, rest.split("\n")):
            if not self._take_by_line(replace(block, text=line), 1):
                self._leave(replace(block, text=line))

    def _take_by_line(self, block: Block, below: int) -> bool:
        """Take an author's line, or a subtitle, so many lines below the title; tell whether."""
        style = block.style.lower()
        author = (
            flowing(block.text)
            if style == "author"
            else author_line(block.text, right_under=below == 1 and block.text not in self.beside)
        )
        if author is not None and folded(author) == folded(self.facts.author or ""):
            return True
        if author is not None and self.facts.author is None and (below > 0 or style == "author"):
            self.facts.author = author
            return True
        if style in {"subtitle", "untertitel"} and self.facts.title is not None:
            self.facts.title = f"{self.facts.title}: {flowing(block.text)}"
            return True
        return False

    def _leave(self, block: Block) -> None:
        written = date_in(block.text) if len(block.text.split()) <= _MAX_DATE_WORDS else None
        if written is not None and written.day is not None and self.facts.finished_on is None:
            self.notices.append(
                Notice(
                    "finished_on",
                    f"“{excerpt(block.text)}” stands at the top. If you finished the book that "
                    "day, put “Finished:” before it.",
                )
            )
            return
        if block.text in self.beside:
            self.facts.rests.append(block.text)
        else:
            self.left.append(block)

    def _from_file_name(self, name: str) -> None:
        stem = name.rpartition(".")[0] or name
        named = named_in_file_name(" ".join(stem.replace("_", " ").split()))
        self.title = (tidied(named.title) or "Untitled")[:MAX_TITLE]
        whose = ""
        if self.facts.author is None and named.author is not None:
            self.facts.author = named.author
            whose = f" by {excerpt(named.author)}"
        self.notices.append(
            Notice(
                "title",
                f"No title was found, so the file's name stands for it: “{self.title}”{whose}. Put "
                "the title at the top of the digest.",
            )
        )


def without_facts(block: Block, facts: Facts) -> list[Block]:
    """Take the facts out of a block that is in no part, and return what is left of it.

    A paragraph that gave facts is parted into its lines.
    """
    match block.shape:
        case Shape.QUOTE:
            return [block]
        case Shape.ROW | Shape.ITEM:
            text = facts.take_row(block.text)
            return [replace(block, text=text)] if text else []
        case _:
            lines = block.text.split("\n")
            prose = len(lines) > 1 and is_prose(block.text) and not _is_title_page(lines)
            left = [
                line if prose and not opens_with_fact(line) else facts.take_line(line)
                for line in lines
            ]
            if left == lines:
                return [block]
            return [replace(block, text=line) for line in "\n".join(left).split("\n") if line]


def _is_title_page(lines: Sequence[str]) -> bool:
    """Tell whether short lines, one of which gives a fact, are a title page and no prose."""
    short = not any(map(is_prose, lines))
    opening = not any(line[0].islower() and not line.startswith("by ") for line in lines)
    return short and opening and any(opens_with_fact(line) or fact_leads(line) for line in lines)
