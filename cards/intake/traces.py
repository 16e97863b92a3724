"""Which words of the document each part was read from, and which words nothing was read from.

Every line of a document is numbered before anything is read, and a block carries the
numbers of its lines (`Block.origins`) however it is cut or joined afterwards.
"""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import chain

from cards.intake.blocks import Block, Shape
from cards.intake.wording import boxes_apart, tidied

_UNITS = re.compile(r"[\t\n]")


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a document as it stood.

    Attributes:
        words: the line, the number of a numbered item in front of it.
        row: of the table it is in, else None.
        cell: of that row it is in.
    """

    words: str
    row: int | None = None
    cell: int = 0


def traced(blocks: Iterable[Block]) -> tuple[list[Block], tuple[Line, ...]]:
    """Return the blocks of a document with their lines tidied and numbered, and the lines.

    Lines without words are left out, and with them blocks that have none.
    """
    lines: list[Line] = []
    found: list[Block] = []
    for at, block in enumerate(blocks):
        text = block.text.replace("\r\n", "\n").replace("\r", "\n")
        if block.shape is Shape.ROW:
            traced_block = _row(block, text, at, lines)
        else:
            traced_block = _paragraph(block, boxes_apart(text), lines)
        if traced_block is not None:
            found.append(traced_block)
    return found, tuple(lines)


def _paragraph(block: Block, text: str, lines: list[Line]) -> Block | None:
    kept: list[str] = []
    origins: list[int] = []
    for raw in text.split("\n"):
        if not tidied(raw):
            continue
        first = not kept and block.shape is Shape.ITEM and block.number is not None
        words = raw.strip()
        lines.append(Line(f"{block.number}. {words}" if first else words))
        kept.append(raw)
        origins.append(len(lines) - 1)
    if not kept:
        return None
    return replace(block, text="\n".join(kept), origins=tuple(origins))


def _row(block: Block, text: str, at: int, lines: list[Line]) -> Block | None:
    cells: list[str] = []
    origins: list[int] = []
    for number, cell in enumerate(text.split("\t")):
        kept = [line for line in map(tidied, cell.split("\n")) if line] or [""]
        cells.append("\n".join(kept))
        for line in kept:
            lines.append(Line(line, at, number))
            origins.append(len(lines) - 1)
    if not any(cells):
        return None
    return replace(block, text="\t".join(cells), origins=tuple(origins))


def lines_apart(block: Block) -> list[Block]:
    """Return each line of a block as a block of its own."""
    texts = block.text.split("\n")
    return [
        replace(block, text=text, origins=origins)
        for text, origins in zip(texts, _shared(block.origins, len(texts)), strict=True)
    ]


def cells_apart(block: Block) -> list[Block]:
    """Return each cell of a row as a paragraph."""
    cells = block.text.split("\t")
    shared = _shared(block.origins, len(_UNITS.split(block.text)))
    paragraphs = []
    start = 0
    for cell in cells:
        end = start + cell.count("\n") + 1
        own = tuple(chain.from_iterable(shared[start:end]))
        paragraphs.append(Block(Shape.PARAGRAPH, cell, origins=own))
        start = end
    return paragraphs


def together(blocks: Sequence[Block]) -> Block:
    """Return blocks as one, like the first of them, on lines of its own each."""
    return replace(
        blocks[0],
        text="\n".join(block.text for block in blocks),
        origins=origins_of(blocks),
    )


def origins_of(blocks: Iterable[Block]) -> tuple[int, ...]:
    """Return the lines of the document that several blocks came from."""
    return tuple(chain.from_iterable(block.origins for block in blocks))


def _shared(origins: tuple[int, ...], count: int) -> list[tuple[int, ...]]:
    """Share origins out among so many lines, one each; more than that fall to the last.

    Of fewer the last stands for every line that is left.
    """
    if not origins:
        return [origins] * count
    last = len(origins) - 1
    shared: list[tuple[int, ...]] = [(origins[min(index, last)],) for index in range(count)]
    if count <= last:
        shared[-1] = origins[count - 1 :]
    return shared


class Trace:
    """The lines of a document, and what became of each of them."""

    def __init__(self, lines: Sequence[Line]) -> None:
        self._lines = lines
        self._of: dict[str, list[int]] = {}
        self._outside: dict[str, list[str]] = {}
        self._left: list[tuple[int, str]] = []
        self._told: set[int] = set()

    def read(self, part: str, origins: Iterable[int]) -> None:
        """Record that a part was read from these lines."""
        self._of.setdefault(part, []).extend(origins)

    def read_outside(self, part: str, words: str) -> None:
        """Record that a part was read from words beside the text: a property, the file's name."""
        self._outside.setdefault(part, []).append(words)

    def leave(self, words: str, origins: Iterable[int]) -> None:
        """Record words that were not taken in, and the lines they stood on."""
        origins = tuple(origins)
        self._told.update(origins)
        self._left.append((min(origins, default=len(self._lines)), words))

    def leave_block(self, block: Block) -> None:
        """Record a block that was not taken in."""
        whole = self._words(block.origins)
        self.leave(whole if _as_many(whole, block.text) else block.text, block.origins)

    def words_of(self, part: str) -> str:
        """Return the words a part was read from, or "" where none were recorded."""
        inside = self._words(self._of.get(part, ()))
        return "\n".join(filter(None, [*self._outside.get(part, ()), inside]))

    def left(self, own: Iterable[int]) -> tuple[str, ...]:
        """Return the words that were not taken in, in the order of the document.

        Args:
            own: lines that belong to this digest; of these, what no part was read from and
                nobody left is left as well.
        """
        known = self._told.union(*self._of.values())
        left = list(self._left)
        for at in own:
            words = self._lines[at].words
            if at not in known and any(map(str.isalnum, words)):
                left.append((at, words))
        return tuple(words for _, words in sorted(left, key=lambda one: one[0]) if words)

    def _words(self, origins: Iterable[int]) -> str:
        before: Line | None = None
        pieces: list[str] = []
        for at in dict.fromkeys(origins):
            line = self._lines[at]
            if not line.words:
                continue
            if before is not None:
                same = line.row is not None and (line.row == before.row)
                pieces.append("\t" if same and line.cell != before.cell else "\n")
            pieces.append(line.words)
            before = line
        return "".join(pieces)


def _as_many(whole: str, text: str) -> bool:
    """Tell whether a block still holds all words of its lines but a marker."""
    return len(whole.split()) <= len(text.split()) + 1
