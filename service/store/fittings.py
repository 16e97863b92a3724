"""The fits of a reader's weights, and memories folded again under them."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from itertools import pairwise
from typing import Any
from uuid import UUID

from sqlalchemy import (
    Connection,
    bindparam,
    case,
    func,
    insert,
    select,
    type_coerce,
    update,
)
from sqlalchemy.types import NullType

from cards.answers import GRADES, Grade
from cards.kinds.base import KindName
from cards.parts import Care
from service.store.answer_joins import STANDS, WITH_ITEM
from service.store.columns import ID
from service.store.item_rows import KEPT, MINE, memory_values
from service.store.tables import MOVING, answers, fittings, items
from service.store.verdict_json import verdicts_from_json, verdicts_to_json
from service.store.weighting_json import weighting_from_json, weighting_to_json
from service.use_cases.learning_records import AnswerColumns, Fitting, FoldedItem, Refolded
from service.use_cases.records import ReaderId

_WHOLE = (
    select(
        fittings.c.id,
        fittings.c.fitted_at,
        fittings.c.fitted_on,
        fittings.c.answers,
        fittings.c.verdicts,
        fittings.c.weights,
        fittings.c.refolded,
        fittings.c.moved_on,
    )
    .where(fittings.c.reader_id == bindparam("reader"))
    .order_by(fittings.c.fitted_at.desc(), fittings.c.id.desc())
    .limit(bindparam("limit"))
)
_ADOPTED = _WHOLE.where(fittings.c.adopted)
_ADD = insert(fittings)
_CARRIED = (
    update(fittings)
    .where(fittings.c.reader_id == bindparam("reader"), fittings.c.id == bindparam("fitting"))
    .values(refolded=True, moved_on=bindparam("new_moved_on"))
)
_COLUMNS = (
    select(type_coerce(answers.c.item_id, NullType()), items.c.kind, answers.c.day, answers.c.grade)
    .select_from(WITH_ITEM)
    .where(answers.c.reader_id == bindparam("reader"), STANDS)
    .order_by(answers.c.item_id, answers.c.answered_at, answers.c.id)
)
_FOLDED = (
    select(items.c.id, items.c.kind, items.c.care, items.c.retired, items.c.due_on)
    .where(MINE, items.c.stability.is_not(None), items.c.id > bindparam("after"))
    .order_by(items.c.id)
    .limit(bindparam("limit"))
    .with_for_update()
)
_REFOLD = (
    update(items)
    .where(MINE, items.c.id == bindparam("item"))
    .values({name: bindparam(f"new_{name}") for name in KEPT})
)
_sooner = case((items.c.due_on < items.c.moves_to, items.c.due_on), else_=items.c.moves_to)
_WAITING = (
    select(items.c.id).where(MINE, MOVING).order_by(_sooner, items.c.id).limit(bindparam("limit"))
)
_MOVE = (
    update(items)
    .where(MINE, items.c.id.in_(bindparam("ids", expanding=True, type_=ID)))
    .values(
        due_on=items.c.moves_to,
        call_on=case(
            (items.c.last_grade == Grade.BLANK.value, items.c.last_day), else_=items.c.moves_to
        ),
        moves_to=None,
    )
)
_MOVING = select(func.count()).select_from(items).where(MINE, MOVING)
_FIRST = UUID(int=0)
_KINDS = {kind.value: kind for kind in KindName}
_NUMBERS = {grade.value: number for number, grade in enumerate(GRADES)}


class SqlFittings:
    """The fits, in one transaction; satisfies `repositories.Fittings`."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def add(self, reader: ReaderId, fitting: Fitting) -> None:
        """Append a fit."""
        self._connection.execute(
            _ADD,
            {
                "reader_id": reader,
                "id": fitting.id,
                "fitted_at": fitting.fitted_at,
                "fitted_on": fitting.fitted_on,
                "answers": fitting.answers,
                "adopted": fitting.adopted,
                "weights": weighting_to_json(fitting.weighting) or "",
                "verdicts": verdicts_to_json(fitting.verdicts),
                "refolded": fitting.refolded,
                "moved_on": fitting.moved_on,
            },
        )

    def latest(self, reader: ReaderId) -> Fitting | None:
        """Return the last fit, adopted or not."""
        row = self._connection.execute(_WHOLE, {"reader": reader, "limit": 1}).first()
        return None if row is None else _fitting(row)

    def adopted(self, reader: ReaderId, limit: int) -> list[Fitting]:
        """Return the latest fits that changed what is in force, the last first."""
        rows = self._connection.execute(_ADOPTED, {"reader": reader, "limit": limit}).all()
        return [_fitting(row) for row in rows]

    def carried(self, reader: ReaderId, fitting_id: UUID, moved_on: date | None) -> None:
        """Keep that every memory was folded under a fit, and on which day due days moved last."""
        self._connection.execute(
            _CARRIED, {"reader": reader, "fitting": fitting_id, "new_moved_on": moved_on}
        )

    def columns(self, reader: ReaderId) -> AnswerColumns:
        """Return every answer to items, retired ones too, column by column."""
        rows = self._connection.execute(_COLUMNS, {"reader": reader}).all()
        if not rows:
            return AnswerColumns((), (), (), ())
        keys, kinds, given_on, grades = zip(*rows, strict=True)
        numbers, days = [0], [given_on[0].toordinal()]
        for (before, after), day in zip(pairwise(keys), given_on[1:], strict=True):
            # Where the reader travelled a later answer can bear an earlier date.
            same = before == after
            days.append(max(days[-1], day.toordinal()) if same else day.toordinal())
            numbers.append(numbers[-1] + (not same))
        return AnswerColumns(
            numbers, [_KINDS[kind] for kind in kinds], days, [_NUMBERS[each] for each in grades]
        )

    def folded(self, reader: ReaderId, after: UUID | None, limit: int) -> list[FoldedItem]:
        """Return items with a memory, retired ones too, by id, beyond `after`."""
        values = {"reader": reader, "after": after or _FIRST, "limit": limit}
        return [
            FoldedItem(item_id, _KINDS[kind], Care(care), retired, due_on)
            for item_id, kind, care, retired, due_on in self._connection.execute(_FOLDED, values)
        ]

    def refold(self, reader: ReaderId, items: Sequence[Refolded]) -> None:
        """Keep memories folded again; where the due day is another, it waits to be moved."""
        if items:
            self._connection.execute(_REFOLD, [_values(reader, each) for each in items])

    def move(self, reader: ReaderId, limit: int) -> int:
        """Move the due days of the first `limit` items that wait, and return how many did."""
        waiting = self._connection.execute(_WAITING, {"reader": reader, "limit": limit})
        ids = list(waiting.scalars())
        if ids:
            self._connection.execute(_MOVE, {"reader": reader, "ids": ids})
        return len(ids)

    def moving(self, reader: ReaderId) -> int:
        """Return how many items, not retired, wait to have their due day moved."""
        found: int = self._connection.execute(_MOVING, {"reader": reader}).scalar_one()
        return found


def _fitting(row: Sequence[Any]) -> Fitting:
    fitting_id, fitted_at, fitted_on, counted, verdicts, weights, refolded, moved_on = row
    return Fitting(
        fitting_id,
        fitted_at,
        fitted_on,
        counted,
        verdicts_from_json(verdicts),
        weighting_from_json(weights or None),
        refolded,
        moved_on,
    )


def _values(reader: ReaderId, each: Refolded) -> dict[str, object]:
    moves_to = None if each.memory.due_on == each.due_on else each.memory.due_on
    kept = memory_values(replace(each.memory, due_on=each.due_on))
    return {"reader": reader, "item": each.item_id} | kept | {"new_moves_to": moves_to}
