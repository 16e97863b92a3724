"""The kinds of item, in the order a digest is worked through."""

from cards.kinds.base import Kind, KindName
from cards.kinds.place import PLACE
from cards.kinds.restate import RESTATE
from cards.kinds.theme import THEME

KINDS: dict[KindName, Kind] = {kind.name: kind for kind in (THEME, RESTATE, PLACE)}
"""Every kind by its name."""

__all__ = ["KINDS"]
