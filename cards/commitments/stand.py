"""How a commitment stands on a day: its pace, the rule that follows from, and the figures."""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from cards.commitments.terms import Life
from cards.commitments.windows import PeriodDone, Window


class Pace(StrEnum):
    """How a commitment stands."""

    ON_COURSE = "on course"
    SLIPPING = "slipping"
    STALLED = "stalled"
    PAUSED = "paused"
    UNJUDGED = "unjudged"
    DONE = "done"
    ENDED = "ended"
    RELEASED = "released"


LIVE = frozenset({Pace.ON_COURSE, Pace.SLIPPING, Pace.STALLED, Pace.PAUSED})
"""The paces of what is still asked."""


class Rule(StrEnum):
    """The rule a pace follows from."""

    NOT_CLOSED = "not closed"
    LAST_KEPT = "last kept"
    LAST_NOT_KEPT = "last not kept"
    TWO_WITHOUT = "two without"
    NOTHING_AT_ALL = "nothing at all"
    BY_DATE = "by date"
    FINISHED = "finished"
    OVERDUE = "overdue"
    LONG_OVERDUE = "long overdue"
    MOVED_OFTEN = "moved often"
    PAUSED = "paused"
    PAST_ON_ARRIVAL = "past on arrival"
    ALL_KEPT = "all kept"
    SOME_KEPT = "some kept"
    CLOSED = "closed"
    RELEASED = "released"


@dataclass(frozen=True, slots=True)
class Stand:
    """How a commitment stands on a day, with the rule and the figures.

    Attributes:
        day: the reader's day asked about.
        pace: how it stands.
        rule: what that follows from.
        life: what the decisions known then make of it.
        windows: the latest first, back to those it was judged by; the first may still be open.
            Of a term that is over, its last ones; of a one-off by a date, none.
        now: the period that runs, with what is due and done in it; None where none does.
        due, done: what was due and kept over a term that is over: periods, or deeds of a
            one-off; of one that runs, 0 and 0 but for a one-off.
        ends_on: the last day of the term, or None while it is open.
        settled: of one that is over: whether the reader has said what next.
        nothing_said: of stalled and slipping: whether the last judged window was `silent`.
    """

    day: date
    pace: Pace
    rule: Rule
    life: Life
    windows: tuple[Window, ...] = ()
    now: PeriodDone | None = None
    due: int = 0
    done: int = 0
    ends_on: date | None = None
    settled: bool = False
    nothing_said: bool = False

    @property
    def asked(self) -> bool:
        """Whether it is still asked of the reader on ordinary days."""
        return self.pace in LIVE
