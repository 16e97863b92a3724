"""Identity across edits: which part of a digest is the same part as before, and what changed."""

from cards.identity.changes import Became, Change, afresh, changes, continued
from cards.identity.keeping import keep, restored, share_of, with_places_of

__all__ = [
    "Became",
    "Change",
    "afresh",
    "changes",
    "continued",
    "keep",
    "restored",
    "share_of",
    "with_places_of",
]
