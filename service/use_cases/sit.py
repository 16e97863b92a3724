"""A reader sits down: what is asked today, and in which order."""

from dataclasses import dataclass, replace
from datetime import date, timedelta
from uuid import UUID

from cards.items import KeptItem
from cards.parts import KeptDigest
from cards.schedule import Schedule
from cards.sitting import Candidate, compose, let_in
from service.use_cases.items import ItemView, view
from service.use_cases.ports import Desk

MOST = 200
"""Items called in one sitting at the most: far beyond the few minutes a day it is for."""


@dataclass(frozen=True, slots=True)
class Sitting:
    """What is asked today.

    Attributes:
        day: the reader's day.
        items: in the order they are asked; each cue gives nothing away of what follows.
        next_on: the next day something is asked after today, or None.
    """

    day: date
    items: tuple[ItemView, ...]
    next_on: date | None


def todays_sitting(desk: Desk) -> Sitting:
    """Return today's sitting: what is due, what is let in unasked, what comes round again."""
    with desk.store.reading() as work:
        reader = work.readers.get(desk.reader)
        day = reader.days.of(desk.now())
        called = work.items.called(desk.reader, day, MOST)
        waiting = work.items.unasked(desk.reader, reader.unasked_a_day + 1)
        asked = work.items.first_asked(desk.reader, day)
        unasked = let_in(waiting, reader.unasked_a_day, asked)
        ids = {each.item.digest_id for each in (*called, *unasked)}
        digests = work.digests.many(desk.reader, ids)
        next_on = work.items.next_call(desk.reader, day)
    if len(waiting) > len(unasked) and reader.unasked_a_day > 0:
        next_on = day + timedelta(days=1)
    schedule = Schedule(reader.target)
    ordered = compose(_candidates(called, digests), _candidates(unasked, digests), day, schedule)
    views = (view(each.kept, each.digest, day, schedule) for each in ordered)
    return Sitting(day, tuple(_due_today(each, day) for each in views), next_on)


def _candidates(kept: list[KeptItem], digests: dict[UUID, KeptDigest]) -> list[Candidate]:
    return [Candidate(each, digests[each.item.digest_id]) for each in kept]


def _due_today(item: ItemView, day: date) -> ItemView:
    """An unasked item that is let in is due today."""
    return replace(item, due_on=day) if item.due_on is None else item
