"""The kinds of item, in the order a digest is worked through."""

from cards.kinds.across import ACROSS
from cards.kinds.base import Kind, KindName
from cards.kinds.complete import COMPLETE
from cards.kinds.next import NEXT
from cards.kinds.order import ORDER
from cards.kinds.place import PLACE
from cards.kinds.restate import RESTATE
from cards.kinds.source import SOURCE
from cards.kinds.theme import THEME

KINDS: dict[KindName, Kind] = {
    kind.name: kind for kind in (THEME, NEXT, RESTATE, COMPLETE, SOURCE, ORDER, PLACE, ACROSS)
}
"""Every kind by its name."""

__all__ = ["KINDS"]
