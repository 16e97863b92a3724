"""The items a sitting asks: what is due, what waits unasked, what comes round again."""

from collections.abc import Iterable, Sequence
from datetime import date
from typing import Any
from uuid import UUID

from sqlalchemy import (
    Connection,
    CursorResult,
    Select,
    bindparam,
    func,
    not_,
    or_,
    select,
    type_coerce,
    union_all,
)
from sqlalchemy.types import NullType

from cards.answers import Grade
from cards.items import KeptItem
from cards.kinds.base import KindName
from cards.parts import Care
from service.store.columns import ID
from service.store.item_rows import KINDS, MINE, WHOLE, kept_item
from service.store.tables import AFRESH, CALLED, COMMITTED, UNASKED, items
from service.use_cases.records import ReaderId
from service.use_cases.retaining_records import NeverAsked, StandingItems
from service.use_cases.sitting_records import DueItems

_MANY = WHOLE.where(items.c.id.in_(bindparam("ids", expanding=True, type_=ID)))
_AWAKE = or_(items.c.rests_from.is_(None), items.c.rests_from > bindparam("day"))
"""Not a commitment that is over: that one is recalled no longer, unless it is renewed."""
_CARES = {care.value: care for care in Care}
_AS_THEY_COME = NullType()
"""No conversion: of thousands of items a sitting takes a dozen."""
_REMEMBERED = select(
    *(
        type_coerce(items.c[name], _AS_THEY_COME)
        for name in (
            "id",
            "kind",
            "stability",
            "difficulty",
            "last_day",
            "due_on",
            "care",
        )
    )
).where(MINE, CALLED)
_STANDING = (
    select(
        *(
            type_coerce(items.c[name], _AS_THEY_COME)
            for name in (
                "kind",
                "stability",
                "difficulty",
                "last_day",
                "due_on",
                "care",
                "digest_id",
            )
        )
    )
    .where(MINE, CALLED, _AWAKE)
    .order_by(items.c.id)
)
_STILL_UNASKED = (
    select(items.c.digest_id, items.c.care, items.c.kind, func.count())
    .where(MINE, items.c.stability.is_(None), not_(items.c.retired), _AWAKE)
    .group_by(items.c.digest_added_at, items.c.digest_id, items.c.care, items.c.kind)
    .order_by(items.c.digest_added_at, items.c.digest_id, items.c.kind)
)
_DUE = _REMEMBERED.where(
    items.c.call_on <= bindparam("day"), items.c.last_day < bindparam("day"), _AWAKE
)
_SOON = (
    _REMEMBERED.where(
        items.c.call_on > bindparam("day"), items.c.care != Care.RESTING.value, _AWAKE
    )
    .order_by(items.c.call_on, items.c.id)
    .limit(bindparam("limit"))
)
_RETURNING = (
    WHOLE.where(
        CALLED,
        items.c.call_on == bindparam("day"),
        items.c.last_day == bindparam("day"),
        items.c.last_grade == Grade.BLANK.value,
        _AWAKE,
    )
    .order_by(items.c.id)
    .limit(bindparam("limit"))
)
_COMMITMENTS = (
    WHOLE.where(COMMITTED, _AWAKE).order_by(items.c.call_on, items.c.id).limit(bindparam("limit"))
)
_AFRESH = (
    WHOLE.where(
        AFRESH,
        items.c.afresh_on <= bindparam("day"),
        items.c.last_day < items.c.afresh_on,
        _AWAKE,
    )
    .order_by(items.c.afresh_on, items.c.id)
    .limit(bindparam("limit"))
)


def _unasked(kind: KindName) -> Select[Any]:
    first = (
        WHOLE.where(UNASKED, items.c.kind == kind.value, _AWAKE)
        .order_by(items.c.digest_added_at, items.c.digest_id, items.c.number, items.c.id)
        .limit(bindparam("limit"))
        .subquery()
    )
    return select(first)


_UNASKED = union_all(*(_unasked(kind) for kind in KindName))
_FIRST_ASKED = (
    select(items.c.kind, func.count())
    .where(MINE, items.c.first_day == bindparam("day"))
    .group_by(items.c.kind)
)
_NEXT_CALL = (
    select(items.c.call_on)
    .where(
        MINE,
        CALLED,
        items.c.call_on > bindparam("day"),
        or_(items.c.rests_from.is_(None), items.c.rests_from > items.c.call_on),
    )
    .order_by(items.c.call_on)
    .limit(1)
)
_NEXT_AFRESH = (
    select(items.c.afresh_on)
    .where(MINE, AFRESH, items.c.afresh_on > bindparam("day"))
    .order_by(items.c.afresh_on)
    .limit(1)
)


