"""From blocks to sections: which words stand under which heading."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from cards.intake.announcing import Announcing
from cards.intake.blocks import Block, Shape
from cards.intake.columns import heads_details
from cards.intake.contents import contents_in
from cards.intake.fact_lines import only_facts, opens_with_fact
from cards.intake.heading_words import BUILT_IN, MAX_HEADING, HeadingWords, Part
from cards.intake.labels import fact_label
from cards.intake.lines import lines_of
from cards.intake.sections import LISTED, Outline, Section, line_style
from cards.intake.traces import cells_apart, origins_of, together


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
class _Walk(Announcing):
    front: list[Block] = field(default_factory=list)
    columns: list[Block] = field(default_factory=list)

    def take(self, index: int) -> None:
        block = self.lines[index]
        if self._opens(index):
            return
        current = self.current
        if current is not None and self._closes(index, current):
            details = heads_details(block.text)
            heads = block.shape is Shape.HEADING or bool(line_style(block)) or details
            heads = heads or self._heads_fact(index)
            name = block.text if heads else ""
            style = line_style(block)
            section = Section(None, name, level=block.level, styled=style, at=index)
            self.sections.append(section)
            if name:
                section.origins = block.origins
                return
            current = self.current
        if self._in_labelled_rows(index):
            return
        if self.heads_columns(block) and (current is None or current.part not in LISTED):
            self.columns.append(block)
            return
        target = self.front if current is None else current.blocks
        target.append(block)

    def _in_labelled_rows(self, index: int) -> bool:
        """Take a row below a labelled one: without a label it goes on, with another it ends it."""
        block = self.lines[index]
        current = self.current
        if current is None or current.shape is not Shape.ROW or block.shape is not Shape.ROW:
            return False
        if current.blocks and self.heads_columns(current.blocks[0]):
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
        found = self.announced(index)
        if found is None:
            return False
        part, rest = found
        current = self.current
        section = Section(
            part,
            block.text.split("\n")[0][:MAX_HEADING],
            level=block.level if block.shape is Shape.HEADING else 0,
            shape=block.shape,
            styled=line_style(block),
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

    def _heads_fact(self, index: int) -> bool:
        """Tell whether a line is the name of a fact, with the fact on the line below."""
        block = self.lines[index]
        if block.shape is not Shape.PARAGRAPH or index + 1 >= len(self.lines):
            return False
        dressed = bool(line_style(block)) or block.text.endswith(":")
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
        style = line_style(block)
        if style == "capital":
            return current.styled == "capital"
        prose = current.part in {Part.THEME, Part.JUDGEMENT}
        ends_like_prose = block.text.endswith((".", "!", "?", "”", ","))
        return style == "strong" and prose and bool(current.blocks) and not ends_like_prose
