"""The quotations of a digest, with their locators, however the two are laid out."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass, field, replace

from cards.digest import Quotation
from cards.intake.blocks import Block, Shape
from cards.intake.columns import QUOTATION_COLUMNS, header_row
from cards.intake.entries import placed_in_column
from cards.intake.heading_words import BUILT_IN, HeadingWords
from cards.intake.locating import Located, joined, locator_in, split_end, split_start
from cards.intake.quotation_text import (
    DASHED,
    MAX_TAIL,
    looks_quoted,
    read_quotation,
    without_names,
)
from cards.intake.traces import lines_apart, origins_of, together
from cards.intake.wording import OPENING_MARKS, closing_of, folded

_MAX_QUOTED = 40
"""Lines of one quotation looked back on: more than a sonnet's, fewer than a canto's."""
_MAX_JOINED = 6
"""Paragraphs one quotation may run over."""
_AFTER_COLUMNS = frozenset(
    folded(name)
    for name in (
        "after|after point|point|after idea|idea|nach|nach punkt|punkt|après|après le point|"
        "después|después del punto|tras|punto|dopo|dopo il punto|depois|depois do ponto|ponto|"
        "na|na punt|punt"
    ).split("|")
)


@dataclass(slots=True)
class QuotationsFound:
    """The quotations of a section, the blocks that are none, and headings that give a place.

    Attributes:
        quotations: in order.
        origins: of each quotation, the lines of the document it came from.
        stray: blocks that are no quotation.
        places: inner headings that only say where the quotations below them stand.
        columns: rows that only name the columns of a table.
    """

    quotations: list[Quotation] = field(default_factory=list)
    origins: list[tuple[int, ...]] = field(default_factory=list)
    stray: list[Block] = field(default_factory=list)
    places: list[Block] = field(default_factory=list)
    columns: list[Block] = field(default_factory=list)


def quotations_of(
    blocks: Sequence[Block], names: Collection[str] = (), words: HeadingWords = BUILT_IN
) -> QuotationsFound:
    """Return the quotations of a section.

    Args:
        blocks: of the section.
        names: folded names of the book and its author, which say nothing of a place.
        words: the reader's own heading words.
    """
    parted = [part for block in blocks for part in _parted(block)]
    walk = _Walk(_joined(parted), names, words)
    for block in walk.blocks:
        walk.take(block)
    walk.drop_waiting()
    return walk.found


class _Walk:
    """One pass over a section, keeping what holds for the words still to come."""

    def __init__(self, blocks: list[Block], names: Collection[str], own: HeadingWords) -> None:
        self.blocks = blocks
        self.names = names
        self.own = own
        self.found = QuotationsFound()
        self.heading = Located("")
        self.heading_block: Block | None = None
        self.under_heading = False
        self.pending: Located | None = None
        self.pending_block: Block | None = None
        self.waiting: Block | None = None
        shapes = {block.shape for block in blocks}
        self.listed = bool(shapes & {Shape.ITEM, Shape.QUOTE})
        self.marked = sum(looks_quoted(block.text) for block in blocks) > 1
        levels = [block.level for block in blocks if block.shape is Shape.ITEM]
        self.top = min(levels, default=0)
        first = next((block for block in blocks if block.shape is not Shape.HEADING), None)
        self.places_first = first is not None and locator_in(first.text) is not None
        self.columns: list[str] = []

    def take(self, block: Block) -> None:
        if block.shape is Shape.ROW:
            self._row(block)
        elif block.shape is Shape.HEADING:
            self._heading(block)
        elif (said := locator_in(block.text)) is not None:
            self._place(block, said)
        elif self._is_attribution(block):
            last = self.found.quotations[-1]
            whose = without_names(DASHED.sub("", block.text), self.names)
            self.found.quotations[-1] = replace(last, locator=joined((whose, last.locator)))
            self.found.origins[-1] += block.origins
        elif self._is_stray(block):
            self.found.stray.append(block)
        else:
            self._add(block, read_quotation(block.text, self.names))

    def _heading(self, block: Block) -> None:
        said = locator_in(block.text) or split_start(block.text)
        self.heading = Located("", said.locator, said.after)
        self.heading_block = block
        placed = said.locator is not None or said.after is not None
        (self.found.places if placed else self.found.stray).append(block)

    def _place(self, block: Block, said: Located) -> None:
        if self.places_first or block.text.endswith(":") or block.strong:
            self._wait(block, said)
            return
        last = self.found.quotations[-1] if self.found.quotations else None
        if last is not None and self.under_heading and said.locator is not None:
            last = replace(last, locator=None)
        if last is None or (last.locator is not None and said.locator is not None):
            self._wait(block, said)
            return
        self.under_heading = False
        self.found.origins[-1] += block.origins
        self.found.quotations[-1] = replace(
            last,
            locator=last.locator or said.locator,
            after=said.after if last.after is None else last.after,
        )

    def _wait(self, block: Block, said: Located) -> None:
        """Keep a place for the words still to come."""
        self.drop_waiting()
        self.pending, self.waiting = said, block
        self.pending_block = block

    def drop_waiting(self) -> None:
        """Hand back a place that no words followed."""
        if self.waiting is not None:
            self.found.stray.append(self.waiting)
        self.pending = self.waiting = None

    def _is_attribution(self, block: Block) -> bool:
        """Tell whether a line behind a dash says whose words went before."""
        short = len(block.text) <= MAX_TAIL and block.shape is not Shape.ITEM
        return short and DASHED.match(block.text) is not None and bool(self.found.quotations)

    def _is_stray(self, block: Block) -> bool:
        if looks_quoted(block.text) or split_end(block.text).locator is not None:
            return False
        if block.shape is Shape.PARAGRAPH:
            return (
                self.listed
                or self.marked
                or (block.text.endswith(":") and not self.found.quotations)
            )
        nested = block.shape is Shape.ITEM and block.level > self.top
        return nested and self.pending is None

    def _add(self, block: Block, quotation: Quotation | None) -> None:
        if quotation is None:
            self.found.stray.append(block)
            return
        pending = self.pending or Located("")
        by = [] if self.pending is None or self.pending_block is None else [self.pending_block]
        if self.waiting is not None and quotation.locator and pending.locator:
            self.found.stray.append(self.waiting)
            by = []
        self.waiting = None
        if not self.places_first or block.shape is not Shape.ITEM:
            self.pending = None
        locator = quotation.locator or pending.locator
        self.under_heading = locator is None and self.heading.locator is not None
        locator = locator or self.heading.locator
        after = quotation.after
        for said in (pending.after, self.heading.after):
            after = said if after is None else after
        if self.under_heading and self.heading_block is not None:
            by.insert(0, self.heading_block)
        self.found.quotations.append(replace(quotation, locator=locator, after=after))
        self.found.origins.append(origins_of([*by, block]))

    def _row(self, block: Block) -> None:
        cells = block.text.split("\t")
        if header_row(block, self.own):
            self.columns = [folded(cell) for cell in cells]
            self.found.columns.append(block)
            return
        after: int | None = None
        places: list[Located] = []
        words: list[str] = []
        said_words: list[str] = []
        for index, cell in enumerate(cells):
            column = self.columns[index] if index < len(self.columns) else ""
            said = locator_in(cell)
            if column in _AFTER_COLUMNS and cell.isdecimal() and len(cell) <= 3:
                after = int(cell)
            elif said is not None:
                places.append(placed_in_column(said, cell, column))
            elif cell:
                words.append(cell)
                if column in QUOTATION_COLUMNS or looks_quoted(cell):
                    said_words.append(cell)
        if len(places) > 1 and cells[0].rstrip(".)").isdecimal():
            places = places[1:]
        words.sort(key=lambda cell: (cell not in said_words[:1], -len(cell)))
        quotation = read_quotation(words[0], self.names) if words else None
        if quotation is None:
            self.found.stray.append(block)
            return
        named = [said.locator for said in places]
        others = words[1:]
        if not any(named) and others and len(others[0]) <= MAX_TAIL:
            named.append(others.pop(0))
        afters = (after, *(said.after for said in places), quotation.after)
        quotation = replace(
            quotation,
            locator=joined((*named, quotation.locator)),
            after=next((said for said in afters if said is not None), None),
        )
        self._add(block, quotation)
        self.found.stray += [replace(block, text=text) for text in others]


def _parted(block: Block) -> list[Block]:
    """Part a block in which one line after another is a quotation of its own."""
    if "\n" not in block.text or block.shape is Shape.ROW:
        return [block]
    parts: list[list[Block]] = []
    lines = lines_apart(block)
    if block.shape is not Shape.HEADING and all(_placed(line.text) for line in lines):
        return lines
    leads = locator_in(lines[0].text) is not None
    for line in lines:
        before = "" if not parts else "\n".join(one.text for one in parts[-1][-_MAX_QUOTED:])
        opens = line.text[:1] in OPENING_MARKS or looks_quoted(line.text)
        opens = opens or (leads and locator_in(line.text) is not None)
        if parts and not (opens and looks_quoted(before)):
            parts[-1].append(line)
        else:
            parts.append([line])
    return [together(part) for part in parts]


def _placed(line: str) -> bool:
    """Tell whether a line is words with a locator beside them."""
    if locator_in(line) is not None:
        return False
    return split_end(line).locator is not None or split_start(line).locator is not None


def _joined(blocks: list[Block]) -> list[Block]:
    """Join paragraphs of one quotation: from an opening mark to the one that closes it."""
    result: list[Block] = []
    index = 0
    while index < len(blocks):
        length = _run(blocks, index)
        result.append(together(blocks[index : index + length]))
        index += length
    return result


def _run(blocks: list[Block], index: int) -> int:
    first = blocks[index]
    if (
        first.shape is Shape.ROW
        or first.text[0] not in '“„«"'
        or closing_of(first.text) is not None
    ):
        return 1
    text = first.text
    for length, block in enumerate(blocks[index + 1 : index + _MAX_JOINED], 2):
        if block.shape is not first.shape or block.text[0] in OPENING_MARKS:
            return 1
        text += "\n" + block.text
        if closing_of(text) is not None:
            return length
    return 1
