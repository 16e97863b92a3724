"""What a library knows of its books, as far as opening them again may follow from it."""

from collections import defaultdict
from collections.abc import Iterable
from datetime import date
from uuid import UUID

from cards.answers import Answer
from cards.commitments import Pace, Stand
from cards.items import KeptItem
from cards.parts import KeptDigest
from cards.rereading import BookRecord, Rereading, answers_tell, may_have_reasons
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.records import Reader
from service.use_cases.standing import stands_on

_AT_ONCE = 2_000
"""Items read in one statement."""


def known_of(desk: Desk, work: UnitOfWork, kept: KeptDigest, day: date) -> BookRecord:
    """Return what is known of one book."""
    items = work.items.of_digest(desk.reader, kept.id)
    asked = work.commitments.of_digests(desk.reader, [kept.id])
    stands = stands_on(work, desk.reader, asked, day)
    rereadings = work.rereadings.of_digest(desk.reader, kept.id)
    return BookRecord(kept, items, _answers(desk, work, items), stands, rereadings)


def known_of_all(
    desk: Desk, work: UnitOfWork, reader: Reader, day: date, rereadings: Iterable[Rereading]
) -> list[BookRecord]:
    """Return what is known of every book that may have a reason to be opened again."""
    stalled = _stalled(desk, work, day)
    read: defaultdict[UUID, list[Rereading]] = defaultdict(list)
    for each in rereadings:
        read[each.digest_id].append(each)
    items = _items(desk, work)
    ids = {each for each, its in items.items() if may_have_reasons(its, reader.target)}
    digests = work.digests.many(desk.reader, ids | set(stalled) | set(read))
    return [
        BookRecord(
            kept,
            items.get(kept.id, []),
            _answers(desk, work, items.get(kept.id, [])),
            stalled.get(kept.id, {}),
            read.get(kept.id, []),
        )
        for kept in digests.values()
        if not kept.removed
    ]


def answers_to(desk: Desk, work: UnitOfWork, items: Iterable[UUID]) -> dict[UUID, list[Answer]]:
    """Return the answers to some items."""
    return {each: work.answers.of_item(desk.reader, each) for each in dict.fromkeys(items)}


def _answers(desk: Desk, work: UnitOfWork, items: Iterable[KeptItem]) -> dict[UUID, list[Answer]]:
    return answers_to(desk, work, (each.item.id for each in items if answers_tell(each)))


def _stalled(desk: Desk, work: UnitOfWork, day: date) -> dict[UUID, dict[UUID, Stand]]:
    """Return how the stalled commitments stand, by book."""
    commitments = work.commitments.all(desk.reader)
    stands = stands_on(work, desk.reader, commitments, day)
    found: dict[UUID, dict[UUID, Stand]] = {}
    for each in commitments:
        stand = stands.get(each.commitment.id)
        if stand is not None and stand.pace is Pace.STALLED:
            found.setdefault(each.digest_id, {})[each.commitment.id] = stand
    return found


def _items(desk: Desk, work: UnitOfWork) -> dict[UUID, list[KeptItem]]:
    """Return all items by book."""
    found: defaultdict[UUID, list[KeptItem]] = defaultdict(list)
    after = None
    while page := work.items.page(desk.reader, after, _AT_ONCE):
        for each in page:
            found[each.item.digest_id].append(each)
        after = page[-1].item.id
    return found