class SqlCalledItems:
    """The items a sitting asks, in one transaction."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def many(self, reader: ReaderId, ids: Iterable[UUID]) -> dict[UUID, KeptItem]:
        """Return several by id, retired or not; those there are none of are left out."""
        wanted = list(dict.fromkeys(ids))
        if not wanted:
            return {}
        rows = self._connection.execute(_MANY, {"reader": reader, "ids": wanted}).all()
        return {kept.item.id: kept for kept in map(kept_item, rows)}

    def due(self, reader: ReaderId, day: date) -> DueItems:
        """Return all items not retired that are due on a day and were not asked on it yet."""
        return _columns(_fetched(self._connection.execute(_DUE, {"reader": reader, "day": day})))

    def soon(self, reader: ReaderId, day: date, limit: int) -> DueItems:
        """Return the first `limit` items due after a day, resting ones left out, as `due` does."""
        values = {"reader": reader, "day": day, "limit": limit}
        return _columns(_fetched(self._connection.execute(_SOON, values)))

    def remembered(self, reader: ReaderId) -> DueItems:
        """Return every item not retired that has a memory, column by column as `due` does."""
        return _columns(_fetched(self._connection.execute(_REMEMBERED, {"reader": reader})))

    def standing(self, reader: ReaderId, day: date) -> StandingItems:
        """Return every item with a memory that is still asked, column by column, and its book."""
        rows = _fetched(self._connection.execute(_STANDING, {"reader": reader, "day": day}))
        if not rows:
            return StandingItems((), (), (), (), (), (), ())
        kinds, stability, difficulty, last_days, due_on, cares, books = zip(*rows, strict=True)
        days = {each: _day(each) for each in {*last_days, *due_on}}
        known = {each: UUID(bytes=each) if isinstance(each, bytes) else each for each in {*books}}
        return StandingItems(
            [KINDS[kind] for kind in kinds],
            stability,
            difficulty,
            [days[each] for each in last_days],
            [days[each] for each in due_on],
            [_CARES[care] for care in cares],
            [known[book] for book in books],
        )

    def still_unasked(self, reader: ReaderId, day: date) -> list[NeverAsked]:
        """Return how many items of each book and kind were never asked."""
        rows = self._connection.execute(_STILL_UNASKED, {"reader": reader, "day": day})
        return [
            NeverAsked(book, _CARES[care], KINDS[kind], count) for book, care, kind, count in rows
        ]

    def chosen(self, reader: ReaderId, keys: Iterable[object]) -> list[KeptItem]:
        """Return the items of some of the keys that `due` gave, in the order of the keys."""
        ids = [UUID(bytes=key) if isinstance(key, bytes) else key for key in keys]
        found = self.many(reader, (each for each in ids if isinstance(each, UUID)))
        return [found[each] for each in ids if isinstance(each, UUID)]

    def returning(self, reader: ReaderId, day: date, limit: int) -> list[KeptItem]:
        """Return the items whose last answer, on `day`, came back blank, by id."""
        if limit <= 0:
            return []
        rows = self._connection.execute(
            _RETURNING, {"reader": reader, "day": day, "limit": limit}
        ).all()
        return [kept_item(row) for row in rows]

    def commitments(self, reader: ReaderId, day: date, limit: int) -> list[KeptItem]:
        """Return the first `limit` `restate` items asked before that do not rest on a day.

        By the day due.
        """
        values = {"reader": reader, "day": day, "limit": limit}
        return [kept_item(row) for row in self._connection.execute(_COMMITMENTS, values).all()]

    def afresh(self, reader: ReaderId, day: date, limit: int) -> list[KeptItem]:
        """Return the first `limit` items that were to be asked afresh by a day and were not yet."""
        values = {"reader": reader, "day": day, "limit": limit}
        return [kept_item(row) for row in self._connection.execute(_AFRESH, values).all()]

    def unasked(self, reader: ReaderId, day: date, limit: int) -> list[KeptItem]:
        """Return, of each kind, the first `limit` unasked items that do not rest on a day.

        Nor are they retired, nor of a resting book. First are those of the digest added
        first, then by their number.
        """
        values = {"reader": reader, "day": day, "limit": limit}
        return [kept_item(row) for row in self._connection.execute(_UNASKED, values).all()]

    def first_asked(self, reader: ReaderId, day: date) -> dict[KindName, int]:
        """Return how many items of each kind were asked for the first time on a day."""
        rows = self._connection.execute(_FIRST_ASKED, {"reader": reader, "day": day}).all()
        return {KINDS[kind]: count for kind, count in rows}

    def next_call(self, reader: ReaderId, day: date) -> date | None:
        """Return the first day after `day` on which something is asked, or None."""
        values = {"reader": reader, "day": day}
        found = (
            self._connection.execute(each, values).scalar_one_or_none()
            for each in (_NEXT_CALL, _NEXT_AFRESH)
        )
        return min((each for each in found if each is not None), default=None)


def _fetched(result: CursorResult[Any]) -> Sequence[Iterable[Any]]:
    """Return rows as the driver hands them over: made rows of ours, thousands would be slow."""
    rows: Sequence[Iterable[Any]] = result.cursor.fetchall()
    result.close()
    return rows


def _columns(rows: Sequence[Iterable[Any]]) -> DueItems:
    """Turn rows into columns; the days of many are few, so each is read once."""
    if not rows:
        return DueItems((), (), (), (), (), (), ())
    keys, kinds, stability, difficulty, last_days, due_on, cares = zip(*rows, strict=True)
    days = {day: _day(day) for day in {*last_days, *due_on}}
    return DueItems(
        keys,
        [KINDS[kind] for kind in kinds],
        stability,
        difficulty,
        [days[day] for day in last_days],
        [days[day] for day in due_on],
        [care == Care.CLOSE.value for care in cares],
    )


def _day(found: str | date) -> date:
    return date.fromisoformat(found) if isinstance(found, str) else found
