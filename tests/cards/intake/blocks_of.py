"""Blocks written briefly, for the tests of the intake.

`# ` a heading, `## ` one below, `- ` an item, `-- ` one below it, `1. ` a numbered
item, `> ` a quotation, `** ` a bold paragraph, `| ` a row with its cells parted by
bars; anything else is a paragraph, in which ` / ` stands for a typed line break.
"""

import re

from cards.intake import Understood, understand
from cards.intake.blocks import Block, Document, Shape


def blocks_of(text: str) -> tuple[Block, ...]:
    """Return the blocks of a brief text."""
    return tuple(_block(line.strip()) for line in text.strip().splitlines() if line.strip())


def understood(text: str, name: str = "book.docx", **properties: str) -> Understood:
    """Return what a brief text is understood as."""
    return understand(Document(name, blocks_of(text), properties))


def _block(line: str) -> Block:
    mark, _, rest = line.partition(" ")
    rest = rest.strip().replace(" / ", "\n")
    cells = "\t".join(cell.strip() for cell in rest.split("|"))
    if re.fullmatch("#{1,6}", mark):
        return Block(Shape.HEADING, rest, level=len(mark))
    if re.fullmatch(r"-{1,6}|\d+\.", mark):
        depth = mark.count("-") or 1
        number = int(mark[:-1]) if mark[0] != "-" else None
        return Block(Shape.ITEM, rest, level=depth, number=number)
    other = {
        ">": Block(Shape.QUOTE, rest),
        "**": Block(Shape.PARAGRAPH, rest, strong=True),
        "|": Block(Shape.ROW, cells),
    }
    return other.get(mark, Block(Shape.PARAGRAPH, line.replace(" / ", "\n")))
