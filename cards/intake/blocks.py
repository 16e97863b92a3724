"""The one form every document takes before it is understood: a row of blocks."""

from dataclasses import dataclass, field
from enum import StrEnum


class Shape(StrEnum):
    """What a block was in the document."""

    HEADING = "heading"
    PARAGRAPH = "paragraph"
    ITEM = "item"
    QUOTE = "quote"
    ROW = "row"


@dataclass(frozen=True, slots=True)
class Block:
    """One heading, paragraph, list item, block quotation or table row.

    Attributes:
        shape: what it was in the document.
        text: its words in plain text; a line break the writer typed is a newline; the
            cells of a row are joined by tabs.
        level: of a heading, 1 (highest) to 6; of an item, its depth from 1; else 0.
        number: the number of an item in a numbered list, else None.
        strong: whether every word of it is bold, as headings typed by hand are.
        style: the paragraph style's name as the document gives it, or "".
        origins: numbers of the lines of the document its words came from, one for each
            line of its text as a rule; see `traces`. Readers of files leave it empty.
    """

    shape: Shape
    text: str
    level: int = 0
    number: int | None = None
    strong: bool = False
    style: str = ""
    origins: tuple[int, ...] = field(default=(), compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Document:
    """A document as blocks, with what the file says about itself.

    Attributes:
        name: the file's name, without folders.
        blocks: in the order of the document.
        properties: the document's own properties or front matter, keys in lower
            case (`title`, `author`, `date`, `isbn`, ...), and under `header` the words
            that stand at the top of each of its pages.
    """

    name: str
    blocks: tuple[Block, ...]
    properties: dict[str, str] = field(default_factory=dict)
