"""The sections of a digest: a heading, what it announces, and the blocks under it."""

from dataclasses import dataclass, field

from cards.intake.blocks import Block, Shape
from cards.intake.heading_words import MAX_HEADING, Part

LISTED = frozenset({Part.POINTS, Part.COMMITMENTS, Part.QUOTATIONS})
"""Parts that are lists of things."""


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


def line_style(block: Block) -> str:
    """Return how a paragraph looks like a heading: `strong`, `capital` or not ("")."""
    if block.shape not in {Shape.PARAGRAPH, Shape.ITEM} or len(block.text) > MAX_HEADING:
        return ""
    if block.strong:
        return "strong"
    return "capital" if block.text.isupper() and "\n" not in block.text else ""
