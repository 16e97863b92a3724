"""What is exported, read few rows at a time from one state of the store."""

from collections.abc import Generator, Sequence
from datetime import datetime
from typing import Any
from uuid import UUID

from sqlalchemy import Connection, Select, and_, bindparam, select

from cards.answers import Grade
from service.store.exporting_packing import Packing
from service.store.item_rows import WHOLE, kept_item
from service.store.tables import answers, check_ins, digests, items, parts, taken_back, withdrawals
from service.store.withdrawals import with_withdrawal
from service.use_cases.exporting_columns import What
from service.use_cases.exporting_described import DESCRIBED
from service.use_cases.exporting_records import Batch, Beside, ItemRow, Packed
from service.use_cases.records import ReaderId

BLOCK = 5_000
"""Answers of a block: few enough to stay in a processor's cache, many enough to be quick."""
AT_ONCE = 1_000
"""Other rows in memory at a time."""
MOST_ITEMS = 2**31 - 1
"""All there are: what is said of them is packed in one block."""

_DESCRIBED = DESCRIBED[What.ANSWERS]
_BESIDE = ("digest_id", "title", "kind")
_BACK = "taken_back_at"
_ANSWER_COLUMNS = tuple(
    column for column in _DESCRIBED.columns if column.name not in {*_BESIDE, _BACK}
)
_CAME_BACK = (answers.c.grade != Grade.BLANK.value).label("came_back")
_OF_ANSWERS = select(
    *(
        _CAME_BACK if each.name == _CAME_BACK.name else answers.c[each.name]
        for each in _ANSWER_COLUMNS
    )
).where(answers.c.reader_id == bindparam("reader"))
_ANSWERS = Packing(_ANSWER_COLUMNS, _OF_ANSWERS, BLOCK)
# Few are taken back. Joined, they would cost a look-up for every answer; so those of a block are
# read by its first and its last id.
_TAKEN_BACK = select(taken_back.c.answer_id, taken_back.c.taken_back_at).where(
    taken_back.c.reader_id == bindparam("reader"),
    taken_back.c.answer_id.between(bindparam("first"), bindparam("last")),
)
_ITS_DIGEST = and_(digests.c.reader_id == items.c.reader_id, digests.c.id == items.c.digest_id)
_ITS_PART = and_(parts.c.reader_id == items.c.reader_id, parts.c.id == items.c.part_id)
_OF_ITEMS = Packing(
    [_DESCRIBED.column(name) for name in ("item_id", *_BESIDE)],
    select(items.c.id, items.c.digest_id, digests.c.title, items.c.kind)
    .select_from(items.join(digests, _ITS_DIGEST))
    .where(items.c.reader_id == bindparam("reader")),
    MOST_ITEMS,
)
_ITEMS = (
    WHOLE.add_columns(digests.c.title, parts.c.text)
    .select_from(items.join(digests, _ITS_DIGEST).join(parts, _ITS_PART))
    .order_by(items.c.digest_id, items.c.kind, items.c.number, items.c.id)
)
_DIGESTS = (
    select(digests.c.id, digests.c.added_at)
    .where(digests.c.reader_id == bindparam("reader"))
    .order_by(digests.c.added_at, digests.c.id)
)
_CHECK_IN_COLUMNS = DESCRIBED[What.CHECK_INS].columns
_OF_CHECK_INS = {
    "digest_id": digests.c.id,
    "title": digests.c.title,
    "commitment": parts.c.text,
    "taken_back_at": withdrawals.c.withdrawn_at,
}
_CHECK_INS = (
    select(
        *(
            _OF_CHECK_INS[each.name] if each.name in _OF_CHECK_INS else check_ins.c[each.name]
            for each in _CHECK_IN_COLUMNS
        )
    )
    .select_from(
        with_withdrawal(check_ins)
        .join(
            parts,
            and_(
                parts.c.reader_id == check_ins.c.reader_id,
                parts.c.id == check_ins.c.commitment_id,
            ),
        )
        .join(
            digests,
            and_(digests.c.reader_id == parts.c.reader_id, digests.c.id == parts.c.digest_id),
        )
    )
    .where(check_ins.c.reader_id == bindparam("reader"))
    .order_by(check_ins.c.commitment_id, check_ins.c.day, check_ins.c.id)
)


class SqlExportRows:
    """What is exported, in one transaction; satisfies `exporting_records.ExportRows`."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def answers(self, reader: ReaderId) -> Generator[Batch]:
        """Yield every answer, taken back or not, in blocks, by id."""
        for batch in _ANSWERS.batches(self._connection, reader):
            yield Batch(batch.count, {**batch.columns, _BACK: self._taken_back(reader, batch)})

    def _taken_back(self, reader: ReaderId, batch: Batch) -> Packed:
        """Return when each answer of a block was taken back."""
        ids = batch.columns["id"]
        assert isinstance(ids, Packed)
        first, last = UUID(bytes=ids.data[:16]), UUID(bytes=ids.data[-16:])
        rows = self._connection.execute(
            _TAKEN_BACK, {"reader": reader, "first": first, "last": last}
        ).all()
        when = [b""] * batch.count
        places = {each: place for place, each in enumerate(ids.apart())} if rows else {}
        for answer_id, at in rows:
            when[places[answer_id.bytes]] = at.isoformat(timespec="microseconds").encode()
        return Packed(b"\0".join(when))

    def beside_answers(self, reader: ReaderId) -> Beside:
        """Return what is said of each item beside its answers."""
        none = Batch(0, {name: Packed(b"") for name in ("item_id", *_BESIDE)})
        return Beside("item_id", next(_OF_ITEMS.batches(self._connection, reader), none))

    def items(self, reader: ReaderId) -> Generator[Sequence[ItemRow]]:
        """Yield every item, retired or not, in blocks, book by book."""
        for rows in self._few_at_a_time(_ITEMS, reader):
            yield [ItemRow(kept_item(own), title, text) for *own, title, text in rows]

    def digests(self, reader: ReaderId) -> Sequence[tuple[UUID, datetime]]:
        """Return the ids of all digests, removed ones too, with when each was added; by that."""
        rows = self._connection.execute(_DIGESTS, {"reader": reader})
        return [(digest_id, added_at) for digest_id, added_at in rows]

    def check_ins(self, reader: ReaderId) -> Generator[Batch]:
        """Yield every check-in, taken back or not, in blocks, by commitment, day and id."""
        for rows in self._few_at_a_time(_CHECK_INS, reader):
            columns = zip(*rows, strict=True)
            named = zip((each.name for each in _CHECK_IN_COLUMNS), columns, strict=True)
            yield Batch(len(rows), dict(named))

    def _few_at_a_time(self, statement: Select[Any], reader: ReaderId) -> Generator[Sequence[Any]]:
        few = statement.execution_options(yield_per=AT_ONCE)
        with self._connection.execute(few, {"reader": reader}) as found:
            yield from found.partitions()
