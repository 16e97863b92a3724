"""A reader asks which books to open again, and says that they did."""

from dataclasses import dataclass, replace
from datetime import date
from uuid import UUID

from cards.answers import Grade
from cards.digest import hold_text
from cards.errors import Invalid, RereadingMissing
from cards.rereading import (
    BookRecord,
    BookToReread,
    Helped,
    Rereading,
    RereadingList,
    book_to_reread,
    days_afresh,
    helped,
    list_of,
    minutes_a_page,
)
from service.use_cases.facts import hold_come, said_otherwise, take_back
from service.use_cases.keeping import opened, opened_to_change
from service.use_cases.known_of_books import answers_to, known_of, known_of_all
from service.use_cases.ports import Desk, UnitOfWork

MOST_REREADINGS = 1_000
"""Re-readings of one book: more is no record but a mistake."""
MOST_TOLD = 12
"""Earlier re-readings told of, the latest first: as many as there are books on the list."""


@dataclass(frozen=True, slots=True)
class ReadAgain:
    """A re-reading as it is reported.

    Attributes:
        id: made by whoever recorded it.
        day: the reader's day it took place on, or None for today.
        pages: which, in the reader's words; may be empty.
        minutes: how long it took, or None.
        note: the reader's words about it; may be empty.
    """

    id: UUID
    digest_id: UUID
    day: date | None = None
    pages: str = ""
    minutes: int | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class ToldRereading:
    """An earlier re-reading and what it came to.

    Attributes:
        title, author: of the book.
    """

    rereading: Rereading
    title: str
    author: str | None
    helped: Helped


def list_rereading(desk: Desk) -> RereadingList:
    """Return the books to open again, most worth it first."""
    with desk.store.reading() as work:
        reader = work.readers.get(desk.reader)
        today = reader.days.of(desk.now())
        rereadings = work.rereadings.all(desk.reader)
        known = known_of_all(desk, work, reader, today, rereadings)
    return list_of(known, today, reader.target, minutes_a_page(rereadings))


def earlier_rereadings(desk: Desk, limit: int = MOST_TOLD) -> list[ToldRereading]:
    """Return what the latest re-readings came to, the latest first."""
    with desk.store.reading() as work:
        latest = work.rereadings.all(desk.reader)[:limit]
        digests = work.digests.many(desk.reader, {each.digest_id for each in latest})
        return [_told(desk, work, each) for each in latest if not digests[each.digest_id].removed]


def show_rereading(desk: Desk, rereading_id: UUID) -> ToldRereading:
    """Return one re-reading, taken back or not, and what it came to.

    Raises:
        RereadingMissing: this reader has recorded none such.
    """
    with desk.store.reading() as work:
        found = work.rereadings.get(desk.reader, rereading_id)
        if found is None:
            raise RereadingMissing(rereading_id)
        return _told(desk, work, found)


def record_rereading(desk: Desk, read: ReadAgain) -> ToldRereading:
    """Record that pages of a book were read again, and have the items concerned asked afresh.

    Those are the items the book was on the list for, else those that last came back blank. The
    very same again changes nothing.

    Raises:
        DigestMissing: this reader has no such digest.
        Invalid: its day has not come yet or is before the book was finished, a text of it is
            too long or none, the minutes are none, or there are too many of this book.
        Conflict: another re-reading already bears its id.
    """
    now = desk.now()
    with desk.store.writing() as work:
        reader = work.readers.lock(desk.reader)
        today = reader.days.of(now)
        known = work.rereadings.get(desk.reader, read.id)
        if known is not None:
            opened(desk, work, read.digest_id, None)
            return _told(desk, work, _the_same(known, read))
        kept = opened_to_change(desk, work, read.digest_id, None)
        book = known_of(desk, work, kept, today)
        _hold(read, today, book)
        fact = Rereading(
            read.id,
            read.digest_id,
            read.day or today,
            now,
            today,
            read.pages,
            read.minutes,
            read.note,
            _concerned(book, book_to_reread(book, today, reader.target, 1.0)),
        )
        work.rereadings.add(desk.reader, fact)
        work.items.ask_afresh(desk.reader, days_afresh(fact.items, today))
        told = _told(desk, work, fact)
        work.commit()
    return told


def withdraw_rereading(desk: Desk, rereading_id: UUID) -> Rereading:
    """Take a re-reading back: it stays on record, and counts no longer. Twice changes nothing.

    What was to be asked afresh is asked all the same.

    Raises:
        RereadingMissing: this reader has recorded none such.
    """
    now = desk.now()
    with desk.store.writing() as work:
        today = work.readers.lock(desk.reader).days.of(now)
        found = work.rereadings.get(desk.reader, rereading_id)
        if found is None:
            raise RereadingMissing(rereading_id)
        if found.withdrawn_on is None:
            found = take_back(desk, work, found, now, today)
            work.commit()
    return found


def _told(desk: Desk, work: UnitOfWork, rereading: Rereading) -> ToldRereading:
    kept = work.digests.many(desk.reader, [rereading.digest_id])[rereading.digest_id]
    came_to = helped(rereading, answers_to(desk, work, rereading.items))
    return ToldRereading(rereading, kept.title, kept.author, came_to)


def _concerned(book: BookRecord, listed: BookToReread | None) -> tuple[UUID, ...]:
    if listed is not None and listed.items:
        return listed.items
    return tuple(
        each.item.id
        for each in book.asked
        if each.memory is not None and each.memory.last_grade is Grade.BLANK
    )


def _hold(read: ReadAgain, today: date, book: BookRecord) -> None:
    hold_come(read.day or today, today)
    finished = book.digest.finished_on
    if read.day is not None and finished is not None and read.day < min(finished, today):
        raise Invalid(
            f"The book was finished on {finished.isoformat()}; it is read again on that day or a "
            "later one.",
            where="day",
        )
    hold_text(read.pages, "pages")
    hold_text(read.note, "note")
    if len(book.rereadings) >= MOST_REREADINGS:
        raise Invalid(f"{MOST_REREADINGS} re-readings of one book are kept already.", where="id")


def _the_same(known: Rereading, read: ReadAgain) -> Rereading:
    """Return the re-reading that is kept. What names no day is of the day it was first sent on."""
    sent = replace(
        known,
        digest_id=read.digest_id,
        day=read.day or known.day,
        pages=read.pages,
        minutes=read.minutes,
        note=read.note,
    )
    if known != sent:
        raise said_otherwise("Re-reading", known)
    return known
