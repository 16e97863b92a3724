"""What each repository of the store offers the use cases, one protocol each."""

from service.use_cases.repositories.asking import (
    Answers,
    CheckIns,
    Items,
    Links,
    Sheets,
    SittingDays,
)
from service.use_cases.repositories.keeping import (
    Commitments,
    Decisions,
    Reminding,
    Rereadings,
    Talks,
    Withdrawals,
)
from service.use_cases.repositories.learning import Fittings, Tallies
from service.use_cases.repositories.library import (
    Books,
    Digests,
    Drafts,
    Headings,
    Readers,
    Versions,
)

__all__ = [
    "Answers",
    "Books",
    "CheckIns",
    "Commitments",
    "Decisions",
    "Digests",
    "Drafts",
    "Fittings",
    "Headings",
    "Items",
    "Links",
    "Readers",
    "Reminding",
    "Rereadings",
    "Sheets",
    "SittingDays",
    "Talks",
    "Tallies",
    "Versions",
    "Withdrawals",
]
