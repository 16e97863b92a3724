"""From blocks to sections: which words stand under which heading."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from cards.intake.blocks import Block, Shape
from cards.intake.columns import header_row, heads_details
from cards.intake.contents import contents_in
from cards.intake.fact_lines import only_facts, opens_with_fact
from cards.intake.heading_words import BUILT_IN, MAX_HEADING, HeadingWords, Part
from cards.intake.headings import Announced, is_verdict, misspelt, part_named
from cards.intake.labels import fact_label, label_split
from cards.intake.lines import lines_of
from cards.intake.locating import locator_in
from cards.intake.title import named_in
from cards.intake.traces import cells_apart, origins_of, together

_FEW_WORDS = 4
"""Words of a heading that may hold one unknown among them."""
_LISTED = frozenset({Part.POINTS, Part.COMMITMENTS, Part.QUOTATIONS})


@dataclass(slots=True)
class Section:
    """The blocks under one heading.

    Attributes:
        part: what the heading announces, or None when it is unknown.
        name: the heading's words, or "" for what stands before any.
        level: of the heading; 0 for one typed as a line, a label or a row.
        shape: what announced it.
        styled: whether it was announced by a bold (`strong`) or capital (`capital`) line.
        blocks: in the order of the document.
        origins: the lines of the document that announced it and hold nothing else.
        at: the number of the line it begins with.
    """

    part: Part | None
    name: str
    level: int = 0
    shape: Shape = Shape.HEADING
    styled: str = ""
    blocks: list[Block] = field(default_factory=list)
    origins: tuple[int, ...] = ()
    at: int = 0


@dataclass(slots=True)
class Outline:
    """What stands before the first known part, and the sections after it.

    Attributes:
        columns: rows that only name the columns of a table outside every part, and the lines
            of a table of contents.
    """

    front: list[Block]
    sections: list[Section]
    columns: list[Block]


def outline(lines: Sequence[Block], words: HeadingWords = BUILT_IN) -> Outline:
    """Return the sections of a document given as lines; the reader's own `words` win."""
    walk = _Walk(lines, words)
    contents = contents_in(lines, words)
    for index in range(len(lines)):
        if index in contents:
            walk.columns.append(lines[index])
        else:
            walk.take(index)
    return Outline(walk.front, walk.sections, walk.columns)


