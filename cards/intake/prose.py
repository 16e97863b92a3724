"""The parts of a digest that are prose: its theme and its judgement."""

from collections.abc import Iterable

from cards.intake.blocks import Block, Shape
from cards.intake.wording import flowing


def prose_of(blocks: Iterable[Block]) -> str | None:
    """Return the words of a section as one text, or None when it has none.

    Paragraphs are parted by an empty line; items stand on lines of their own, behind a
    dash where there are several.
    """
    blocks = list(blocks)
    text = ""
    for block in blocks:
        words = flowing(block.text.replace("\t", ", "))
        if block.shape is Shape.ITEM and len(blocks) > 1:
            text += ("\n" if text else "") + f"– {words}"
        else:
            text += ("\n\n" if text else "") + words
    return text if any(letter.isalnum() for letter in text) else None
