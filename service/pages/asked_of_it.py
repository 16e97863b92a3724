"""What each item of an open digest asks, in a few words."""

from cards.items import Item
from cards.kinds.base import KindName

_ASKED = {
    KindName.THEME: "The theme",
    KindName.NEXT: "Point {number}, from what comes before",
    KindName.RESTATE: "Commitment {number}, said again",
    KindName.COMPLETE: "The words of quotation {number}",
    KindName.SOURCE: "Whose words quotation {number} is",
    KindName.ORDER: "The order of the points",
    KindName.PLACE: "Where quotation {number} stands",
    KindName.ACROSS: "Which book speaks to point {number}",
}


def asked_in_words(item: Item) -> str:
    """Return what an item asks of its digest, as a line of a table."""
    return _ASKED[item.kind].format(number=item.number)
