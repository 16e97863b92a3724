"""The items of a reader's library, each with what its answers come to."""

from collections import Counter, defaultdict
from collections.abc import Iterable, Sequence
from datetime import date, datetime
from functools import cache
from typing import Any
from uuid import UUID

from sqlalchemy import (
    Connection,
    Row,
    Select,
    bindparam,
    func,
    not_,
    select,
    type_coerce,
    union_all,
    update,
)
from sqlalchemy.types import NullType

from cards.answers import Grade
from cards.items import Item, KeptItem, Standing
from cards.kinds.base import KindName
from cards.parts import Care
from cards.schedule import Memory
from service.store.columns import ID
from service.store.inserts import insert_or_update
from service.store.tables import CALLED, UNASKED, digests, items
from service.use_cases.records import ReaderId
from service.use_cases.sitting_records import DueItems

_MEMORY = ("stability", "difficulty", "first_day", "last_day", "last_grade", "answers", "due_on")

_MINE = items.c.reader_id == bindparam("reader")
_WHOLE = select(
    items.c.id,
    items.c.kind,
    items.c.digest_id,
    items.c.part_id,
    items.c.number,
    items.c.retired,
    items.c.care,
    *(items.c[name] for name in _MEMORY),
).where(_MINE)
_GET = _WHOLE.where(items.c.id == bindparam("item"))
_LOCK = _GET.with_for_update()  # says nothing to SQLite, where a writer is alone anyway
_OF_DIGEST = _WHOLE.where(items.c.digest_id == bindparam("digest")).order_by(
    items.c.kind, items.c.number, items.c.id
)
_OF_DIGESTS = _WHOLE.where(
    not_(items.c.retired),
    items.c.digest_id.in_(bindparam("digests", expanding=True, type_=ID)),
)
_MANY = _WHOLE.where(items.c.id.in_(bindparam("ids", expanding=True, type_=ID)))
_AS_THEY_COME = NullType()
"""No conversion: of thousands of items a sitting takes a dozen."""
_REMEMBERED = select(
    *(
        type_coerce(items.c[name], _AS_THEY_COME)
        for name in (
            "id",
            "digest_id",
            "kind",
            "stability",
            "difficulty",
            "last_day",
            "due_on",
            "care",
        )
    )
).where(_MINE, CALLED)
_DUE = _REMEMBERED.where(items.c.call_on <= bindparam("day"), items.c.last_day < bindparam("day"))
_RETURNING = (
    _WHOLE.where(
        CALLED,
        items.c.call_on == bindparam("day"),
        items.c.last_day == bindparam("day"),
        items.c.last_grade == Grade.BLANK.value,
    )
    .order_by(items.c.id)
    .limit(bindparam("limit"))
)
_COMMITMENTS = (
    _WHOLE.where(CALLED, items.c.kind == KindName.RESTATE.value)
    .order_by(items.c.call_on, items.c.id)
    .limit(bindparam("limit"))
)


def _unasked(kind: KindName) -> Select[Any]:
    first = (
        _WHOLE.where(UNASKED, items.c.kind == kind.value)
        .order_by(items.c.digest_added_at, items.c.digest_id, items.c.number, items.c.id)
        .limit(bindparam("limit"))
        .subquery()
    )
    return select(first)


_UNASKED = union_all(*(_unasked(kind) for kind in KindName))
_FIRST_ASKED = (
    select(items.c.kind, func.count())
    .where(_MINE, items.c.first_day == bindparam("day"))
    .group_by(items.c.kind)
)
_NEXT_CALL = (
    select(items.c.call_on)
    .where(_MINE, CALLED, items.c.call_on > bindparam("day"))
    .order_by(items.c.call_on)
    .limit(1)
)
_ADDED_AT = select(digests.c.id, digests.c.added_at).where(
    digests.c.reader_id == bindparam("reader"),
    digests.c.id.in_(bindparam("ids", expanding=True, type_=ID)),
)
_PUT = insert_or_update(items, ("number", "retired", "care"))
_REMEMBER = (
    update(items)
    .where(_MINE, items.c.id == bindparam("item"))
    .values({name: bindparam(f"new_{name}") for name in (*_MEMORY, "call_on")})
)


