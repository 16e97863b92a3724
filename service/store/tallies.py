"""What the answers of a reader add up to, and the answers it is added up from."""

from collections.abc import Iterable, Iterator, Mapping
from datetime import date
from itertools import groupby
from operator import itemgetter
from typing import Any
from uuid import UUID

from sqlalchemy import Connection, bindparam, delete, func, select, text, type_coerce
from sqlalchemy.types import NullType

from cards.answers import Grade
from cards.kinds.base import KindName
from cards.retention.tally import Of, Tally, TallyKey
from cards.retention.tallying import Counted
from service.store.answer_joins import STANDS, WITH_ITEM
from service.store.columns import ID
from service.store.inserts import insert_or_update
from service.store.tables import answers, items, taken_back, tallied, tallies
from service.use_cases.learning_records import ItemAnswers
from service.use_cases.records import ReaderId

_NUMBERS = Tally._fields
_ALL = select(tallies.c.of, tallies.c.key, *(tallies.c[name] for name in _NUMBERS)).where(
    tallies.c.reader_id == bindparam("reader")
)
_THROUGH = select(tallied.c.through).where(tallied.c.reader_id == bindparam("reader"))
_LOCK = _THROUGH.with_for_update()  # says nothing to SQLite, where a writer is alone anyway
_REACH = insert_or_update(tallied, ("through",))
_ADDED = ", ".join(f"{name} = tallies.{name} + excluded.{name}" for name in _NUMBERS)
# Names of columns are ours; what is added is bound.
_ADD = text(
    f"INSERT INTO tallies (reader_id, of, key, {', '.join(_NUMBERS)}) "  # noqa: S608
    f"VALUES (:reader, :of, :key, {', '.join(f':{name}' for name in _NUMBERS)}) "
    f"ON CONFLICT (reader_id, of, key) DO UPDATE SET {_ADDED}"
).bindparams(bindparam("reader", type_=ID))
_EMPTY = delete(tallies).where(
    tallies.c.reader_id == bindparam("reader"), *(tallies.c[name] == 0 for name in _NUMBERS)
)
_FACTS = select(
    select(func.count())
    .select_from(answers)
    .where(answers.c.reader_id == bindparam("reader"), answers.c.day <= bindparam("through"))
    .scalar_subquery(),
    select(func.count())
    .select_from(taken_back)
    .where(taken_back.c.reader_id == bindparam("reader"))
    .scalar_subquery(),
)
_AS_IT_COMES = NullType()
_touched = select(answers.c.item_id).where(
    answers.c.reader_id == bindparam("reader"),
    answers.c.day > bindparam("after"),
    answers.c.day <= bindparam("through"),
)
_EVERY = (
    select(
        type_coerce(answers.c.item_id, _AS_IT_COMES),
        items.c.kind,
        items.c.digest_id,
        answers.c.day,
        answers.c.grade,
        answers.c.predicted,
        answers.c.suggested,
        answers.c.graded_first,
    )
    .select_from(WITH_ITEM)
    .where(
        answers.c.reader_id == bindparam("reader"),
        answers.c.day <= bindparam("through"),
        STANDS,
    )
    .order_by(answers.c.item_id, answers.c.answered_at, answers.c.id)
)
_OF_TOUCHED = _EVERY.where(answers.c.item_id.in_(_touched))
_AT_ONCE = 5_000
"""Rows the database hands over at once."""
_KINDS = {kind.value: kind for kind in KindName}  # quicker than the enumerations' own look-up
_GRADES = {grade.value: grade for grade in Grade}
_OF = {each.value: each for each in Of}


class SqlTallies:
    """The tallies, in one transaction; satisfies `repositories.Tallies`."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def all(self, reader: ReaderId) -> dict[TallyKey, Tally]:
        """Return every tally as it is kept."""
        rows = self._connection.execute(_ALL, {"reader": reader})
        return {TallyKey(_OF[of], key): Tally(*numbers) for of, key, *numbers in rows}

    def through(self, reader: ReaderId) -> date | None:
        """Return the last day whose answers are in the tallies, or None."""
        found: date | None = self._connection.execute(
            _THROUGH, {"reader": reader}
        ).scalar_one_or_none()
        return found

    def lock(self, reader: ReaderId) -> date | None:
        """Return `through`, and let no other transaction change the tallies until the end."""
        found: date | None = self._connection.execute(
            _LOCK, {"reader": reader}
        ).scalar_one_or_none()
        return found

    def add(self, reader: ReaderId, changes: Mapping[TallyKey, Tally]) -> None:
        """Add to the tallies; numbers may be below 0, and what comes to nothing goes."""
        if not changes:
            return
        self._connection.execute(
            _ADD,
            [
                {"reader": reader, "of": key.of.value, "key": key.key, **numbers._asdict()}
                for key, numbers in changes.items()
            ],
        )
        self._connection.execute(_EMPTY, {"reader": reader})

    def reach(self, reader: ReaderId, through: date) -> None:
        """Keep up to which day answers are in the tallies."""
        self._connection.execute(_REACH, {"reader_id": reader, "through": through})

    def facts(self, reader: ReaderId, through: date) -> tuple[int, int]:
        """Return how many answers there are to a day, and how many of any day were taken back."""
        values = {"reader": reader, "through": through}
        given, taken = self._connection.execute(_FACTS, values).one()
        return given, taken

    def answers(
        self, reader: ReaderId, after: date | None, through: date | None
    ) -> Iterator[ItemAnswers]:
        """Return, item by item, all answers to those answered after a day and through another.

        Answers of days after `through` are left out, and so is what was taken back; None asks
        from the first day, or to the last. They are read as they are asked for.
        """
        values: dict[str, object] = {"reader": reader, "through": through or date.max}
        statement = _EVERY
        if after is not None:
            statement, values = _OF_TOUCHED, values | {"after": after}
        rows = self._connection.execute(
            statement, values, execution_options={"yield_per": _AT_ONCE}
        )
        for _, of_item in groupby(rows, key=itemgetter(0)):
            yield _item_answers(of_item)


def _item_answers(rows: Iterable[Any]) -> ItemAnswers:
    counted = []
    kind, digest_id = "", UUID(int=0)
    for _, kind, digest_id, day, grade, predicted, suggested, first in rows:  # noqa: B007
        mark = None if suggested is None else _GRADES[suggested]
        counted.append(Counted(day, _GRADES[grade], predicted, mark, first))
    return ItemAnswers(_KINDS[kind], digest_id, counted)
