"""What each export holds, put together from what the store hands over."""

from collections.abc import Callable, Generator, Iterable, Iterator
from contextlib import contextmanager
from dataclasses import astuple
from datetime import date, datetime
from itertools import islice
from typing import TypeVar
from uuid import UUID

from cards.commitments import Outcome, Stand, measure_in_words
from cards.parts import KeptDigest, Part, PartKind
from service.use_cases.commitment_records import KeptCommitment
from service.use_cases.exporting_ahead import ahead
from service.use_cases.exporting_columns import What
from service.use_cases.exporting_described import DESCRIBED
from service.use_cases.exporting_records import Batch, Beside, ItemRow, Table, Value
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.records import Reader, Tally
from service.use_cases.retaining_rows import rows_in
from service.use_cases.standing import stands_on

_Each = TypeVar("_Each")

NOWHERE = "https://catchword.invalid/"
"""The home of a reader's id while nothing says where their pages are (RFC 2606)."""
_AT_ONCE = 200
"""Digests, or commitments, in memory at a time."""


@contextmanager
def table_of(desk: Desk, work: UnitOfWork, what: What) -> Iterator[Table]:
    """Open an export on a reading transaction, which must last as long as it is gone through."""
    beside, batches = _SOURCES[what](desk, work)
    rows = ahead(batches)
    try:
        yield Table(
            what=what,
            described=DESCRIBED[what],
            batches=rows,
            reader=desk.reader,
            at=desk.now(),
            home=desk.address or NOWHERE,
            beside=beside,
        )
    finally:
        rows.close()


def _answers(desk: Desk, work: UnitOfWork) -> tuple[Beside, Generator[Batch]]:
    return work.exporting.beside_answers(desk.reader), work.exporting.answers(desk.reader)


def _check_ins(desk: Desk, work: UnitOfWork) -> tuple[None, Generator[Batch]]:
    return None, work.exporting.check_ins(desk.reader)


def _items(desk: Desk, work: UnitOfWork) -> tuple[None, Generator[Batch]]:
    reader = work.readers.get(desk.reader)
    today = reader.days.of(desk.now())
    blocks = work.exporting.items(desk.reader)
    return None, (
        _batch(What.ITEMS, (_item(reader, row, today) for row in block)) for block in blocks
    )


def _item(reader: Reader, row: ItemRow, today: date) -> tuple[Value, ...]:
    item, memory, care = row.kept.item, row.kept.memory, row.kept.care
    said = (
        item.id,
        item.digest_id,
        row.title,
        item.part_id,
        item.kind.value,
        item.number,
        row.text,
        item.retired,
        care.value,
        row.kept.standing.value,
    )
    if memory is None:
        return (*said, *(None,) * 8)
    day = max(today, memory.last_day)  # who moved west has yet to come to the day of the answer
    return (
        *said,
        memory.stability,
        memory.difficulty,
        memory.first_day,
        memory.last_day,
        memory.last_grade.value,
        memory.answers,
        memory.due_on,
        reader.schedule(item.kind, care).recall(memory, day),
    )


def _digests(desk: Desk, work: UnitOfWork) -> tuple[None, Generator[Batch]]:
    added = dict(work.exporting.digests(desk.reader))

    def batches() -> Generator[Batch]:
        for ids in _few(added):
            found = work.digests.many(desk.reader, ids)
            yield _batch(What.DIGESTS, (_digest(found[each], added[each]) for each in ids))

    return None, batches()


def _digest(kept: KeptDigest, added_at: datetime) -> tuple[Value, ...]:
    theme = kept.held(PartKind.THEME)
    return (
        kept.id,
        kept.title,
        kept.author,
        kept.edition,
        kept.isbn,
        kept.pages,
        kept.finished_on,
        added_at,
        kept.revision,
        kept.care.value,
        kept.removed,
        theme[0].text if theme else None,
        kept.judgement,
        [{**_part(each), "locator": each.locator} for each in kept.held(PartKind.POINT)],
        [_part(each) for each in kept.held(PartKind.COMMITMENT)],
        [
            {**_part(each), "locator": each.locator, "stands_after": each.after}
            for each in kept.held(PartKind.QUOTATION)
        ],
    )


def _part(part: Part) -> dict[str, UUID | str | int | None]:
    return {"id": part.id, "number": part.number, "text": part.text}


def _commitments(desk: Desk, work: UnitOfWork) -> tuple[None, Generator[Batch]]:
    today = work.readers.get(desk.reader).days.of(desk.now())
    held = work.commitments.all(desk.reader)

    def batches() -> Generator[Batch]:
        for some in _few(held):
            stands = stands_on(work, desk.reader, some, today)
            ids = [each.commitment.id for each in some]
            tallies = work.check_ins.tallies(desk.reader, ids)
            yield _batch(
                What.COMMITMENTS,
                (
                    _commitment(each, stands.get(each_id), tallies.get(each_id, Tally()))
                    for each, each_id in zip(some, ids, strict=True)
                ),
            )

    return None, batches()


def _commitment(kept: KeptCommitment, stand: Stand | None, tally: Tally) -> tuple[Value, ...]:
    entered = kept.commitment
    measure = entered.measure if stand is None else stand.life.term.measure
    return (
        entered.id,
        kept.digest_id,
        kept.title,
        kept.number,
        kept.text,
        entered.made_on,
        entered.entered_on,
        None if measure is None else measure_in_words(measure),
        None if stand is None else stand.pace.value,
        None if stand is None else stand.done,
        None if stand is None else stand.due,
        None if stand is None else stand.ends_on,
        *(tally.counts.get(outcome, 0) for outcome in Outcome),
        None if tally.last is None else tally.last.day,
    )


def _retention(desk: Desk, work: UnitOfWork) -> tuple[None, Generator[Batch]]:
    rows = [astuple(each) for each in rows_in(desk, work)]
    return None, (_batch(What.RETENTION, each) for each in ([rows] if rows else []))


def _few(all_of_them: Iterable[_Each]) -> Iterator[list[_Each]]:
    going = iter(all_of_them)
    while some := list(islice(going, _AT_ONCE)):
        yield some


def _batch(what: What, rows: Iterable[tuple[Value, ...]]) -> Batch:
    columns = list(zip(*rows, strict=True))
    names = (column.name for column in DESCRIBED[what].columns)
    return Batch(len(columns[0]), dict(zip(names, columns, strict=True)))


_SOURCES: dict[What, Callable[[Desk, UnitOfWork], tuple[Beside | None, Generator[Batch]]]] = {
    What.ANSWERS: _answers,
    What.ITEMS: _items,
    What.DIGESTS: _digests,
    What.COMMITMENTS: _commitments,
    What.CHECK_INS: _check_ins,
    What.RETENTION: _retention,
}
"""Where the rows of each export come from: what stands beside them, and the rows in batches."""
