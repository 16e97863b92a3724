"""What a calendar feed is made from."""

from dataclasses import dataclass
from datetime import date, datetime
from uuid import UUID

from cards.commitments import Life, Pace


@dataclass(frozen=True, slots=True)
class CalendarCommitment:
    """A commitment as a calendar shows it.

    Attributes:
        id: of the commitment.
        text: its words.
        title: of the book it comes from.
        caution: the line it carries, or None.
        life: what the decisions about it come to.
        pace: how it stands today.
        ends_on: the last day of its running term, paused stretches made up for; None while open.
        changed_at: when it last changed, aware, in UTC.
        address: an absolute link to check in, or None.
    """

    id: UUID
    text: str
    title: str
    caution: str | None
    life: Life
    pace: Pace
    ends_on: date | None
    changed_at: datetime
    address: str | None


@dataclass(frozen=True, slots=True)
class DailySitting:
    """The sitting of every day.

    Attributes:
        minutes: of any day's sitting.
        due: minutes that what waits today is expected to take.
        items: how many wait today.
        address: an absolute link to the day's sitting, or None.
    """

    minutes: int
    due: int
    items: int
    address: str | None


@dataclass(frozen=True, slots=True)
class CalendarFacts:
    """All that a reader's calendar shows.

    Attributes:
        reader_id: whose it is.
        time_zone: an IANA name.
        turns_at: the hour the reader's day turns over.
        today: the reader's day.
        remind_at: the hour of the day for alarms, 0 to 23.
        sitting: of every day.
        commitments: all of the reader's, live or not.
        made_at: now, aware, in UTC.
    """

    reader_id: UUID
    time_zone: str
    turns_at: int
    today: date
    remind_at: int
    sitting: DailySitting
    commitments: tuple[CalendarCommitment, ...]
    made_at: datetime
