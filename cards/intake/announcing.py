"""Whether a line announces a part of a digest, given the section it stands in."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from cards.intake.blocks import Block, Shape
from cards.intake.columns import header_row
from cards.intake.heading_words import HeadingWords, Part
from cards.intake.headings import Announced, is_verdict, misspelt, part_named
from cards.intake.labels import label_split
from cards.intake.lines import lines_of
from cards.intake.locating import locator_in
from cards.intake.sections import LISTED, Section, line_style
from cards.intake.title import named_in
from cards.intake.traces import cells_apart, together

_FEW_WORDS = 4
"""Words of a heading that may hold one unknown among them."""


@dataclass(slots=True)
class Announcing:
    """The lines of a document, and the sections they were put in so far.

    Attributes:
        lines: of the document.
        words: the reader's own heading words.
        sections: so far.
        first_heading_seen: whether a heading was looked at: the first may be the title.
    """

    lines: Sequence[Block]
    words: HeadingWords
    sections: list[Section] = field(default_factory=list)
    first_heading_seen: bool = False

    @property
    def current(self) -> Section | None:
        """The section that is open."""
        return self.sections[-1] if self.sections else None

    def heads_columns(self, block: Block) -> bool:
        """Tell whether a row only names the columns of a table."""
        return header_row(block, self.words)

    def announced(self, index: int) -> tuple[Part, list[Block]] | None:
        """Return the part a line announces, and the words of it on the line itself, or None."""
        block = self.lines[index]
        match block.shape:
            case Shape.HEADING:
                return self._by_heading(index)
            case Shape.PARAGRAPH:
                return self._by_line(block)
            case Shape.ITEM:
                return self._by_item(index)
            case Shape.ROW:
                return self._by_row(block)
            case _:
                return None

    def _by_heading(self, index: int) -> tuple[Part, list[Block]] | None:
        block = self.lines[index]
        first, self.first_heading_seen = not self.first_heading_seen, True
        found = part_named(block.text, self.words)
        if (found is None or not found.sure) and (labelled := self._labelled(block)) is not None:
            return labelled
        if found is not None:
            title = first and self._is_title(index, found)
            return None if title or not self._may_switch(block, found) else (found.part, [])
        if first or not self._may_switch(block, Announced(Part.THEME, sure=False)):
            return None
        guessed = misspelt(block.text)
        return None if guessed is None else (guessed.part, [])

    def _is_title(self, index: int, found: Announced) -> bool:
        """Tell whether the first heading is the title, though its words could announce a part."""
        if not found.sure and named_in(self.lines[index].text).author is not None:
            return True
        level = self.lines[index].level
        others = [b for b in self.lines[index + 1 :] if b.shape is Shape.HEADING]
        if not others or any(other.level <= level for other in others):
            return False
        if not found.sure:
            return True
        following = self.lines[index + 1]
        by_line = following.shape is Shape.PARAGRAPH and following.text.lower().startswith("by ")
        return following.shape is Shape.HEADING or by_line

    def _may_switch(self, block: Block, found: Announced) -> bool:
        """Tell whether a heading inside a section opens another, or belongs to the section."""
        current = self.current
        if current is None or found.sure or current.part is None:
            return True
        return current.shape is not Shape.HEADING or block.level <= current.level

    def _by_line(self, block: Block) -> tuple[Part, list[Block]] | None:
        first = block.text
        found = part_named(first.rstrip(":"), self.words)
        styled = bool(line_style(block)) or first.endswith(":")
        inside = self.current is not None and self.current.part in LISTED
        if found is not None and found.sure and not self._is_content(block, found.part):
            return found.part, []
        if (labelled := self._labelled(block)) is not None:
            return labelled
        if found is not None and styled and (not inside or self._like_others(block)):
            return found.part, []
        if styled_line := line_style(block):
            guessed = misspelt(first.rstrip(":"))
            if guessed is not None and (styled_line == "capital" or self.current is None):
                return guessed.part, []
        return None

    def _like_others(self, block: Block) -> bool:
        """Tell whether a line of few words is dressed as the one that announced its section."""
        current = self.current
        dressed = current is not None and current.styled == line_style(block) != ""
        return dressed and len(block.text.split()) <= _FEW_WORDS

    def _is_content(self, block: Block, part: Part) -> bool:
        """Tell a verdict of one word, `Agree`, from the heading of its part."""
        current = self.current
        if line_style(block) or block.text.endswith(":"):
            return False
        first = current is not None and current.part is part and not current.blocks
        return first or (is_verdict(block.text) and block.text.endswith((".", "!")))

    def _by_item(self, index: int) -> tuple[Part, list[Block]] | None:
        block = self.lines[index]
        current = self.current
        by_items = current is None or current.shape is Shape.ITEM or current.part is None
        found = part_named(block.text.rstrip(":"), self.words)
        if found is not None and found.sure and block.level == 1:
            following = self.lines[index + 1 : index + 2]
            heads = bool(following) and (
                following[0].shape is not Shape.ITEM or following[0].level > block.level
            )
            if block.strong or line_style(block) or block.text.endswith(":") or by_items or heads:
                return found.part, []
        return self._labelled(block) if by_items and block.level == 1 else None

    def _by_row(self, block: Block) -> tuple[Part, list[Block]] | None:
        cells = block.text.split("\t")
        found = part_named(cells[0].rstrip(":"), self.words)
        current = None if self.current is None else self.current.part
        if self.heads_columns(block):
            known = (part_named(cell, self.words) for cell in cells)
            parts = [named.part for named in known if named is not None]
            opens = len(parts) == 1 and parts[0] is not current and parts[0] in LISTED
            return (parts[0], [block]) if opens else None
        if current in LISTED and self.sections[-1].shape is not Shape.ROW:
            return None
        if found is None or not found.sure or len(cells) < 2:
            return None
        filled = [cell for cell in cells_apart(block)[1:] if cell.text]
        return found.part, lines_of([together(filled)], self.words) if filled else []

    def _labelled(self, block: Block) -> tuple[Part, list[Block]] | None:
        """Return the part and the words of a line such as `Gist: a man goes to the woods`."""
        for label, rest in label_split(block.text):
            found = part_named(label, self.words)
            if found is not None and found.sure and locator_in(label) is None:
                words = block.text if is_verdict(label) else rest
                origins = block.origins[-words.count("\n") - 1 :]
                content = Block(Shape.PARAGRAPH, words, origins=origins)
                return found.part, lines_of([content], self.words)
        return None
