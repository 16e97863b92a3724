"""What is known of a book, put together in a line or two for the tests of re-reading."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from uuid import UUID, uuid5

from cards.answers import Answer, Grade
from cards.commitments import Commitment, Measure, Period, Stand, pace_of
from cards.items import KeptItem, items_of
from cards.kinds.base import KindName
from cards.parts import KeptDigest, PartKind
from cards.rereading import BookRecord, Rereading
from cards.schedule import Schedule

DAY = date(2026, 3, 2)
"""The day asked about."""

Key = tuple[KindName, int]
"""An item by its kind and number."""
Given = tuple[Grade, str]
"""An answer by its grade and attempt."""


def at(day: date, hour: int = 12) -> datetime:
    """Return an hour of a day, in UTC."""
    return datetime.combine(day, time(hour), UTC)


def answered(item: UUID, given: list[Given], last: date) -> list[Answer]:
    """Return answers to an item, a day each, the last on `last`."""
    first = last - timedelta(days=len(given) - 1)
    days = [first + timedelta(days=after) for after in range(len(given))]
    return [
        Answer(uuid5(item, f"{day}"), item, grade, at(day), day, attempt)
        for day, (grade, attempt) in zip(days, given, strict=True)
    ]


def record(
    digest: KeptDigest,
    given: Mapping[Key, list[Given]] | None = None,
    last: date = DAY - timedelta(days=1),
    **more: object,
) -> BookRecord:
    """Return what is known of a book: answers by item, the last of each on `last`."""
    schedule = Schedule()
    kept, answers = [], {}
    for item in items_of(digest):
        memory = None
        if (item.kind, item.number) in (given or {}):
            answers[item.id] = answered(item.id, given[item.kind, item.number], last)
            memory = schedule.fold(item.id, answers[item.id])
        kept.append(KeptItem(item, memory, digest.care))
    return BookRecord(digest, kept, answers, **more)


def item_of(known: BookRecord, kind: KindName, number: int = 1) -> UUID:
    """Return the id of an item of a book."""
    return next(
        each.item.id for each in known.items if (each.item.kind, each.item.number) == (kind, number)
    )


def reread(digest: KeptDigest, day: date, **more: object) -> Rereading:
    """Return that a book was read again, reported in the evening of its day."""
    return Rereading(uuid5(digest.id, f"{day}"), digest.id, day, at(day, 20), day, **more)


def weekly(digest: KeptDigest, number: int = 1, days_ago: int = 60) -> dict[UUID, Stand]:
    """Return how a commitment asked weekly stands of which nothing was ever reported."""
    part = digest.held(PartKind.COMMITMENT)[number - 1]
    start = DAY - timedelta(days=days_ago)
    asked = Commitment(part.id, part.text, start, start, Measure(period=Period.WEEK))
    return {part.id: pace_of(asked, (), (), DAY)}


def without_commitments(digest: KeptDigest) -> KeptDigest:
    """Return a digest that asks for nothing."""
    kept = tuple(part for part in digest.parts if part.kind is not PartKind.COMMITMENT)
    return replace(digest, parts=kept)
