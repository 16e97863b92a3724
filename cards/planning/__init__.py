"""What the coming weeks ask, what will be known, and what each target costs and keeps."""

from cards.planning.coming import coming, known_in_a_year
from cards.planning.library import Habits, Remembered, Unasked
from cards.planning.planner import plan
from cards.planning.records import (
    YEARS,
    BookKnown,
    CarePlan,
    ComingDay,
    Plan,
    Proposal,
    TargetPlan,
)

__all__ = [
    "YEARS",
    "BookKnown",
    "CarePlan",
    "ComingDay",
    "Habits",
    "Plan",
    "Proposal",
    "Remembered",
    "TargetPlan",
    "Unasked",
    "coming",
    "known_in_a_year",
    "plan",
]
