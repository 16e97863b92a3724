"""The tables. Every key, unique constraint and index begins with the reader.

A change here needs a migration beside it in `migrations/versions/`; tests compare
the two, constraint by constraint.
"""

from service.store.tables.asking import (
    AFRESH,
    CALLED,
    COMMITTED,
    MOVING,
    UNASKED,
    answers,
    check_ins,
    items,
    taken_back,
)
from service.store.tables.keeping import (
    commitments,
    decisions,
    rereadings,
    talks,
    withdrawals,
)
from service.store.tables.learning import fittings, tallied, tallies
from service.store.tables.library import digests, originals, parts, readers, versions
from service.store.tables.making import metadata
from service.store.tables.proving import anchors, book_texts
from service.store.tables.reminding import feed_addresses, mails, reminders
from service.store.tables.sitting import left_out, links, sheets, sitting_days
from service.store.tables.writing import draft_contents, draft_originals, drafts, heading_words

__all__ = [
    "AFRESH",
    "CALLED",
    "COMMITTED",
    "MOVING",
    "UNASKED",
    "anchors",
    "answers",
    "book_texts",
    "check_ins",
    "commitments",
    "decisions",
    "digests",
    "draft_contents",
    "draft_originals",
    "drafts",
    "feed_addresses",
    "fittings",
    "heading_words",
    "items",
    "left_out",
    "links",
    "mails",
    "metadata",
    "originals",
    "parts",
    "readers",
    "reminders",
    "rereadings",
    "sheets",
    "sitting_days",
    "taken_back",
    "talks",
    "tallied",
    "tallies",
    "versions",
    "withdrawals",
]
