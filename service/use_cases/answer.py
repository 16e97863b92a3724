"""A reader answers: compares, grades, and can take it back."""

from dataclasses import dataclass, replace
from datetime import date
from uuid import UUID

from cards.answers import GRADES, Answer, Grade, graded_first
from cards.errors import (
    AnswerMissing,
    ItemMissing,
)
from cards.items import occasion_of
from cards.kinds import KINDS
from cards.kinds.base import Answered, Attempt, Mark, Occasion
from service.use_cases.items import ItemView, item_and_occasion, view
from service.use_cases.ports import Desk
from service.use_cases.recording import GivenAnswer, Recorded, append
from service.use_cases.records import KeptAnswer
from service.use_cases.tallying import settle
from service.use_cases.ways import held_to


@dataclass(frozen=True, slots=True)
class Compared:
    """An attempt beside what the digest says.

    Attributes:
        item: as it is shown.
        answered: what the digest says.
        mark: the suggested grade with its reason.
        asked: how many answers the item had before.
        graded_first: whether the reader is to grade before they see the mark.
        due: for each grade, the day it would be due next if graded so now.
    """

    item: ItemView
    answered: Answered
    mark: Mark
    asked: int
    graded_first: bool
    today: date
    due: dict[Grade, date]


def compare(desk: Desk, item_id: UUID, attempt: Attempt) -> Compared:
    """Hold an attempt beside the digest's words, suggest a grade, and keep nothing.

    Raises:
        ItemMissing: this reader has no such item, or its source is gone.
        InvalidAnswer: the attempt is given in a way that is not asked.
    """
    now = desk.now()
    with desk.store.reading() as work:
        reader = work.readers.get(desk.reader)
        kept, occasion = item_and_occasion(desk, work, item_id)
        answers = work.answers.of_item(desk.reader, item_id)
    if kept.item.retired:
        raise ItemMissing(item_id)
    kind = KINDS[kept.item.kind]
    day, schedule = reader.days.of(now), reader.schedule(kept.item.kind, kept.care)
    due = {}
    for grade in GRADES:
        would_be = Answer(desk.new_id(), item_id, grade, now, day)
        memory = schedule.fold(item_id, [*answers, would_be])
        if memory is not None:
            due[grade] = memory.due_on
    return Compared(
        item=view(kept, occasion, day, reader),
        answered=kind.answer(occasion),
        mark=kind.mark(occasion, held_to(kind.cue(occasion), attempt)),
        asked=occasion.asked,
        graded_first=not attempt.empty and graded_first(item_id, occasion.asked),
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
        InvalidAnswer: it is dated outside the calendar, its attempt cannot be kept or is given
            in a way that is not asked, or it took less than a second or more than ten minutes.
        AnswerConflict: another answer already bears its id.
    """
    with desk.store.writing() as work:
        recorded = append(desk, work, given)
        work.commit()
    return recorded


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
        before = work.answers.of_item(desk.reader, item.item.id)
        work.answers.take_back(desk.reader, fact_id, answer_id, now)
        answers = [each for each in before if each.id != answer_id]
        memory = reader.schedule(item.item.kind, item.care).fold(item.item.id, answers)
        work.items.remember(desk.reader, item.item.id, memory)
        day, today = known.answer.day, reader.days.of(now)
        settle(work, desk.reader, item, before, answers, day=day, today=today)
        work.commit()
    taken = replace(known, taken_back_at=now)
    return Recorded(taken, replace(item, memory=memory), fresh=True)


@dataclass(frozen=True, slots=True)
class ShownAnswer:
    """An answer with its item, and what the digest says, as it is shown afterwards.

    Attributes:
        answered: what the digest says, or None when its source is gone.
        occasion: as it was when the answer was given, by what the digest says now.
    """

    answer: KeptAnswer
    item: ItemView
    answered: Answered | None
    occasion: Occasion

    def mark(self, attempt: Attempt) -> Mark:
        """Return the mark of an attempt at the item as it was asked then."""
        return KINDS[self.item.kept.item.kind].mark(self.occasion, attempt)


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
        kept, occasion = item_and_occasion(desk, work, known.answer.item_id)
        answers = work.answers.of_item(desk.reader, kept.item.id)
    earlier = [each for each in answers if _before(each, known.answer)]
    memory = reader.schedule(kept.item.kind).fold(kept.item.id, earlier)
    # What was asked depends on the answers before it.
    occasion = occasion_of(replace(kept, memory=memory), occasion.digest, occasion.shelf)
    item = view(kept, occasion, reader.days.of(now), reader)
    says = KINDS[kept.item.kind].answer(occasion) if item.cue else None
    return ShownAnswer(known, item, says, occasion)


def _before(one: Answer, other: Answer) -> bool:
    return (one.answered_at, one.id) < (other.answered_at, other.id)
