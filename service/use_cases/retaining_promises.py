"""What became of a library's commitments, window by window, for the figures by month."""

from collections.abc import Iterable, Iterator
from datetime import date, timedelta

from cards.commitments import Commitment, Decision, Period
from cards.commitments.windows import Kept
from cards.retention.kept_months import judged_windows
from service.use_cases.ports import UnitOfWork
from service.use_cases.records import ReaderId

MONTHS = 36
"""Months looked back on, the one that runs among them: three years."""
_LONGEST_WINDOW = timedelta(days=366)
"""A window holds the periods that end in it, and a period is a year at the most, unless a measure
has several of them in one."""


def promised_windows(work: UnitOfWork, reader: ReaderId, day: date) -> Iterator[tuple[date, Kept]]:
    """Yield the last day and the outcome of each window that was judged in the last months."""
    since = _first_day(day)
    commitments = work.commitments.all(reader)
    if not commitments:
        return
    decisions = work.decisions.all(reader)
    check_ins = work.check_ins.since(
        reader,
        {
            own.id: _needed_from(own, decisions.get(own.id, ()), since)
            for own in (each.commitment for each in commitments)
        },
    )
    for each in commitments:
        own = each.commitment.id
        yield from judged_windows(
            each.commitment, decisions.get(own, ()), check_ins.get(own, ()), day, since
        )


def _needed_from(commitment: Commitment, decisions: Iterable[Decision], since: date) -> date:
    """Return the day from which check-ins count: all of what is done once, or so many times."""
    measures = (commitment.measure, *(each.measure for each in decisions))
    whole = any(
        measure is not None
        and (measure.period is Period.ONCE or measure.periods is not None or measure.every > 1)
        for measure in measures
    )
    return date.min if whole else since - _LONGEST_WINDOW


def _first_day(day: date) -> date:
    """Return the first day of the first month looked back on."""
    months = day.year * 12 + day.month - MONTHS
    return date(months // 12, months % 12 + 1, 1)
