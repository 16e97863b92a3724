"""A reader answers: compares, grades, and can take it back."""

from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, timedelta
from uuid import UUID

from cards.answers import GRADES, Answer, Grade
from cards.errors import (
    AnswerConflict,
    AnswerInFuture,
    AnswerMissing,
    InvalidAnswer,
    ItemMissing,
)
from cards.items import KeptItem
from cards.kinds import KINDS
from cards.kinds.base import Answered, Attempt, Mark
from cards.schedule import Schedule, aimed
from service.use_cases.items import ItemView, item_and_digest, view
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.records import KeptAnswer

CLOCKS_DIFFER = timedelta(minutes=5)
"""How far a device's clock may run ahead before its answers count as dated in the future."""


@dataclass(frozen=True, slots=True)
class GivenAnswer:
    """An answer as it arrives.

    Attributes:
        id: made by whoever recorded it.
        answered_at: when it happened, aware; None for now.
        attempt: what was given, when it was given to Catchword; it is then marked.
    """

    id: UUID
    item_id: UUID
    grade: Grade
    answered_at: datetime | None = None
    attempt: Attempt | None = None


@dataclass(frozen=True, slots=True)
class Compared:
    """An attempt beside what the digest says.

    Attributes:
        item: as it is shown.
        answered: what the digest says.
        mark: the suggested grade with its reason.
        due: for each grade, the day it would be due next if graded so now.
    """

    item: ItemView
    answered: Answered
    mark: Mark
    today: date
    due: dict[Grade, date]


@dataclass(frozen=True, slots=True)
class Recorded:
    """An answer that is kept, and what it made of its item.

    Attributes:
        answer: the fact.
        item: the item with its memory as it stands now.
        fresh: False when the very same answer was kept already.
    """

    answer: KeptAnswer
    item: KeptItem
    fresh: bool


def compare(desk: Desk, item_id: UUID, attempt: Attempt) -> Compared:
    """Hold an attempt beside the digest's words, suggest a grade, and keep nothing.

    Raises:
        ItemMissing: this reader has no such item, or its source is gone.
    """
    now = desk.now()
    with desk.store.reading() as work:
        reader = work.readers.get(desk.reader)
        kept, digest = item_and_digest(desk, work, item_id)
        answers = work.answers.of_item(desk.reader, item_id)
    if kept.item.retired:
        raise ItemMissing(item_id)
    kind, part = KINDS[kept.item.kind], digest.part(kept.item.part_id)
    day, schedule = reader.days.of(now), Schedule(aimed(reader.target, kept.care))
    due = {}
    for grade in GRADES:
        would_be = Answer(desk.new_id(), item_id, grade, now, day)
        memory = schedule.fold(item_id, [*answers, would_be])
        if memory is not None:
            due[grade] = memory.due_on
    return Compared(
        item=view(kept, digest, day, schedule),
        answered=kind.answer(digest, part),
        mark=kind.mark(digest, part, attempt),
        today=day,
        due=due,
    )


def record_answer(desk: Desk, given: GivenAnswer) -> Recorded:
    """Append one answer to an item's facts, and fold them to its memory and due day.

    An answer dated before earlier ones is a late arrival and is folded in its own
    place. The very same answer again changes nothing.

    Raises:
        ItemMissing: this reader has no such item.
        AnswerInFuture: it is dated after now.
        InvalidAnswer: it is dated outside the calendar, or its attempt cannot be kept.
        AnswerConflict: another answer already bears its id.
    """
    now = desk.now()
    at = now if given.answered_at is None else _utc(given.answered_at)
    if at > now + CLOCKS_DIFFER:
        raise AnswerInFuture(at)
    with desk.store.writing() as work:
        reader = work.readers.get(desk.reader)
        item = work.items.lock(desk.reader, given.item_id)
        if item is None:
            raise ItemMissing(given.item_id)
        others = work.answers.of_item(desk.reader, given.item_id)
        if any(other.id == given.id for other in others):
            return Recorded(_kept_before(desk, work, given), item, fresh=False)
        schedule = Schedule(aimed(reader.target, item.care))
        answer = Answer(
            id=given.id,
            item_id=given.item_id,
            grade=given.grade,
            answered_at=at,
            day=reader.days.of(at),
            attempt="" if given.attempt is None else given.attempt.as_text(),
            suggested=_suggested(desk, work, item, given.attempt),
        )
        answer = replace(answer, predicted=schedule.predict(answer, others))
        if not work.answers.add(desk.reader, answer, now):
            return Recorded(_kept_before(desk, work, given), item, fresh=False)
        memory = schedule.fold(given.item_id, [*others, answer])
        work.items.remember(desk.reader, given.item_id, memory)
        work.commit()
    return Recorded(KeptAnswer(answer, now), replace(item, memory=memory), fresh=True)


