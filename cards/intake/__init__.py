"""From the blocks of a document to a digest, with what to tell the reader about it."""

from cards.intake.understanding import Source, Understood, understand, unplaced

__all__ = ["Source", "Understood", "understand", "unplaced"]
