"""The answers of a reader: facts, only ever added to. Taking one back adds another."""

from collections.abc import Iterable
from datetime import date, datetime
from typing import Any
from uuid import UUID

from sqlalchemy import Connection, and_, bindparam, select, tuple_

from cards.answers import Answer, Grade
from cards.errors import Conflict
from cards.kinds.base import KindName
from service.store.answer_joins import STANDS, WITH_ITEM, WITH_TAKEN_BACK
from service.store.columns import ID, INSTANT
from service.store.inserts import insert_once
from service.store.tables import answers, items, taken_back
from service.use_cases.records import KeptAnswer, ReaderId
from service.use_cases.sitting_records import GivenOn

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
    answers.c.seconds,
    answers.c.graded_first,
    answers.c.ticked,
)
_WHOLE = (
    select(*_FACTS, answers.c.received_at, taken_back.c.taken_back_at)
    .select_from(WITH_TAKEN_BACK)
    .where(_MINE)
)
_GET = _WHOLE.where(answers.c.id == bindparam("answer"))
_of_item = answers.c.item_id == bindparam("item")
_STANDING = (
    select(*_FACTS)
    .select_from(WITH_TAKEN_BACK)
    .where(_MINE, _of_item, STANDS)
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
_ON = (
    select(answers.c.id, answers.c.item_id, items.c.kind, answers.c.seconds)
    .select_from(WITH_ITEM)
    .where(_MINE, answers.c.day == bindparam("day"), STANDS)
    .order_by(answers.c.answered_at, answers.c.id)
)
_LAST_DAY = (
    select(answers.c.day)
    .where(_MINE, answers.c.day < bindparam("day"))
    .order_by(answers.c.day.desc())
    .limit(1)
)
_LATEST_BY = ("day", "answered_at", "id")
_latest = (
    select(*(answers.c[name] for name in ("reader_id", "item_id", "seconds", *_LATEST_BY)))
    .where(_MINE)
    .order_by(*(answers.c[name].desc() for name in _LATEST_BY))
    .limit(bindparam("limit"))
    .subquery()
)
_SECONDS = (
    select(items.c.kind, _latest.c.seconds)
    .join(
        items,
        and_(items.c.reader_id == _latest.c.reader_id, items.c.id == _latest.c.item_id),
    )
    .where(_latest.c.seconds.is_not(None))
    .order_by(*(_latest.c[name].desc() for name in _LATEST_BY))
)
_KINDS = {kind.value: kind for kind in KindName}
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
                "seconds": answer.seconds,
                "graded_first": answer.graded_first,
                "ticked": _as_words(answer.ticked),
            },
        )
        return added.rowcount > 0

    def on(self, reader: ReaderId, day: date) -> list[GivenOn]:
        """Return the answers given on a day and not taken back, in the order they happened."""
        rows = self._connection.execute(_ON, {"reader": reader, "day": day}).all()
        return [
            GivenOn(answer_id, item_id, _KINDS[kind], seconds)
            for answer_id, item_id, kind, seconds in rows
        ]

    def last_day(self, reader: ReaderId, before: date) -> date | None:
        """Return the latest day before `before` on which an answer was given, or None."""
        found: date | None = self._connection.execute(
            _LAST_DAY, {"reader": reader, "day": before}
        ).scalar_one_or_none()
        return found

    def seconds(self, reader: ReaderId, limit: int) -> dict[KindName, tuple[int, ...]]:
        """Return, of each kind, what the latest `limit` measured answers took; newest first.

        They are looked for among the latest answers of the reader alone, so that it takes no
        longer however many there are.
        """
        values = {"reader": reader, "limit": limit * len(KindName)}
        taken: dict[KindName, list[int]] = {}
        for kind, seconds in self._connection.execute(_SECONDS, values):
            taken.setdefault(_KINDS[kind], []).append(seconds)
        return {kind: tuple(each[:limit]) for kind, each in taken.items()}

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
    (
        answer_id,
        item_id,
        grade,
        answered_at,
        day,
        attempt,
        suggested,
        predicted,
        seconds,
        graded_first,
        ticked,
    ) = facts
    return Answer(
        answer_id,
        item_id,
        _GRADES[grade],
        answered_at,
        day,
        attempt,
        None if suggested is None else _GRADES[suggested],
        predicted,
        seconds,
        graded_first,
        None if ticked is None else frozenset(map(int, ticked.split())),
    )


def _as_words(ticked: frozenset[int] | None) -> str | None:
    """Return ticked ideas as numbers with spaces between, "" for none of them."""
    return None if ticked is None else " ".join(map(str, sorted(ticked)))


def _kept(row: Iterable[Any]) -> KeptAnswer:
    *facts, received_at, taken_back_at = row
    return KeptAnswer(_answer(facts), received_at, taken_back_at)
