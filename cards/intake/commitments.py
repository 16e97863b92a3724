"""The commitments of a digest."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from cards.digest import Commitment
from cards.intake.blocks import Block, Shape
from cards.intake.entries import entries_of
from cards.intake.heading_words import BUILT_IN, HeadingWords
from cards.intake.wording import flowing, marker_of, uncounted


@dataclass(slots=True)
class CommitmentsFound:
    """The commitments of a section.

    Attributes:
        commitments: in order.
        origins: of each, the lines of the document it came from.
        stray: blocks that belong to none.
        columns: rows that only name the columns of a table.
    """

    commitments: list[Commitment] = field(default_factory=list)
    origins: list[tuple[int, ...]] = field(default_factory=list)
    stray: list[Block] = field(default_factory=list)
    columns: list[Block] = field(default_factory=list)


def commitments_of(blocks: Sequence[Block], words: HeadingWords = BUILT_IN) -> CommitmentsFound:
    """Return the commitments of a section.

    A line that ends with a colon only introduces the others.
    """
    listed = entries_of(blocks, words)
    found = CommitmentsFound(stray=listed.stray + listed.places, columns=listed.columns)
    for entry in listed.entries:
        if (
            entry.block.text.endswith(":")
            and not entry.under
            and entry.block.shape is not Shape.ITEM
        ):
            found.stray.append(entry.block)
            continue
        lines = [_text(entry.block), *map(_text, entry.under)]
        text = "\n".join(line for line in lines if line)
        if any(letter.isalnum() for letter in text):
            found.commitments.append(Commitment(text))
            found.origins.append(entry.origins)
    return found


def _text(block: Block) -> str:
    if block.shape is Shape.ROW:
        return flowing(", ".join(uncounted(block.text.split("\t"))))
    marker = marker_of(block.text) if block.shape is Shape.HEADING else None
    return flowing(marker.rest if marker is not None and marker.sure else block.text)
