"""The commitments of a digest."""

from collections.abc import Sequence

from cards.digest import Commitment
from cards.intake.blocks import Block, Shape
from cards.intake.entries import entries_of
from cards.intake.wording import flowing, marker_of, uncounted


def commitments_of(blocks: Sequence[Block]) -> tuple[list[Commitment], list[Block]]:
    """Return the commitments of a section, and the blocks that belong to none.

    A line that ends with a colon only introduces the others.
    """
    listed = entries_of(blocks)
    found: list[Commitment] = []
    stray = listed.stray + listed.places
    for entry in listed.entries:
        if (
            entry.block.text.endswith(":")
            and not entry.under
            and entry.block.shape is not Shape.ITEM
        ):
            stray.append(entry.block)
            continue
        lines = [_text(entry.block), *map(_text, entry.under)]
        text = "\n".join(line for line in lines if line)
        if any(letter.isalnum() for letter in text):
            found.append(Commitment(text))
    return found, stray


def _text(block: Block) -> str:
    if block.shape is Shape.ROW:
        return flowing(", ".join(uncounted(block.text.split("\t"))))
    marker = marker_of(block.text) if block.shape is Shape.HEADING else None
    return flowing(marker.rest if marker is not None and marker.sure else block.text)
