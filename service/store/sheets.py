"""The sittings a reader had printed."""

import json
from collections.abc import Iterable
from typing import Any
from uuid import UUID

from sqlalchemy import Connection, bindparam, select

from service.store.inserts import insert_or_update
from service.store.tables import sheets
from service.use_cases.records import ReaderId
from service.use_cases.sitting_records import Sheet, SheetItem

_MINE = sheets.c.reader_id == bindparam("reader")
_WHOLE = select(
    sheets.c.id, sheets.c.made_at, sheets.c.minutes, sheets.c.lines, sheets.c.entered_at
).where(_MINE)
_GET = _WHOLE.where(sheets.c.id == bindparam("sheet"))
_OPEN = (
    _WHOLE.where(sheets.c.entered_at.is_(None))
    .order_by(sheets.c.made_at.desc(), sheets.c.id.desc())
    .limit(bindparam("limit"))
)
_PUT = insert_or_update(sheets, ("entered_at",))


class SqlSheets:
    """The sheets, in one transaction; satisfies `ports.Sheets`."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def get(self, reader: ReaderId, sheet_id: UUID) -> Sheet | None:
        """Return one sheet."""
        row = self._connection.execute(_GET, {"reader": reader, "sheet": sheet_id}).first()
        return None if row is None else _sheet(row)

    def put(self, reader: ReaderId, sheet: Sheet) -> None:
        """Keep a sheet; one whose id is kept already replaces when it was entered."""
        self._connection.execute(
            _PUT,
            {
                "reader_id": reader,
                "id": sheet.id,
                "made_at": sheet.made_at,
                "minutes": sheet.minutes,
                "lines": json.dumps([_item_to_json(each) for each in sheet.items]),
                "entered_at": sheet.entered_at,
            },
        )

    def open(self, reader: ReaderId, limit: int) -> list[Sheet]:
        """Return the latest sheets whose answers were not entered yet, newest first."""
        rows = self._connection.execute(_OPEN, {"reader": reader, "limit": limit}).all()
        return [_sheet(row) for row in rows]


def _sheet(row: Iterable[Any]) -> Sheet:
    sheet_id, made_at, minutes, items, entered_at = row
    read = tuple(_item_from_json(each) for each in json.loads(items))
    return Sheet(sheet_id, made_at, minutes, read, entered_at)


def _item_to_json(item: SheetItem) -> dict[str, object]:
    return {
        "item": str(item.item_id),
        "asked": item.asked,
        "held": item.held,
        "answer": str(item.answer_id),
    }


def _item_from_json(found: dict[str, Any]) -> SheetItem:
    return SheetItem(UUID(found["item"]), found["asked"], found["held"], UUID(found["answer"]))
