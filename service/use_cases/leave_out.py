"""A reader leaves an item out for today, or takes it in again."""

from uuid import UUID

from cards.errors import ItemMissing
from service.use_cases.ports import Desk


def leave_out(desk: Desk, item_id: UUID) -> None:
    """Leave an item out of today's sitting. It stays due; a second time changes nothing.

    Raises:
        ItemMissing: this reader has no such item.
    """
    _for_today(desk, item_id, out=True)


def take_in(desk: Desk, item_id: UUID) -> None:
    """Take an item that was left out for today in again; nothing when it was not.

    Raises:
        ItemMissing: this reader has no such item.
    """
    _for_today(desk, item_id, out=False)


def _for_today(desk: Desk, item_id: UUID, *, out: bool) -> None:
    now = desk.now()
    with desk.store.writing() as work:
        if work.items.get(desk.reader, item_id) is None:
            raise ItemMissing(item_id)
        day = work.readers.get(desk.reader).days.of(now)
        if out:
            work.days.leave_out(desk.reader, item_id, day, now)
        else:
            work.days.take_in(desk.reader, item_id, day)
        work.commit()
