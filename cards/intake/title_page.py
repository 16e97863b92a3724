"""The top of a digest: its title page, the facts on it, and words that have no heading."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from cards.digest import Notice
from cards.intake.blocks import Block, Document, Shape
from cards.intake.dates import date_in
from cards.intake.fact_lines import only_facts
from cards.intake.facts import Facts
from cards.intake.front_facts import without_facts
from cards.intake.generic_titles import is_generic
from cards.intake.imprint import is_imprint, is_publisher, names_makers
from cards.intake.known_authors import is_known_author, is_known_surname
from cards.intake.labels import Fact, fact_label
from cards.intake.page_lines import (
    LAST_BRACKET,
    SUBTITLE_STYLES,
    is_of_edition,
    labelled,
    made_behind,
    may_title,
)
from cards.intake.title import (
    Named,
    author_line,
    is_full_name,
    is_name,
    is_prose,
    may_open_title,
    named_in,
    title_block,
)
from cards.intake.traces import lines_apart, origins_of
from cards.intake.wording import excerpt, flowing, folded, tidied

_DELIBERATE = (".md", ".markdown", ".txt", ".text")
"""Endings of files whose properties are front matter, typed by hand over the digest."""
_NAMES = frozenset({"title", "author", "header", "footer"})
_MAX_DATE_WORDS = 5
_MAKERS_BEHIND = re.compile(
    r"(?:[,;(]|\s[–—|·-])\s*((?:with |transl?(?:ated|ation)?\b|tr\b|eds?\b|edited|illustrated|"
    r"hrsg\b|übers|aus "
    r"dem|"
    r"traduit|traducid|tradott|traduzid|vertaald)[^\n]{2,80})$",
    re.IGNORECASE,
)


@dataclass(slots=True)
class TitlePage:
    """What the top of a document says.

    Attributes:
        facts: of the book, gathered here and later from the sections.
        prose: paragraphs under no heading.
        generic: blocks that say only that a digest follows.
        left: blocks that say nothing known.
        dated: blocks left that are told of as dates.
        notices: about title and author.
        title: of the book; "" until it is known.
        beside: what was left of lines that gave facts.
    """

    facts: Facts
    prose: list[Block] = field(default_factory=list)
    generic: list[Block] = field(default_factory=list)
    left: list[Block] = field(default_factory=list)
    dated: list[Block] = field(default_factory=list)
    notices: list[Notice] = field(default_factory=list)
    title: str = ""
    beside: set[str] = field(default_factory=set)

    def read(self, front: Sequence[Block], document: Document, level: int = 0) -> None:
        """Read the blocks before the first part; the headings of parts are of this level."""
        properties = {key: tidied(value) for key, value in document.properties.items()}
        typed = document.name.lower().endswith(_DELIBERATE)
        if typed:
            self.facts.title = _property(properties, Fact.TITLE)
            self.facts.author = _property(properties, Fact.AUTHOR)
            for fact, name in ((Fact.TITLE, self.facts.title), (Fact.AUTHOR, self.facts.author)):
                if name is not None:
                    self.facts.outside[fact] = [f"{fact.value}: {name}"]
        blocks = self._without_facts(front)
        self._find_title(blocks, level)
        self.title = self.facts.title or ""
        named = {self.facts.title, self.facts.author} if typed else set()
        others = {
            key: said
            for key, said in properties.items()
            if key not in _NAMES and not (flowing(said) in named and fact_label(key) is not None)
        }
        self.facts.take_properties(others, typed=typed)

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
            if following is not None and labelled(following.text):
                follows = False
            if fact is Fact.TITLE and following is not None and only_facts(following.text):
                follows = False
            if follows and fact is not None and following is not None:
                self.facts.at = origins_of([block, following])
                if self.facts.take(fact, following.text):
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

    def _find_title(self, blocks: list[Block], level: int) -> None:
        at = title_block(blocks, level)
        if at is not None:
            self._take_title(blocks[at], blocks[at + 1 : at + 3])
        for index, block in enumerate(blocks):
            if index == at:
                continue
            if is_generic(block.text):
                self.generic.append(block)
            elif folded(block.text) == folded(self.facts.title or ""):
                self.facts.read(Fact.TITLE, block.origins)
            elif block.shape is Shape.PARAGRAPH and self._is_imprint(block):
                self.facts.at = block.origins
                self.facts.beside(block.text)
            elif block.shape is Shape.PARAGRAPH and is_prose(block.text) and not block.strong:
                self.prose.append(block)
            elif not self._take_by_line(block, 0 if at is None else index - at):
                self._leave(block)
        self._turn()

    def _is_imprint(self, block: Block) -> bool:
        """Tell whether a line names a publisher: in so many words, or alone beside facts."""
        made = made_behind(block.text)
        if made is not None and self.facts.author is None and is_full_name(made[0]):
            return is_imprint(made[0])
        return is_imprint(block.text) or (block.text in self.beside and is_publisher(block.text))

    def _turn(self) -> None:
        """Take a title that is a name, over a line that is none, as the author over the title."""
        title, author = self.facts.title, self.facts.author
        lines = self.facts.found
        if author is not None and title is not None and Fact.AUTHOR in lines:
            under_it = lines[Fact.AUTHOR] != lines.get(Fact.TITLE)
            if under_it and is_known_author(title) and not is_known_author(author):
                self.facts.title, self.facts.author = author, title
                lines[Fact.TITLE], lines[Fact.AUTHOR] = lines[Fact.AUTHOR], lines[Fact.TITLE]
            return
        if title is None or author is not None or not self.left:
            return
        under = self.left[0]
        origins = self.facts.found.get(Fact.TITLE, [])
        right_under = bool(origins) and under.origins[:1] == (origins[-1] + 1,)
        name = is_full_name(title) or is_known_surname(title)
        named = is_name(under.text) and not may_open_title(under.text)
        if not name or not right_under or named or not may_title(under):
            return
        self.facts.author, self.facts.title = title, flowing(under.text)
        self.facts.found[Fact.AUTHOR] = list(origins)
        self.facts.found[Fact.TITLE] = list(under.origins)
        self.left = self.left[1:]

    def _take_title(self, block: Block, following: Sequence[Block]) -> None:
        head, *rest = lines_apart(block)
        while rest and is_generic(head.text):
            self.generic.append(head)
            head, *rest = rest
        first = head.text
        maker = LAST_BRACKET.search(first)
        if maker is not None and maker.start() and is_of_edition(maker[1], first[: maker.start()]):
            self.facts.at = head.origins
            self.facts.take(Fact.EDITION, maker[1])
            first = first[: maker.start()]
        named = self._named(first, [*rest, *following])
        known = self.facts.title
        if known is not None and folded(known) != folded(named.title):
            if not self._take_by_line(block, 1):
                self._leave(block)
            return
        self.facts.title = known or named.title or None
        self.facts.at = head.origins
        self.facts.read(Fact.TITLE)
        if named.author is not None:
            self.facts.take(Fact.AUTHOR, named.author)
        for line in rest:
            if line.text and not self._take_by_line(line, 1):
                self._leave(line)

    def _named(self, line: str, under: Sequence[Block]) -> Named:
        """Return title and author of a title line; a `de` or `von` in it may be the title's own."""
        named = named_in(line)
        if named.author is None:
            return named
        plain = named_in(line, english=True)
        if plain != named and (
            self.facts.author is not None
            or any(
                author_line(one.text.partition("\n")[0]) is not None
                for one in under
                if one.shape is Shape.PARAGRAPH
            )
        ):
            return plain
        return named

    def _take_by_line(self, block: Block, below: int) -> bool:
        """Take an author's line, or a subtitle, so many lines below the title; tell whether."""
        style = block.style.lower()
        behind = _MAKERS_BEHIND.search(block.text)
        if (
            behind is not None
            and names_makers(behind[1])
            and self._take_by_line(replace(block, text=block.text[: behind.start()]), below)
        ):
            self.facts.at = block.origins
            self.facts.take(Fact.EDITION, behind[1].strip(" ()"))
            return True
        made = made_behind(block.text, beside=block.text in self.beside)
        if made is not None and self._take_by_line(replace(block, text=made[0]), below):
            self.facts.at = block.origins
            self.facts.take(Fact.EDITION, made[1])
            return True
        author = (
            flowing(block.text)
            if style == "author"
            else author_line(
                block.text,
                right_under=below == 1
                and (block.text not in self.beside or is_known_surname(block.text)),
                capital=(self.facts.title or "").isupper(),
            )
        )
        over = below == -1 and author is not None and is_full_name(author)
        self.facts.at = block.origins
        if author is not None and folded(author) == folded(self.facts.author or ""):
            self.facts.read(Fact.AUTHOR)
            return True
        if (
            author is not None
            and self.facts.author is None
            and (below > 0 or over or style == "author")
        ):
            self.facts.take(Fact.AUTHOR, author)
            return True
        if style in SUBTITLE_STYLES and self.facts.title is not None:
            self.facts.title = f"{self.facts.title}: {flowing(block.text)}"
            self.facts.read(Fact.TITLE)
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
            self.dated.append(block)
            return
        if block.text in self.beside:
            self.facts.at = block.origins
            self.facts.beside(block.text)
        else:
            self.left.append(block)


def _property(properties: Mapping[str, str], fact: Fact) -> str | None:
    """Return what front matter says of a fact, whatever language its key is in."""
    values = (flowing(value) for key, value in properties.items() if fact_label(key) is fact)
    own = flowing(properties.get(fact.value, ""))
    return own or next(filter(None, values), None)
