"""A reader looks through their books."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from uuid import UUID

from cards.commitments import CheckIn
from cards.digest import folded
from cards.errors import DigestMissing, DigestNotNamed
from cards.items import KeptItem, Standing
from cards.parts import KeptDigest
from service.use_cases.keeping import readings_beside
from service.use_cases.ports import Desk
from service.use_cases.records import Original

PAGE = 50
"""Entries on one page of a list unless asked for otherwise."""
MOST = 200
"""Entries on one page of a list at the most."""
NAMED_AT_MOST = 8
"""Digests listed where several could be meant."""


@dataclass(frozen=True, slots=True)
class ShelvedDigest:
    """A digest on its shelf.

    Attributes:
        added_at: the instant it was first added.
        standings: how many of its items not retired stand how; those no item has left out.
    """

    kept: KeptDigest
    added_at: datetime
    standings: Mapping[Standing, int]


@dataclass(frozen=True, slots=True)
class Shelf:
    """One page of the library, newest first; `next` is where the following one begins, or None."""

    entries: tuple[ShelvedDigest, ...]
    next: tuple[datetime, UUID] | None


@dataclass(frozen=True, slots=True)
class OpenDigest:
    """A digest laid open, with what became of its items and commitments.

    Attributes:
        items: those not retired, by kind and number.
        check_ins: on its commitments, by day.
        original: the name of the file it came from, or None.
        today: the reader's day.
        book: the name of the file of its book's text, or None.
        readings: the other digests of its book, by the day they were finished.
    """

    kept: KeptDigest
    items: tuple[KeptItem, ...]
    check_ins: tuple[CheckIn, ...]
    original: str | None
    today: date
    book: str | None
    readings: tuple[KeptDigest, ...]


def list_digests(
    desk: Desk, after: tuple[datetime, UUID] | None = None, limit: int = PAGE
) -> Shelf:
    """Return one page of the library, newest first, beyond `after`.

    It takes three statements however many digests are on it.
    """
    with desk.store.reading() as work:
        entries = work.digests.page(desk.reader, after, limit + 1)
        page = entries[:limit]
        standings = work.items.standings(desk.reader, (entry.kept.id for entry in page))
    more = len(entries) > limit
    return Shelf(
        tuple(
            ShelvedDigest(each.kept, each.added_at, standings.get(each.kept.id, {}))
            for each in page
        ),
        (page[-1].added_at, page[-1].kept.id) if more else None,
    )


def named(desk: Desk, words: str) -> KeptDigest:
    """Return the one digest a reader means by its id, or by words of its title and author.

    A title that is exactly those words wins over one that only holds them.

    Raises:
        DigestNotNamed: none is meant, or several could be.
    """
    entries = [each.kept for each in _all(desk)]
    wanted = folded(words)
    exact = [kept for kept in entries if words == str(kept.id) or wanted == folded(kept.title)]
    found = exact or [
        kept for kept in entries if wanted and wanted in folded(f"{kept.title} {kept.author or ''}")
    ]
    if len(found) != 1:
        raise DigestNotNamed(words, [_spoken(kept) for kept in found[:NAMED_AT_MOST]])
    return found[0]


def _all(desk: Desk) -> Iterator[ShelvedDigest]:
    after: tuple[datetime, UUID] | None = None
    while True:
        shelf = list_digests(desk, after, MOST)
        yield from shelf.entries
        after = shelf.next
        if after is None:
            return


def _spoken(kept: KeptDigest) -> str:
    finished = f", finished {kept.finished_on}" if kept.finished_on else ""
    return f"{kept.title}{finished} ({kept.id})"


def open_digest(desk: Desk, digest_id: UUID) -> OpenDigest:
    """Return one digest with its items and check-ins.

    Raises:
        DigestMissing: this reader has no such digest.
    """
    with desk.store.reading() as work:
        reader = work.readers.get(desk.reader)
        kept = work.digests.get(desk.reader, digest_id)
        if kept is None or kept.removed:
            raise DigestMissing(digest_id)
        items = work.items.of_digest(desk.reader, digest_id)
        check_ins = work.check_ins.of_digest(desk.reader, digest_id)
        original = work.digests.original_name(desk.reader, digest_id)
        book = work.books.name(desk.reader, digest_id)
        readings = readings_beside(desk, work, kept)
    return OpenDigest(
        kept=kept,
        items=tuple(each for each in items if not each.item.retired),
        check_ins=tuple(check_ins),
        original=original,
        today=reader.days.of(desk.now()),
        book=book,
        readings=readings,
    )


def open_original(desk: Desk, digest_id: UUID) -> Original:
    """Return the file a digest was last read from.

    Raises:
        DigestMissing: this reader has no such digest, or it came from no file.
    """
    with desk.store.reading() as work:
        kept = work.digests.get(desk.reader, digest_id)
        original = work.digests.original(desk.reader, digest_id)
    if kept is None or kept.removed or original is None:
        raise DigestMissing(digest_id)
    return original
