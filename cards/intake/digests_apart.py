"""Several digests in one document, told apart by their title pages."""

from collections.abc import Sequence
from dataclasses import dataclass

from cards.intake.blocks import Block, Document
from cards.intake.heading_words import HeadingWords


@dataclass(frozen=True, slots=True)
class Stretch:
    """The lines of one digest.

    Attributes:
        lines: of the digest.
        document: with the properties that are its own.
        before: lines in front of all digests that belong to none.
    """

    lines: tuple[Block, ...]
    document: Document
    before: tuple[Block, ...] = ()


def digests_apart(
    lines: Sequence[Block], document: Document, words: HeadingWords
) -> tuple[Stretch, ...]:
    """Return the lines of each digest."""
    return (Stretch(tuple(lines), document),)
