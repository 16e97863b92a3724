"""Which books to open again, at which pages, why, and whether it helped."""

from cards.rereading.facts import Rereading

__all__ = ["Rereading"]
