"""What a row of the items holds, and the item it is."""

from collections.abc import Iterable
from typing import Any

from sqlalchemy import bindparam, select

from cards.answers import Grade
from cards.items import Item, KeptItem
from cards.kinds.base import KindName
from cards.parts import Care
from cards.schedule import Memory
from service.store.tables import items

MEMORY = ("stability", "difficulty", "first_day", "last_day", "last_grade", "answers", "due_on")
"""What an item's answers come to, column by column."""
KEPT = (*MEMORY, "call_on", "moves_to")
"""What follows from it in the row: when it is called, and the due day it waits to be moved to."""

MINE = items.c.reader_id == bindparam("reader")
"""Of the reader who asks."""
WHOLE = select(
    items.c.id,
    items.c.kind,
    items.c.digest_id,
    items.c.part_id,
    items.c.number,
    items.c.retired,
    items.c.care,
    *(items.c[name] for name in MEMORY),
).where(MINE)
"""Every column that `kept_item` reads, in its order."""

KINDS = {kind.value: kind for kind in KindName}  # quicker than the enumerations' own look-up
_CARES = {care.value: care for care in Care}
_GRADES = {grade.value: grade for grade in Grade}
UNASKED_MEMORY: dict[str, object] = dict.fromkeys(
    (*MEMORY, "call_on", "rests_from", "afresh_on", "moves_to")
)


def memory_values(memory: Memory | None) -> dict[str, object]:
    """Return what an item's row keeps of its memory, null together while it is unasked."""
    if memory is None:
        return {f"new_{name}": None for name in KEPT}
    return {
        "new_stability": memory.stability,
        "new_difficulty": memory.difficulty,
        "new_first_day": memory.first_day,
        "new_last_day": memory.last_day,
        "new_last_grade": memory.last_grade.value,
        "new_answers": memory.answers,
        "new_due_on": memory.due_on,
        "new_call_on": memory.call_on,
        "new_moves_to": None,
    }


def kept_item(row: Iterable[Any]) -> KeptItem:
    """Return the item a row of `WHOLE` holds."""
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
    item = Item(item_id, KINDS[kind], digest_id, part_id, number, retired)
    if stability is None:
        return KeptItem(item, None, _CARES[care])
    return KeptItem(
        item,
        Memory(stability, difficulty, first_day, last_day, _GRADES[last_grade], answers, due_on),
        _CARES[care],
    )
