"""The entries of a section that lists things: what is one of them, and what belongs to it."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from cards.intake.blocks import Block, Shape
from cards.intake.columns import header_row
from cards.intake.heading_words import BUILT_IN, HeadingWords
from cards.intake.locating import Located, locator_in, split_start
from cards.intake.traces import lines_apart, origins_of
from cards.intake.wording import marker_of


@dataclass(slots=True)
class Entry:
    """One thing of a list, and the blocks that stand under it.

    Attributes:
        block: the item, paragraph, heading or row itself.
        under: what follows it and is no entry of its own.
        place: what the inner heading it stands under says of its place.
        placed_by: that heading, where it says something of the kind.
    """

    block: Block
    under: list[Block] = field(default_factory=list)
    place: Located | None = None
    placed_by: Block | None = None

    @property
    def origins(self) -> tuple[int, ...]:
        """The lines of the document it came from."""
        return origins_of([self.block, *self.under])


@dataclass(slots=True)
class Listed:
    """The entries of a section, the blocks that belong to none of them, and inner headings.

    Attributes:
        entries: in order.
        stray: blocks that belong to no entry.
        places: inner headings that only say where the entries below them stand.
        columns: rows that only name the columns of a table.
    """

    entries: list[Entry] = field(default_factory=list)
    stray: list[Block] = field(default_factory=list)
    places: list[Block] = field(default_factory=list)
    columns: list[Block] = field(default_factory=list)


def entries_of(blocks: Sequence[Block], words: HeadingWords = BUILT_IN) -> Listed:
    """Return the entries of a section.

    Where the section has a list, its outermost items are the entries, and what
    stands between them belongs to the one before. Without one, inner headings, or
    bold lines over plain paragraphs, are the entries; else every paragraph is.
    """
    blocks = _lines(blocks)
    leads = _rule(blocks)
    listed = Listed()
    place: Located | None = None
    by: Block | None = None
    for block in blocks:
        if header_row(block, words):
            listed.columns.append(block)
        elif leads(block) and not (listed.entries and _only_places(block)):
            listed.entries.append(Entry(block, place=place, placed_by=by))
        elif block.shape is Shape.HEADING:
            place = place_in_heading(block.text)
            by = None if place is None else block
            (listed.stray if place is None else listed.places).append(block)
        elif listed.entries:
            listed.entries[-1].under.append(block)
        else:
            listed.stray.append(block)
    return listed


_UNIT_OF_COLUMN = {
    **dict.fromkeys(("chapter", "ch", "chapitre"), "ch."),
    **dict.fromkeys(("kapitel", "kap"), "Kap."),
    **dict.fromkeys(("capitulo", "capitolo", "cap"), "cap."),
    "hoofdstuk": "hoofdstuk",
    "line": "line",
    "section": "§",
    "book": "Book",
    "part": "Part",
}


def placed_in_column(said: Located, cell: str, column: str) -> Located:
    """Return the place a cell gives, where its column says what a number alone in it counts.

    Args:
        said: what the cell says by itself: `5` is a page.
        cell: its words.
        column: the folded name of its column, or "".
    """
    unit = _UNIT_OF_COLUMN.get(column)
    number = cell.strip(" .()")
    if unit is None or not number.isdecimal():
        return said
    return Located("", f"{unit}{'' if unit == '§' else ' '}{number}", said.after)


def _lines(blocks: Sequence[Block]) -> Sequence[Block]:
    """Return the lines of a section that is one paragraph, where each opens like a sentence."""
    if len(blocks) != 1 or blocks[0].shape is not Shape.PARAGRAPH:
        return blocks
    lines = lines_apart(blocks[0])
    return blocks if any(line.text[0].islower() for line in lines) else lines


def _only_places(block: Block) -> bool:
    """Tell whether a paragraph only says where the entry before it stands."""
    bracketed = block.shape is Shape.ITEM and block.text.startswith(("(", "["))
    return (block.shape is Shape.PARAGRAPH or bracketed) and locator_in(block.text) is not None


def place_in_heading(text: str) -> Located | None:
    """Return the place an inner heading such as `Chapter 3: The Pond` gives, or None."""
    found = locator_in(text) or split_start(text)
    return found if found.locator is not None or found.after is not None else None


def _rule(blocks: Sequence[Block]) -> Callable[[Block], bool]:
    """Return what tells the entries of these blocks."""
    shapes = {block.shape for block in blocks}
    headings = [block for block in blocks if block.shape is Shape.HEADING]
    numbered = sum(marker_of(block.text) is not None for block in headings)
    if numbered > 1 or (headings and not shapes & {Shape.ITEM, Shape.ROW}):
        return lambda block: block.shape is Shape.HEADING
    if Shape.ITEM in shapes:
        top = min(block.level for block in blocks if block.shape is Shape.ITEM)
        return lambda block: (
            (block.shape is Shape.ITEM and block.level <= top) or (block.shape is Shape.ROW)
        )
    if Shape.ROW in shapes:
        return lambda block: block.shape is Shape.ROW
    paragraphs = [block for block in blocks if block.shape is Shape.PARAGRAPH]
    if paragraphs and paragraphs[0].strong and not all(block.strong for block in paragraphs):
        return lambda block: block.shape is Shape.PARAGRAPH and block.strong
    return lambda block: block.shape is Shape.PARAGRAPH
