"""A digest held against the text of its book."""

from cards.proving.anchors import Anchor, anchor_of, reanchor
from cards.proving.folding import Folded, fold_book
from cards.proving.locate import Found, locate
from cards.proving.places import Spot, point_after, says, suggested_locator
from cards.proving.slips import Slip, SlipKind
from cards.proving.text import BookText, Chapter, PageMark

__all__ = [
    "Anchor",
    "BookText",
    "Chapter",
    "Folded",
    "Found",
    "PageMark",
    "Slip",
    "SlipKind",
    "Spot",
    "anchor_of",
    "fold_book",
    "locate",
    "point_after",
    "reanchor",
    "says",
    "suggested_locator",
]
