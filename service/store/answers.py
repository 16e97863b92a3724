"""The answers of a reader: facts, only ever added to. Taking one back adds another."""

from collections.abc import Iterable
from datetime import datetime
from typing import Any
from uuid import UUID

from sqlalchemy import Connection, and_, bindparam, select, tuple_

from cards.answers import Answer, Grade
from cards.errors import Conflict
from service.store.columns import ID, INSTANT
from service.store.inserts import insert_once
from service.store.tables import answers, taken_back
from service.use_cases.records import KeptAnswer, ReaderId

_MINE = answers.c.reader_id == bindparam("reader")
_FACTS = (
    answers.c.id,
    answers.c.item_id,
    answers.c.grade,
    answers.c.answered_at,
    answers.c.day,
    answers.c.attempt,
    answers.c.suggested,
    answers.c.predicted,
)
_with_taken_back = answers.outerjoin(
    taken_back,
    and_(taken_back.c.reader_id == answers.c.reader_id, taken_back.c.answer_id == answers.c.id),
)
_WHOLE = (
    select(*_FACTS, answers.c.received_at, taken_back.c.taken_back_at)
    .select_from(_with_taken_back)
    .where(_MINE)
)
_GET = _WHOLE.where(answers.c.id == bindparam("answer"))
_of_item = answers.c.item_id == bindparam("item")
_STANDING = (
    select(*_FACTS)
    .select_from(_with_taken_back)
    .where(_MINE, _of_item, taken_back.c.id.is_(None))
    .order_by(answers.c.answered_at, answers.c.id)
)
_NEWEST = (
    _WHOLE.where(_of_item)
    .order_by(answers.c.answered_at.desc(), answers.c.id.desc())
    .limit(bindparam("limit"))
)
_OLDER = _NEWEST.where(
    tuple_(answers.c.answered_at, answers.c.id)
    < tuple_(bindparam("answered_at", type_=INSTANT), bindparam("last", type_=ID))
)
_GRADES = {grade.value: grade for grade in Grade}  # quicker than the enumeration's own look-up

_ADD = insert_once(answers)
_TAKE_BACK = insert_once(taken_back)


class SqlAnswers:
    """The answers, in one transaction; satisfies `ports.Answers`."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def get(self, reader: ReaderId, answer_id: UUID) -> KeptAnswer | None:
        """Return one answer, taken back or not."""
        row = self._connection.execute(_GET, {"reader": reader, "answer": answer_id}).first()
        return None if row is None else _kept(row)

    def of_item(self, reader: ReaderId, item_id: UUID) -> list[Answer]:
        """Return the answers to an item that were not taken back, in the order they happened."""
        rows = self._connection.execute(_STANDING, {"reader": reader, "item": item_id}).all()
        return [_answer(row) for row in rows]

    def history(
        self, reader: ReaderId, item_id: UUID, after: tuple[datetime, UUID] | None, limit: int
    ) -> list[KeptAnswer]:
        """Return all answers to an item, newest first by (answered_at, id), beyond `after`."""
        values: dict[str, object] = {"reader": reader, "item": item_id, "limit": limit}
        if after is None:
            rows = self._connection.execute(_NEWEST, values).all()
        else:
            values |= {"answered_at": after[0], "last": after[1]}
            rows = self._connection.execute(_OLDER, values).all()
        return [_kept(row) for row in rows]

    def add(self, reader: ReaderId, answer: Answer, received_at: datetime) -> bool:
        """Append an answer; False, and nothing is kept, when its id is taken already."""
        added = self._connection.execute(
            _ADD,
            {
                "reader_id": reader,
                "id": answer.id,
                "item_id": answer.item_id,
                "grade": answer.grade.value,
                "answered_at": answer.answered_at,
                "day": answer.day,
                "attempt": answer.attempt,
                "suggested": None if answer.suggested is None else answer.suggested.value,
                "predicted": answer.predicted,
                "received_at": received_at,
            },
        )
        return added.rowcount > 0

    def take_back(self, reader: ReaderId, fact_id: UUID, answer_id: UUID, now: datetime) -> None:
        """Append the fact that an answer was taken back; a second time changes nothing.

        Raises:
            Conflict: another answer was taken back under this fact's id.
        """
        added = self._connection.execute(
            _TAKE_BACK,
            {"reader_id": reader, "id": fact_id, "answer_id": answer_id, "taken_back_at": now},
        )
        if added.rowcount == 0:
            kept = self.get(reader, answer_id)
            if kept is None or kept.taken_back_at is None:
                raise Conflict(
                    f"{fact_id} already stands for another answer taken back. Take this one back "
                    "under an id of its own.",
                    where="id",
                )


def _answer(facts: Iterable[Any]) -> Answer:
    answer_id, item_id, grade, answered_at, day, attempt, suggested, predicted = facts
    return Answer(
        answer_id,
        item_id,
        _GRADES[grade],
        answered_at,
        day,
        attempt,
        None if suggested is None else _GRADES[suggested],
        predicted,
    )


def _kept(row: Iterable[Any]) -> KeptAnswer:
    *facts, received_at, taken_back_at = row
    return KeptAnswer(_answer(facts), received_at, taken_back_at)
