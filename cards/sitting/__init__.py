"""Today's sitting: what is worth asking, what may be let in, and in which order."""

from cards.sitting.candidates import Candidate, Pages, pages_of
from cards.sitting.composing import Waiting, compose
from cards.sitting.early import early, first_early
from cards.sitting.letting_in import let_in
from cards.sitting.level import level_on
from cards.sitting.pace import LATEST, pace
from cards.sitting.price import Price, price
from cards.sitting.ranking import best_due, unasked_worth

__all__ = [
    "LATEST",
    "Candidate",
    "Pages",
    "Price",
    "Waiting",
    "best_due",
    "compose",
    "early",
    "first_early",
    "let_in",
    "level_on",
    "pace",
    "pages_of",
    "price",
    "unasked_worth",
]
