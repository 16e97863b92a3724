"""The items of a reader's library, each with what its answers come to."""

from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime
from functools import cache
from typing import Any
from uuid import UUID

from sqlalchemy import (
    Select,
    bindparam,
    not_,
    select,
    update,
)

from cards.items import Item, KeptItem, Standing
from cards.kinds.base import KindName
from cards.parts import Care
from cards.schedule import Memory
from service.store.called_items import SqlCalledItems
from service.store.columns import ID
from service.store.inserts import insert_or_update
from service.store.item_rows import KEPT, MINE, UNASKED_MEMORY, WHOLE, kept_item, memory_values
from service.store.tables import digests, items
from service.use_cases.records import ReaderId

_GET = WHOLE.where(items.c.id == bindparam("item"))
_LOCK = _GET.with_for_update()  # says nothing to SQLite, where a writer is alone anyway
_OF_DIGEST = WHOLE.where(items.c.digest_id == bindparam("digest")).order_by(
    items.c.kind, items.c.number, items.c.id
)
_OF_DIGESTS = WHOLE.where(
    not_(items.c.retired),
    items.c.digest_id.in_(bindparam("digests", expanding=True, type_=ID)),
)
_ADDED_AT = select(digests.c.id, digests.c.added_at).where(
    digests.c.reader_id == bindparam("reader"),
    digests.c.id.in_(bindparam("ids", expanding=True, type_=ID)),
)
_PUT = insert_or_update(items, ("number", "retired", "care"))
_REMEMBER = (
    update(items)
    .where(MINE, items.c.id == bindparam("item"))
    .values({name: bindparam(f"new_{name}") for name in KEPT})
)
_ASK_AFRESH = (
    update(items)
    .where(MINE, items.c.id == bindparam("item"), items.c.stability.is_not(None))
    .values(afresh_on=bindparam("new_afresh_on"))
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
        WHOLE.where(not_(items.c.retired), *conditions)
        .order_by(items.c.id)
        .limit(bindparam("limit"))
    )


class SqlItems(SqlCalledItems):
    """The items, in one transaction; satisfies `ports.Items`."""

    def get(self, reader: ReaderId, item_id: UUID) -> KeptItem | None:
        """Return one item, retired or not."""
        row = self._connection.execute(_GET, {"reader": reader, "item": item_id}).first()
        return None if row is None else kept_item(row)

    def lock(self, reader: ReaderId, item_id: UUID) -> KeptItem | None:
        """Return one item, and let no other transaction change it until the end of this one."""
        row = self._connection.execute(_LOCK, {"reader": reader, "item": item_id}).first()
        return None if row is None else kept_item(row)

    def of_digest(self, reader: ReaderId, digest_id: UUID) -> list[KeptItem]:
        """Return all items of a digest, retired ones too, by kind and number."""
        rows = self._connection.execute(_OF_DIGEST, {"reader": reader, "digest": digest_id}).all()
        return [kept_item(row) for row in rows]

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
            kept = kept_item(row)
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
                UNASKED_MEMORY
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
            _REMEMBER, {"reader": reader, "item": item_id} | memory_values(memory)
        )

    def ask_afresh(self, reader: ReaderId, days: Mapping[UUID, date]) -> None:
        """Have items asked afresh on a day of each; those never asked wait as they do."""
        if days:
            self._connection.execute(
                _ASK_AFRESH,
                [
                    {"reader": reader, "item": item_id, "new_afresh_on": day}
                    for item_id, day in days.items()
                ],
            )

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
        return [kept_item(row) for row in rows]
