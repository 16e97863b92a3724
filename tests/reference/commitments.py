"""A commitment and the facts about it, in few words, for the tests of its pace."""

from datetime import UTC, date, datetime, time, timedelta
from itertools import count
from uuid import UUID

from cards.commitments import Act, CheckIn, Commitment, Decision, Measure, Outcome, Period

PART = UUID("00000000-0000-4000-8000-0000000000c0")
MONDAY = date(2026, 1, 5)
KEPT, PARTLY, MISSED = Outcome.KEPT, Outcome.PARTLY, Outcome.MISSED
WEEKLY = Measure(1, Period.WEEK)
DAILY = Measure(1, Period.DAY)

_numbers = count(1)


def on(number, month=1, year=2026):
    """Return a day of 2026, of January unless said."""
    return date(year, month, number)


def commitment(measure=WEEKLY, made=MONDAY, entered=None, text="Write to Hanne from the ward"):
    """Return a commitment that came in on the day it was made, unless said."""
    return Commitment(PART, text, made, entered or made, measure)


def _at(day):
    return datetime.combine(day, time(12), UTC)


def said(day, outcome=KEPT, reported=None, **more):
    """Return a check-in about a day, reported on it unless said."""
    reported = reported or day
    return CheckIn(
        UUID(int=next(_numbers)), PART, outcome, day, _at(reported), reported_on=reported, **more
    )


def decided(act, day, recorded=None, **more):
    """Return a decision that holds from a day, recorded on it unless said."""
    recorded = recorded or day
    # Later in the order of writing is later in the day, as for the reader who decides it.
    number = next(_numbers)
    at = _at(recorded) + timedelta(milliseconds=number)
    return Decision(UUID(int=number), PART, act, day, at, recorded, **more)


def paused(day, until=None, **more):
    """Return the decision to pause from a day, until another or until it is resumed."""
    return decided(Act.PAUSE, day, until=until, **more)


def days_from(first, last):
    """Return all days from a first to a last."""
    return [first + timedelta(days=number) for number in range((last - first).days + 1)]