_NARROWER = {
    "after": items.c.id > bindparam("after"),
    "digest": items.c.digest_id == bindparam("digest"),
    "kind": items.c.kind == bindparam("kind"),
}


@cache
def _page(narrowed_by: frozenset[str]) -> Select[Any]:
    conditions = [_NARROWER[name] for name in sorted(narrowed_by)]
    return (
        _WHOLE.where(not_(items.c.retired), *conditions)
        .order_by(items.c.id)
        .limit(bindparam("limit"))
    )


class SqlItems:
    """The items, in one transaction; satisfies `ports.Items`."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def get(self, reader: ReaderId, item_id: UUID) -> KeptItem | None:
        """Return one item, retired or not."""
        row = self._connection.execute(_GET, {"reader": reader, "item": item_id}).first()
        return None if row is None else _kept(row)

    def lock(self, reader: ReaderId, item_id: UUID) -> KeptItem | None:
        """Return one item, and let no other transaction change it until the end of this one."""
        row = self._connection.execute(_LOCK, {"reader": reader, "item": item_id}).first()
        return None if row is None else _kept(row)

    def of_digest(self, reader: ReaderId, digest_id: UUID) -> list[KeptItem]:
        """Return all items of a digest, retired ones too, by kind and number."""
        rows = self._connection.execute(_OF_DIGEST, {"reader": reader, "digest": digest_id}).all()
        return [_kept(row) for row in rows]

    def standings(
        self, reader: ReaderId, digest_ids: Iterable[UUID]
    ) -> dict[UUID, dict[Standing, int]]:
        """Return how many items of each digest, not retired, stand how, in one statement.

        A standing no item has is left out, and so is a digest without items. What makes a
        standing is the core's to say, so the items are counted here and not by the database.
        """
        wanted = list(dict.fromkeys(digest_ids))
        if not wanted:
            return {}
        counts: defaultdict[UUID, Counter[Standing]] = defaultdict(Counter)
        for row in self._connection.execute(_OF_DIGESTS, {"reader": reader, "digests": wanted}):
            kept = _kept(row)
            counts[kept.item.digest_id][kept.standing] += 1
        return {digest_id: dict(count) for digest_id, count in counts.items()}

    def put(
        self,
        reader: ReaderId,
        items: Sequence[Item],
        added_at: datetime,
        care: Care = Care.STEADY,
    ) -> None:
        """Keep items: new ones as unasked, known ones with their number, retirement and care.

        The unasked ones of a resting book wait and are not let in (`unasked`). Their digests
        are to be kept first.
        """
        if not items:
            return
        arrived = {
            row.id: row.added_at
            for row in self._connection.execute(
                _ADDED_AT, {"reader": reader, "ids": list({item.digest_id for item in items})}
            )
        }
        self._connection.execute(
            _PUT,
            [
                _UNASKED_MEMORY
                | {
                    "reader_id": reader,
                    "id": item.id,
                    "digest_id": item.digest_id,
                    "part_id": item.part_id,
                    "kind": item.kind.value,
                    "number": item.number,
                    "retired": item.retired,
                    "care": care.value,
                    "added_at": added_at,
                    "digest_added_at": arrived.get(item.digest_id, added_at),
                }
                for item in items
            ],
        )

    def remember(self, reader: ReaderId, item_id: UUID, memory: Memory | None) -> None:
        """Keep what the answers to an item come to, None when none is left."""
        self._connection.execute(
            _REMEMBER, {"reader": reader, "item": item_id} | _memory_values(memory)
        )

    def many(self, reader: ReaderId, ids: Iterable[UUID]) -> dict[UUID, KeptItem]:
        """Return several by id, retired or not; those there are none of are left out."""
        wanted = list(dict.fromkeys(ids))
        if not wanted:
            return {}
        rows = self._connection.execute(_MANY, {"reader": reader, "ids": wanted}).all()
        return {kept.item.id: kept for kept in map(_kept, rows)}

    def due(self, reader: ReaderId, day: date) -> DueItems:
        """Return all items not retired that are due on a day and were not asked on it yet."""
        return _columns(self._connection.execute(_DUE, {"reader": reader, "day": day}).all())

    def remembered(self, reader: ReaderId) -> DueItems:
        """Return every item not retired that has a memory, column by column as `due` does."""
        return _columns(self._connection.execute(_REMEMBERED, {"reader": reader}).all())

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
        return [_kept(row) for row in rows]

    def commitments(self, reader: ReaderId, limit: int) -> list[KeptItem]:
        """Return the first `limit` `restate` items that were asked before, by the day due."""
        rows = self._connection.execute(_COMMITMENTS, {"reader": reader, "limit": limit}).all()
        return [_kept(row) for row in rows]

    def unasked(self, reader: ReaderId, limit: int) -> list[KeptItem]:
        """Return, of each kind, the first `limit` unasked items not retired nor resting.

        First are those of the digest added first, then by their number.
        """
        rows = self._connection.execute(_UNASKED, {"reader": reader, "limit": limit}).all()
        return [_kept(row) for row in rows]

    def first_asked(self, reader: ReaderId, day: date) -> dict[KindName, int]:
        """Return how many items of each kind were asked for the first time on a day."""
        rows = self._connection.execute(_FIRST_ASKED, {"reader": reader, "day": day}).all()
        return {_KINDS[kind]: count for kind, count in rows}

    def next_call(self, reader: ReaderId, day: date) -> date | None:
        """Return the first day after `day` on which something is asked, or None."""
        found: date | None = self._connection.execute(
            _NEXT_CALL, {"reader": reader, "day": day}
        ).scalar_one_or_none()
        return found

    def page(
        self,
        reader: ReaderId,
        after: UUID | None,
        limit: int,
        digest_id: UUID | None = None,
        kind: KindName | None = None,
    ) -> list[KeptItem]:
        """Return items not retired by id, beyond `after`."""
        narrowed: dict[str, object] = {}
        if after is not None:
            narrowed["after"] = after
        if digest_id is not None:
            narrowed["digest"] = digest_id
        if kind is not None:
            narrowed["kind"] = kind.value
        rows = self._connection.execute(
            _page(frozenset(narrowed)), narrowed | {"reader": reader, "limit": limit}
        ).all()
        return [_kept(row) for row in rows]


def _columns(rows: Sequence[Row[Any]]) -> DueItems:
    """Turn rows into columns; the days of many are few, so each is read once."""
    if not rows:
        return DueItems((), (), (), (), (), (), (), ())
    keys, books, kinds, stability, difficulty, last_days, due_on, cares = zip(*rows, strict=True)
    days = {day: _day(day) for day in {*last_days, *due_on}}
    return DueItems(
        keys,
        books,
        [_KINDS[kind] for kind in kinds],
        stability,
        difficulty,
        [days[day] for day in last_days],
        [days[day] for day in due_on],
        [care == Care.CLOSE.value for care in cares],
    )


def _day(found: str | date) -> date:
    return date.fromisoformat(found) if isinstance(found, str) else found


_KINDS = {kind.value: kind for kind in KindName}  # quicker than the enumerations' own look-up
_CARES = {care.value: care for care in Care}
_GRADES = {grade.value: grade for grade in Grade}
_UNASKED_MEMORY: dict[str, object] = dict.fromkeys((*_MEMORY, "call_on"))


def _memory_values(memory: Memory | None) -> dict[str, object]:
    if memory is None:
        return {f"new_{name}": None for name in _UNASKED_MEMORY}
    return {
        "new_stability": memory.stability,
        "new_difficulty": memory.difficulty,
        "new_first_day": memory.first_day,
        "new_last_day": memory.last_day,
        "new_last_grade": memory.last_grade.value,
        "new_answers": memory.answers,
        "new_due_on": memory.due_on,
        "new_call_on": memory.call_on,
    }


def _kept(row: Iterable[Any]) -> KeptItem:
    (
        item_id,
        kind,
        digest_id,
        part_id,
        number,
        retired,
        care,
        stability,
        difficulty,
        first_day,
        last_day,
        last_grade,
        answers,
        due_on,
    ) = row
    item = Item(item_id, _KINDS[kind], digest_id, part_id, number, retired)
    if stability is None:
        return KeptItem(item, None, _CARES[care])
    return KeptItem(
        item,
        Memory(stability, difficulty, first_day, last_day, _GRADES[last_grade], answers, due_on),
        _CARES[care],
    )