@dataclass(slots=True)
class _Walk:
    lines: Sequence[Block]
    words: HeadingWords
    front: list[Block] = field(default_factory=list)
    sections: list[Section] = field(default_factory=list)
    columns: list[Block] = field(default_factory=list)
    first_heading_seen: bool = False

    @property
    def current(self) -> Section | None:
        return self.sections[-1] if self.sections else None

    def take(self, index: int) -> None:
        block = self.lines[index]
        if self._opens(index):
            return
        current = self.current
        if current is not None and self._closes(index, current):
            details = heads_details(block.text)
            heads = block.shape is Shape.HEADING or bool(_line_style(block)) or details
            heads = heads or self._heads_fact(index)
            name = block.text if heads else ""
            style = _line_style(block)
            section = Section(None, name, level=block.level, styled=style, at=index)
            self.sections.append(section)
            if name:
                section.origins = block.origins
                return
            current = self.current
        if self._in_labelled_rows(index):
            return
        if self._heads(block) and (current is None or current.part not in _LISTED):
            self.columns.append(block)
            return
        target = self.front if current is None else current.blocks
        target.append(block)

    def _heads(self, block: Block) -> bool:
        return header_row(block, self.words)

    def _in_labelled_rows(self, index: int) -> bool:
        """Take a row below a labelled one: without a label it goes on, with another it ends it."""
        block = self.lines[index]
        current = self.current
        if current is None or current.shape is not Shape.ROW or block.shape is not Shape.ROW:
            return False
        if current.blocks and self._heads(current.blocks[0]):
            return False
        label, *cells = cells_apart(block)
        if not label.text and current.part is not None:
            current.blocks.extend(lines_of([together(cells)], self.words) if cells else ())
        else:
            self.sections.append(
                Section(None, label.text, shape=Shape.ROW, blocks=[block], at=index)
            )
        return True

    def _opens(self, index: int) -> bool:
        block = self.lines[index]
        found = self._announced(index)
        if found is None:
            return False
        part, rest = found
        current = self.current
        section = Section(
            part,
            block.text.split("\n")[0][:MAX_HEADING],
            level=block.level if block.shape is Shape.HEADING else 0,
            shape=block.shape,
            styled=_line_style(block),
            at=index,
        )
        if (
            current is not None
            and current.shape is Shape.HEADING
            and current.part is None
            and block.shape is not Shape.HEADING
        ):
            section.level = current.level
        section.blocks.extend(rest)
        inside = set(origins_of(rest))
        section.origins = tuple(at for at in block.origins if at not in inside)
        self.sections.append(section)
        return True

    def _announced(self, index: int) -> tuple[Part, list[Block]] | None:
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
        styled = bool(_line_style(block)) or first.endswith(":")
        inside = self.current is not None and self.current.part in _LISTED
        if found is not None and found.sure and not self._is_content(block, found.part):
            return found.part, []
        if (labelled := self._labelled(block)) is not None:
            return labelled
        if found is not None and styled and (not inside or self._like_others(block)):
            return found.part, []
        if styled_line := _line_style(block):
            guessed = misspelt(first.rstrip(":"))
            if guessed is not None and (styled_line == "capital" or self.current is None):
                return guessed.part, []
        return None

    def _like_others(self, block: Block) -> bool:
        """Tell whether a line of few words is dressed as the one that announced its section."""
        current = self.current
        dressed = current is not None and current.styled == _line_style(block) != ""
        return dressed and len(block.text.split()) <= _FEW_WORDS

    def _is_content(self, block: Block, part: Part) -> bool:
        """Tell a verdict of one word, `Agree`, from the heading of its part."""
        current = self.current
        if _line_style(block) or block.text.endswith(":"):
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
            if block.strong or _line_style(block) or block.text.endswith(":") or by_items or heads:
                return found.part, []
        return self._labelled(block) if by_items and block.level == 1 else None

    def _by_row(self, block: Block) -> tuple[Part, list[Block]] | None:
        cells = block.text.split("\t")
        found = part_named(cells[0].rstrip(":"), self.words)
        current = None if self.current is None else self.current.part
        if self._heads(block):
            known = (part_named(cell, self.words) for cell in cells)
            parts = [named.part for named in known if named is not None]
            opens = len(parts) == 1 and parts[0] is not current and parts[0] in _LISTED
            return (parts[0], [block]) if opens else None
        if current in _LISTED and self.sections[-1].shape is not Shape.ROW:
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

    def _heads_fact(self, index: int) -> bool:
        """Tell whether a line is the name of a fact, with the fact on the line below."""
        block = self.lines[index]
        if block.shape is not Shape.PARAGRAPH or index + 1 >= len(self.lines):
            return False
        dressed = bool(_line_style(block)) or block.text.endswith(":")
        below = self.lines[index + 1]
        return (
            dressed
            and fact_label(block.text.rstrip(":")) is not None
            and below.shape in {Shape.PARAGRAPH, Shape.ITEM}
            and opens_with_fact(f"{block.text.rstrip(':')}: {below.text}")
        )

    def _closes(self, index: int, current: Section) -> bool:
        """Tell whether a block that announces nothing known still ends the section."""
        block = self.lines[index]
        heads = self._heads_fact(index)
        if heads or (index and self._heads_fact(index - 1)):
            return heads
        if block.shape is Shape.HEADING:
            if current.part is None:
                return True
            return current.shape is not Shape.HEADING or block.level <= current.level
        if current.shape is Shape.ROW and current.part is not None:
            return block.shape is not Shape.ROW
        return block.shape is Shape.PARAGRAPH and self._line_closes(block, current)

    def _line_closes(self, block: Block, current: Section) -> bool:
        """Tell whether a line of text ends the section as a heading would."""
        if heads_details(block.text):
            return True
        long = len(block.text) > MAX_HEADING
        if long or opens_with_fact(block.text) or only_facts(block.text):
            return False
        style = _line_style(block)
        if style == "capital":
            return current.styled == "capital"
        prose = current.part in {Part.THEME, Part.JUDGEMENT}
        ends_like_prose = block.text.endswith((".", "!", "?", "”", ","))
        return style == "strong" and prose and bool(current.blocks) and not ends_like_prose


def _line_style(block: Block) -> str:
    """Return how a paragraph looks like a heading: `strong`, `capital` or not ("")."""
    if block.shape not in {Shape.PARAGRAPH, Shape.ITEM} or len(block.text) > MAX_HEADING:
        return ""
    if block.strong:
        return "strong"
    return "capital" if block.text.isupper() and "\n" not in block.text else ""
