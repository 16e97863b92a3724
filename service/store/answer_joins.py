"""An answer's row beside the rows that go with it: its item, and that it was taken back."""

from sqlalchemy import and_

from service.store.tables import answers, items, taken_back

WITH_TAKEN_BACK = answers.outerjoin(
    taken_back,
    and_(taken_back.c.reader_id == answers.c.reader_id, taken_back.c.answer_id == answers.c.id),
)
"""Every answer, with the fact that takes it back where there is one."""
WITH_ITEM = WITH_TAKEN_BACK.join(
    items, and_(items.c.reader_id == answers.c.reader_id, items.c.id == answers.c.item_id)
)
"""The same, with the item it was given to."""
STANDS = taken_back.c.id.is_(None)
"""It was not taken back."""
