"""The tables. Every key, unique constraint and index begins with the reader.

A change here needs a migration beside it in `migrations/versions/`; tests compare
the two, constraint by constraint.
"""

from service.store.tables.asking import CALLED, UNASKED, answers, check_ins, items, taken_back
from service.store.tables.library import digests, originals, parts, readers
from service.store.tables.making import metadata

__all__ = [
    "CALLED",
    "UNASKED",
    "answers",
    "check_ins",
    "digests",
    "items",
    "metadata",
    "originals",
    "parts",
    "readers",
    "taken_back",
]
