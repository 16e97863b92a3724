"""The yearly review: what was promised to which book, kept, changed; what collides or repeats."""

from cards.yearly.changes import Change
from cards.yearly.likeness import Likeness, Pair
from cards.yearly.promises import Facts, Promise
from cards.yearly.review import BookYear, Review, review_of
from cards.yearly.telling import figures, standing

__all__ = [
    "BookYear",
    "Change",
    "Facts",
    "Likeness",
    "Pair",
    "Promise",
    "Review",
    "figures",
    "review_of",
    "standing",
]
