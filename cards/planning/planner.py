"""What each target takes and keeps in ten years, and which one is proposed."""

from collections.abc import Sequence
from datetime import date
from functools import reduce

from cards.parts import Care
from cards.planning.beginnings import beginnings
from cards.planning.courses import A_YEAR, DAYS
from cards.planning.foreseeing import TARGETS, Foreseen, foreseen
from cards.planning.library import Habits, Remembered, Unasked
from cards.planning.proposing import proposal
from cards.planning.records import YEARS, CarePlan, Plan, TargetPlan

_MINUTE = 60


def plan(items: Remembered, unasked: Sequence[Unasked], day: date, habits: Habits) -> Plan:
    """Return what each target takes and keeps in the ten years from a day on.

    Everything is asked on the day it is due, however long that takes: the plan tells what a
    target takes, not what the minutes of the day leave of it. Unasked items are let in day by
    day, books at rest left out. Items stand by their memory, with the due days each target
    would give them. What the care of a book makes of a target is `cards.schedule.aimed`.

    Args:
        items: all that were asked before.
        unasked: the others, in the order of their books.
        day: the reader's day.
        habits: how the reader sits; their own target is not looked at.
    """
    found = dict.fromkeys(Care, Foreseen.nothing())
    for care, these in foreseen(list(beginnings(items, unasked, day, habits, DAYS))):
        found[care] = found[care].with_all(these)
    counts = dict.fromkeys(Care, 0)
    for care in items.cares:
        counts[care] += 1
    for entry in unasked:
        counts[entry.care] += entry.count
    whole = _plan(None, sum(counts.values()), reduce(Foreseen.with_all, found.values()))
    fit = [each.target for each in whole.targets if each.minutes[0] <= habits.minutes]
    return Plan(
        whole=whole,
        by_care=tuple(_plan(care, counts[care], found[care]) for care in Care if counts[care]),
        within=max(fit, default=None),
    )


def _plan(care: Care | None, items: int, found: Foreseen) -> CarePlan:
    minutes = found.seconds / (_MINUTE * A_YEAR)
    until = [
        float(seconds / (_MINUTE * count)) if count else None
        for seconds, count in zip(found.until_lasting, found.lasting, strict=True)
    ]
    return CarePlan(
        care=care,
        items=items,
        now=found.now,
        left_alone=tuple(found.left_alone.tolist()),
        targets=tuple(
            TargetPlan(
                target=target,
                minutes=tuple(float(minutes[row, year - 1]) for year in YEARS),
                mean_minutes=float(minutes[row].mean()),
                known=tuple(found.known[row].tolist()),
                until_lasting=until[row],
            )
            for row, target in enumerate(TARGETS)
        ),
        proposal=proposal(TARGETS, until),
    )
