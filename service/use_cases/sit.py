"""A reader sits down: what is asked today, and in which order."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from uuid import UUID

from cards.commitments import pressing
from cards.items import KeptItem, occasion_of
from cards.kinds.base import KindName, Shelved
from cards.parts import KeptDigest
from cards.sitting import (
    LATEST,
    Candidate,
    Waiting,
    best_due,
    compose,
    early,
    first_early,
    let_in,
    level_on,
    pace,
    unasked_worth,
)
from service.use_cases.items import ItemView, shelf_for, view
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.records import Reader
from service.use_cases.sitting_records import DueItems, GivenOn
from service.use_cases.standing import stands_on

AWAY = timedelta(weeks=3)
"""After so long without an answer a reader has been away, and is told when all is level again."""

_MOST_CONSIDERED = 60
"""Due items weighed one against another beyond as many as could fit at the quickest, since some
show what others ask. Each is read with its digest: that is what a sitting costs most of."""
_QUICKEST = 5
"""Seconds an item is taken to need at the least, when it is said how many could fit."""
_SOONEST = 400
"""Items not due yet, the soonest first, that are looked at when the due ones leave minutes."""
_MOST_AFRESH = 12
"""Items to be asked afresh, read again lately, that are looked at for one sitting."""
_OTHER_COMMITMENTS = 12
"""Commitments not due among which the one always asked is looked for."""


@dataclass(frozen=True, slots=True)
class Away:
    """A reader who comes back after weeks.

    Attributes:
        since: the day of their last answer.
        level_on: the day on which, at the minutes they have, nothing due is left over;
            None when that is more than a year away.
    """

    since: date
    level_on: date | None


@dataclass(frozen=True, slots=True)
class Sitting:
    """What is asked today.

    Attributes:
        day: the reader's day.
        items: in the order they are asked; each cue gives nothing away of what follows.
        minutes: the day's sitting takes at the most.
        seconds: what its items are expected to take, at the reader's own pace.
        spent: seconds answered for today already.
        next_on: the next day something is asked after today, or None.
        left_out: the items left out for today, the latest last.
        away: when the reader comes back after weeks and more waits than fits; else None.
    """

    day: date
    items: tuple[ItemView, ...]
    minutes: int
    seconds: int
    spent: int
    next_on: date | None
    left_out: tuple[UUID, ...]
    away: Away | None


def todays_sitting(desk: Desk, minutes: int | None = None) -> Sitting:
    """Return today's sitting, composed for the minutes that are left of it.

    Args:
        desk: the door's desk.
        minutes: for the whole day; None for what the reader set, for today or for any day.
    """
    with desk.store.reading() as work:
        return _Composing(desk, work, minutes).sitting()


class _Composing:
    """One sitting being composed, in one transaction."""

    def __init__(self, desk: Desk, work: UnitOfWork, minutes: int | None) -> None:
        self._desk, self._work = desk, work
        self._reader: Reader = work.readers.get(desk.reader)
        self._day = self._reader.days.of(desk.now())
        self._minutes = minutes or work.days.minutes(desk.reader, self._day) or self._reader.minutes
        self._pace = pace(work.answers.seconds(desk.reader, LATEST))
        self._given = work.answers.on(desk.reader, self._day)
        self._left_out = work.days.left_out(desk.reader, self._day)
        self._due = work.items.due(desk.reader, self._day)
        self._soon = DueItems((), (), (), (), (), (), ())

    def sitting(self) -> Sitting:
        spent = self._spent()
        left = self._minutes * 60 - spent
        if sum(self._pace[kind] for kind in self._due.kinds) < left:
            self._soon = self._work.items.soon(self._desk.reader, self._day, _SOONEST)
        waiting, more_unasked = self._waiting(left)
        ordered = compose(waiting, left)
        views = (view(each.kept, each.occasion, self._day, self._reader) for each in ordered)
        return Sitting(
            day=self._day,
            items=tuple(replace(each, due_on=each.due_on or self._day) for each in views),
            minutes=self._minutes,
            seconds=round(sum(each.seconds for each in ordered)),
            spent=round(spent),
            next_on=self._next_on(more_unasked=more_unasked),
            left_out=tuple(sorted(self._left_out, key=lambda each: self._left_out[each])),
            away=self._away(),
        )

    def _spent(self) -> float:
        return sum(
            self._pace[each.kind] if each.seconds is None else each.seconds for each in self._given
        )

    def _waiting(self, left: float) -> tuple[Waiting, bool]:
        """Return what the sitting is composed from, and whether more unasked items wait."""
        reader, work, day = self._desk.reader, self._work, self._day
        quickest = max(_QUICKEST, min(self._pace.values()))
        most = _MOST_CONSIDERED + int(left // quickest) if left > 0 else 0
        candidates = self._due.with_all(self._soon.at(self._early()))
        best = best_due(candidates, day, self._pace, most, self._reader.weighting)
        worth = dict(best)
        due = work.items.chosen(reader, [candidates.keys[place] for place, _ in best])
        asked = work.items.first_asked(reader, day)
        unasked = self._but_left_out(
            work.items.unasked(reader, day, self._reader.unasked_a_day + 1)
        )
        allowed = let_in(unasked, self._reader.unasked_a_day, asked)
        commitment_owed = all(each.kind is not KindName.RESTATE for each in self._given)
        commitments = (
            work.items.commitments(reader, day, _OTHER_COMMITMENTS) if commitment_owed else []
        )
        afresh = work.items.afresh(reader, day, _MOST_AFRESH) if left > 0 else []
        returning = work.items.returning(reader, day, len(self._given))
        seen = work.items.many(reader, {each.item_id for each in self._given})
        everything = [*due, *afresh, *allowed, *commitments, *returning, *seen.values()]
        made = self._candidates(everything)
        weighed = {each.item.id: worth[place] for each, (place, _) in zip(due, best, strict=True)}
        for each in afresh:
            # Read again, it is as good as new: a memory that begins is worth the asking.
            begun = self._unasked_worth(each.item.kind)
            weighed[each.item.id] = max(begun, weighed.get(each.item.id, 0.0))
        waiting = Waiting(
            due=[
                replace(made[item_id], worth=value)
                for item_id, value in weighed.items()
                if item_id not in self._left_out
            ],
            unasked=[made[each.item.id] for each in allowed],
            commitments=[made[each.item.id] for each in self._but_left_out(commitments)],
            pressing=self._pressing((*due, *commitments, *allowed)) if commitment_owed else {},
            returning=[made[each.item.id] for each in self._but_left_out(returning)],
            seen=[made[each] for each in seen if each in made],
            unasked_owed=not sum(asked.values()),
            commitment_owed=commitment_owed,
            last_book=_last_book(self._given, seen),
        )
        return waiting, len(unasked) > len(allowed) and self._reader.unasked_a_day > 0

    def _pressing(self, kept: Sequence[KeptItem]) -> dict[UUID, int]:
        """Return how much what `restate` items ask wants a word of the reader today."""
        items = {each.item.part_id: each.item.id for each in kept if _restates(each)}
        digests = {each.item.digest_id for each in kept if _restates(each)}
        found = self._work.commitments.of_digests(self._desk.reader, digests)
        asked = [each for each in found if each.commitment.id in items]
        stands = stands_on(self._work, self._desk.reader, asked, self._day)
        return {items[part]: int(pressing(stand)) for part, stand in stands.items()}

    def _but_left_out(self, kept: Iterable[KeptItem]) -> list[KeptItem]:
        return [each for each in kept if each.item.id not in self._left_out]

    def _candidates(self, kept: list[KeptItem]) -> dict[UUID, Candidate]:
        reader, work = self._desk.reader, self._work
        digests = work.digests.many(reader, {each.item.digest_id for each in kept})
        shelf = shelf_for(self._desk, work, kept)
        return {
            each.item.id: self._candidate(each, digests[each.item.digest_id], shelf)
            for each in kept
            if not each.item.retired
        }

    def _candidate(
        self, kept: KeptItem, digest: KeptDigest, shelf: tuple[Shelved, ...]
    ) -> Candidate:
        kind = kept.item.kind
        return Candidate(
            kept,
            occasion_of(kept, digest, shelf),
            worth=self._unasked_worth(kind) if kept.memory is None else 0.0,
            seconds=self._pace[kind],
        )

    def _early(self) -> list[int]:
        reader = self._reader
        return early(self._soon, self._day, reader.target, reader.weighting)

    def _unasked_worth(self, kind: KindName) -> float:
        return unasked_worth(kind, self._pace, self._reader.weighting)

    def _next_on(self, *, more_unasked: bool) -> date | None:
        if more_unasked or len(self._due):
            return self._day + timedelta(days=1)
        reader = self._reader
        sooner = first_early(self._soon, self._day, reader.target, reader.weighting)
        called = self._work.items.next_call(self._desk.reader, self._day)
        return min((each for each in (sooner, called) if each is not None), default=None)

    def _away(self) -> Away | None:
        if self._given or not len(self._due):
            return None
        since = self._work.answers.last_day(self._desk.reader, self._day)
        waiting = sum(self._pace[kind] for kind in self._due.kinds)
        if since is None or self._day - since < AWAY or waiting <= self._minutes * 60:
            return None
        remembered = self._work.items.remembered(self._desk.reader)
        reader, seconds = self._reader, 60.0 * self._minutes
        level = level_on(
            remembered, self._day, self._pace, seconds, reader.target, reader.weighting
        )
        return Away(since, level)


def _restates(kept: KeptItem) -> bool:
    return kept.item.kind is KindName.RESTATE


def _last_book(given: list[GivenOn], seen: Mapping[UUID, KeptItem]) -> UUID | None:
    last = seen.get(given[-1].item_id) if given else None
    return None if last is None else last.item.digest_id
