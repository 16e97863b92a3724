"""Telling another person about a book: the sheet of a talk, and that it took place."""

from cards.talk.facts import Talk

__all__ = ["Talk"]
