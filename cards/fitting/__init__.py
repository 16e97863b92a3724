"""The reader’s own weights of the memory model, fitted to their answers.

`consider` decides which weights are in force; `fit` finds them, `predictions` foresees with them.
"""

from cards.fitting.considering import consider
from cards.fitting.likeliest import fit
from cards.fitting.model import predictions
from cards.fitting.records import Comparison, Considered, Verdict
from cards.fitting.reviews import KINDS, Reviews

__all__ = [
    "KINDS",
    "Comparison",
    "Considered",
    "Reviews",
    "Verdict",
    "consider",
    "fit",
    "predictions",
]
