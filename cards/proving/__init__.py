"""A digest held against the text of its book."""

from cards.proving.anchors import Anchor
from cards.proving.text import BookText, Chapter, PageMark

__all__ = ["Anchor", "BookText", "Chapter", "PageMark"]
