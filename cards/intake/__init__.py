"""From the blocks of a document to a digest, with what to tell the reader about it."""

from cards.intake.heading_words import BUILT_IN, HeadingWords, Part, heading_words
from cards.intake.understanding import Source, Understood, understand, understand_all, unplaced

__all__ = [
    "BUILT_IN",
    "HeadingWords",
    "Part",
    "Source",
    "Understood",
    "heading_words",
    "understand",
    "understand_all",
    "unplaced",
]
