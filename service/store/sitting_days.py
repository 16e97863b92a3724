"""What a reader set for single days: the minutes of the sitting, and what is left out of it."""

from datetime import date, datetime
from uuid import UUID

from sqlalchemy import Connection, bindparam, delete, select

from service.store.inserts import insert_once, insert_or_update
from service.store.tables import left_out, sitting_days
from service.use_cases.records import ReaderId

_MINUTES = select(sitting_days.c.minutes).where(
    sitting_days.c.reader_id == bindparam("reader"), sitting_days.c.day == bindparam("on")
)
_SET_MINUTES = insert_or_update(sitting_days, ("minutes",))
_OUT_ON = (left_out.c.reader_id == bindparam("reader"), left_out.c.day == bindparam("on"))
_LEFT_OUT = select(left_out.c.item_id, left_out.c.left_out_at).where(*_OUT_ON)
_LEAVE_OUT = insert_once(left_out)
_TAKE_IN = delete(left_out).where(*_OUT_ON, left_out.c.item_id == bindparam("item"))


class SqlSittingDays:
    """Single days, in one transaction; satisfies `ports.SittingDays`."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def minutes(self, reader: ReaderId, day: date) -> int | None:
        """Return the minutes set for a day, or None."""
        found: int | None = self._connection.execute(
            _MINUTES, {"reader": reader, "on": day}
        ).scalar_one_or_none()
        return found

    def set_minutes(self, reader: ReaderId, day: date, minutes: int) -> None:
        """Set the minutes for a day, in place of any set before."""
        self._connection.execute(
            _SET_MINUTES, {"reader_id": reader, "day": day, "minutes": minutes}
        )

    def left_out(self, reader: ReaderId, day: date) -> dict[UUID, datetime]:
        """Return the items left out for a day, with the instant each was."""
        rows = self._connection.execute(_LEFT_OUT, {"reader": reader, "on": day}).all()
        return {item_id: at for item_id, at in rows}  # noqa: C416 - rows are no pairs to mypy

    def leave_out(self, reader: ReaderId, item_id: UUID, day: date, now: datetime) -> None:
        """Leave an item out for a day; a second time changes nothing."""
        self._connection.execute(
            _LEAVE_OUT,
            {"reader_id": reader, "day": day, "item_id": item_id, "left_out_at": now},
        )

    def take_in(self, reader: ReaderId, item_id: UUID, day: date) -> None:
        """Undo that an item is left out for a day; nothing when it is not."""
        self._connection.execute(_TAKE_IN, {"reader": reader, "on": day, "item": item_id})