def _suggested(
    desk: Desk, work: UnitOfWork, item: KeptItem, attempt: Attempt | None
) -> Grade | None:
    digest = None if attempt is None else work.digests.get(desk.reader, item.item.digest_id)
    if attempt is None or digest is None or item.item.retired:
        return None
    kind, part = KINDS[item.item.kind], digest.part(item.item.part_id)
    return kind.mark(digest, part, attempt).grade


def take_back(desk: Desk, answer_id: UUID, fact_id: UUID) -> Recorded:
    """Append the fact that an answer was taken back, and fold its item without it.

    Taking it back twice changes nothing.

    Raises:
        AnswerMissing: this reader has given no such answer.
    """
    now = desk.now()
    with desk.store.writing() as work:
        reader = work.readers.get(desk.reader)
        known = work.answers.get(desk.reader, answer_id)
        item = None if known is None else work.items.lock(desk.reader, known.answer.item_id)
        if known is None or item is None:
            raise AnswerMissing(answer_id)
        if known.taken_back_at is not None:
            return Recorded(known, item, fresh=False)
        work.answers.take_back(desk.reader, fact_id, answer_id, now)
        answers = work.answers.of_item(desk.reader, item.item.id)
        memory = Schedule(aimed(reader.target, item.care)).fold(item.item.id, answers)
        work.items.remember(desk.reader, item.item.id, memory)
        work.commit()
    taken = replace(known, taken_back_at=now)
    return Recorded(taken, replace(item, memory=memory), fresh=True)


@dataclass(frozen=True, slots=True)
class ShownAnswer:
    """An answer with its item, and what the digest says, as it is shown afterwards.

    Attributes:
        answered: what the digest says, or None when its source is gone.
    """

    answer: KeptAnswer
    item: ItemView
    answered: Answered | None


def show_answer(desk: Desk, answer_id: UUID) -> ShownAnswer:
    """Return one answer, taken back or not, beside what the digest says.

    Raises:
        AnswerMissing: this reader has given no such answer.
    """
    now = desk.now()
    with desk.store.reading() as work:
        reader = work.readers.get(desk.reader)
        known = work.answers.get(desk.reader, answer_id)
        if known is None:
            raise AnswerMissing(answer_id)
        kept, digest = item_and_digest(desk, work, known.answer.item_id)
    item = view(kept, digest, reader.days.of(now), Schedule(reader.target))
    kind, part = KINDS[kept.item.kind], digest.part(kept.item.part_id)
    return ShownAnswer(known, item, kind.answer(digest, part) if item.cue else None)


def _utc(instant: datetime) -> datetime:
    try:
        return instant.astimezone(UTC)
    except OverflowError as error:
        raise InvalidAnswer(
            "The date of the answer lies outside the calendar.", where="answered_at"
        ) from error


def _kept_before(desk: Desk, work: UnitOfWork, given: GivenAnswer) -> KeptAnswer:
    """Return the answer that bears the given one's id, when it is the same answer.

    Raises:
        AnswerConflict: it is another.
    """
    known = work.answers.get(desk.reader, given.id)
    kept = None if known is None else known.answer
    if known is None or kept is None:
        raise AnswerConflict(given.id)
    same = kept.item_id == given.item_id and kept.grade is given.grade
    if not same or (given.answered_at is not None and kept.answered_at != given.answered_at):
        raise AnswerConflict(given.id)
    return known
