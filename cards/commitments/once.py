"""The pace of what is done once: by a date, or whenever.

The date is the reader's word and stands, however long a pause lies before it; only the days of
patience after it pass over a pause, and over days on which nobody could be asked.
"""

from datetime import date

from cards.commitments.check_ins import Outcome
from cards.commitments.cutting import Span
from cards.commitments.deeds import Deeds
from cards.commitments.stand import Pace, Rule, Stand
from cards.commitments.terms import Life, Term

OVERDUE_DAYS = 7
"""Days a one-off is overdue before it stalls, or a tenth of its span where that is more."""
MOST_MOVES = 3
"""Times the date of a one-off is moved before it stalls."""


def finished(life: Life, deeds: Deeds, day: date) -> Stand | None:
    """Return how a one-off stands that has all its deeds, or None while some are wanting."""
    due, done = figures(life.term, deeds, day)
    if done < due:
        return None
    settled = life.closed is not None
    ends_on = life.term.last_day()
    return Stand(
        day,
        Pace.DONE,
        Rule.FINISHED,
        life,
        due=due,
        done=done,
        ends_on=ends_on,
        settled=settled,
    )


def one_off(life: Life, deeds: Deeds, deadline: date, day: date) -> Stand:
    """Return how an unfinished one-off with a deadline stands."""
    due, done = figures(life.term, deeds, day)
    settled = life.closed is not None
    silent = False
    if life.closed is not None:
        kept = life.closed.outcome is Outcome.KEPT
        pace, rule = Pace.DONE if kept else Pace.ENDED, Rule.CLOSED
    elif life.paused_on(day):
        pace, rule = Pace.PAUSED, Rule.PAUSED
    else:
        pace, rule = _open(life, deadline, day)
        silent = day > deadline and not deeds.within(Span(deadline, day))
    return Stand(
        day,
        pace,
        rule,
        life,
        due=due,
        done=done,
        ends_on=deadline,
        settled=settled,
        nothing_said=silent,
    )


def figures(term: Term, deeds: Deeds, day: date) -> tuple[int, int]:
    """Return the deeds due and done of a one-off."""
    due = 1 if term.measure is None else term.measure.times
    return due, deeds.count(Span(term.start, day))


def _open(life: Life, deadline: date, day: date) -> tuple[Pace, Rule]:
    term = life.term
    if term.moves >= MOST_MOVES:
        return Pace.STALLED, Rule.MOVED_OFTEN
    if day <= deadline:
        return Pace.ON_COURSE, Rule.BY_DATE
    # A tenth of the span, a day begun counted whole.
    patience = max(OVERDUE_DAYS, -(-(deadline - term.start).days // 10))
    if _overdue_days(life, deadline, day) > patience:
        return Pace.STALLED, Rule.LONG_OVERDUE
    return Pace.SLIPPING, Rule.OVERDUE


def _overdue_days(life: Life, deadline: date, day: date) -> int:
    """Return the days after the deadline, up to a day, on which it could be asked about."""
    cursor = max(deadline.toordinal() + 1, life.asked_from.toordinal())
    days = 0
    for pause in sorted(life.pauses, key=lambda each: each.first):
        if pause.first > day:
            break
        days += max(0, pause.first.toordinal() - cursor)
        cursor = max(cursor, pause.last.toordinal() + 1)
    return days + max(0, day.toordinal() + 1 - cursor)
