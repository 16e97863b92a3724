"""One answer appended to the facts, within a transaction."""

from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from uuid import UUID

from cards.answers import LONGEST, Answer, Grade, in_order
from cards.errors import AnswerConflict, AnswerInFuture, InvalidAnswer, ItemMissing
from cards.items import KeptItem
from cards.kinds import KINDS
from cards.kinds.base import Attempt, Occasion
from service.use_cases.items import item_and_occasion
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.records import KeptAnswer
from service.use_cases.tallying import settle
from service.use_cases.ways import held_to

CLOCKS_DIFFER = timedelta(minutes=5)
"""How far a device's clock may run ahead before its answers count as dated in the future."""


@dataclass(frozen=True, slots=True)
class GivenAnswer:
    """An answer as it arrives.

    Attributes:
        id: made by whoever recorded it.
        answered_at: when it happened, aware; None for now.
        attempt: what was given, when it was given to Catchword; it is then marked.
        seconds: from the cue to the grade, 1 to 600, or None where nobody measured it.
        graded_first: whether it was graded before the mark was shown.
    """

    id: UUID
    item_id: UUID
    grade: Grade
    answered_at: datetime | None = None
    attempt: Attempt | None = None
    seconds: int | None = None
    graded_first: bool = False


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


def append(
    desk: Desk, work: UnitOfWork, given: GivenAnswer, asked_then: Occasion | None = None
) -> Recorded:
    """Append one answer to an item's facts and fold them, without committing.

    An answer dated before earlier ones is a late arrival and is folded in its own
    place. The very same answer again changes nothing.

    Args:
        desk: the door's desk.
        work: the transaction.
        given: the answer.
        asked_then: the asking it answers, which was printed; None for the item's next.

    Raises:
        ItemMissing: this reader has no such item.
        AnswerInFuture: it is dated after now.
        InvalidAnswer: it is dated outside the calendar, its attempt cannot be kept or is given
            in a way that is not asked, or it took less than a second or more than ten minutes.
        AnswerConflict: another answer already bears its id.
    """
    now = desk.now()
    at = now if given.answered_at is None else _utc(given.answered_at)
    if at > now + CLOCKS_DIFFER:
        raise AnswerInFuture(at)
    if given.seconds is not None and not 1 <= given.seconds <= LONGEST:
        raise InvalidAnswer(
            f"An answer takes from 1 to {LONGEST} seconds, not {given.seconds}; leave out what "
            "was not measured.",
            where="seconds",
        )
    reader = work.readers.get(desk.reader)
    item = work.items.lock(desk.reader, given.item_id)
    if item is None:
        raise ItemMissing(given.item_id)
    others = work.answers.of_item(desk.reader, given.item_id)
    if any(other.id == given.id for other in others):
        return Recorded(_kept_before(desk, work, given), item, fresh=False)
    schedule = reader.schedule(item.item.kind, item.care)
    answer = Answer(
        id=given.id,
        item_id=given.item_id,
        grade=given.grade,
        answered_at=at,
        day=reader.days.of(at),
        attempt=_as_text(desk, work, given.attempt),
        suggested=_suggested(desk, work, item, given.attempt, asked_then),
        seconds=given.seconds,
        graded_first=given.graded_first,
        ticked=None if given.attempt is None else given.attempt.ticked,
    )
    answer = replace(answer, predicted=schedule.predict(answer, others))
    if not work.answers.add(desk.reader, answer, now):
        return Recorded(_kept_before(desk, work, given), item, fresh=False)
    together = in_order([*others, answer])
    memory = schedule.fold(given.item_id, together)
    work.items.remember(desk.reader, given.item_id, memory)
    today = reader.days.of(now)
    settle(work, desk.reader, item, others, together, day=answer.day, today=today)
    return Recorded(KeptAnswer(answer, now), replace(item, memory=memory), fresh=True)


def _suggested(
    desk: Desk,
    work: UnitOfWork,
    item: KeptItem,
    attempt: Attempt | None,
    asked_then: Occasion | None,
) -> Grade | None:
    if attempt is None or item.item.retired:
        return None
    occasion = asked_then or item_and_occasion(desk, work, item.item.id)[1]
    kind = KINDS[item.item.kind]
    return kind.mark(occasion, held_to(kind.cue(occasion), attempt)).grade


def _as_text(desk: Desk, work: UnitOfWork, attempt: Attempt | None) -> str:
    if attempt is None:
        return ""
    chosen = None if attempt.book is None else work.digests.get(desk.reader, attempt.book)
    return attempt.as_text() if chosen is None else chosen.title


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
