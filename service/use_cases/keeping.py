"""What every use case that changes a digest does with it: its version, its items, its book."""

from collections import Counter
from datetime import date
from uuid import UUID

from cards.digest import Digest, folded
from cards.errors import DigestChanged, DigestMissing
from cards.intake.isbn import thirteen
from cards.items import items_of, reconcile
from cards.parts import KeptDigest
from service.use_cases.entering import enter_commitments
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.records import BookKey, Cause, Version

WORDINGS_OF = 100
"""Versions back in which former wordings of a part are recognised: years of mending."""


def opened(desk: Desk, work: UnitOfWork, digest_id: UUID, revision: int | None) -> KeptDigest:
    """Return a digest that is not removed, at the revision asked for; None for any.

    Raises:
        DigestMissing: this reader has no such digest.
        DigestChanged: it was changed since that revision.
    """
    known = work.digests.get(desk.reader, digest_id)
    if known is None or known.removed:
        raise DigestMissing(digest_id)
    if revision is not None and revision != known.revision:
        raise DigestChanged(digest_id)
    return known


def opened_to_change(
    desk: Desk, work: UnitOfWork, digest_id: UUID, revision: int | None
) -> KeptDigest:
    """Return a digest as `opened` does, and let nobody else change it until the work is done.

    Of two who read it at one revision, both would else be told that theirs was kept.
    """
    work.readers.lock(desk.reader)
    return opened(desk, work, digest_id, revision)


def save(
    desk: Desk,
    work: UnitOfWork,
    kept: KeptDigest,
    cause: Cause,
    former: KeptDigest | None = None,
) -> None:
    """Put a digest, its version, items and commitments into the store, without committing.

    `former` is what it was before. A digest kept before versions were has none of its
    own: it gets one now, dated now, so that this edit can be taken back too.
    """
    now = desk.now()
    if former is not None:
        work.versions.add(desk.reader, Version(now, Cause.ADDED, former))
    work.digests.put(desk.reader, kept, book_key(kept), now)
    make_items(desk, work, kept)
    enter_commitments(desk, work, kept, former)
    work.versions.add(desk.reader, Version(now, cause, kept))
    if former is not None and former.removed is not kept.removed:
        # What was linked to a book is not asked while that book is out of the library.
        for digest_id in work.links.leading_to(desk.reader, kept.id):
            linking = work.digests.get(desk.reader, digest_id)
            if linking is not None:
                make_items(desk, work, linking)


def make_items(desk: Desk, work: UnitOfWork, kept: KeptDigest) -> None:
    """Put the items a digest makes now, and retire those whose source is gone."""
    known = [each.item for each in work.items.of_digest(desk.reader, kept.id)]
    made = reconcile(items_of(kept), known)
    work.items.put(desk.reader, made, desk.now(), care=kept.care)


def wordings(desk: Desk, work: UnitOfWork, known: KeptDigest) -> dict[UUID, tuple[str, ...]]:
    """Return what the parts of a digest said in its latest versions."""
    return work.versions.wordings(desk.reader, known.id, WORDINGS_OF)


def book_key(book: Digest | KeptDigest) -> BookKey:
    """Return what a book is recognised by."""
    isbn = None if book.isbn is None else thirteen(book.isbn)
    return BookKey(folded(book.title), folded(book.author), isbn)


def readings_beside(desk: Desk, work: UnitOfWork, kept: KeptDigest) -> tuple[KeptDigest, ...]:
    """Return the other digests of the same book, by the day they were finished.

    The same book is one of the same title and author, whatever the edition.
    """
    key = book_key(kept)
    others = [
        each
        for each in work.digests.alike(desk.reader, key)
        if each.id != kept.id
        and not each.removed
        and (book_key(each).title, book_key(each).author) == (key.title, key.author)
    ]
    return tuple(sorted(others, key=finished))


def finished(kept: KeptDigest) -> tuple[date, UUID]:
    """Return what readings of a book are put in order by; one without a day stands first."""
    return kept.finished_on or date.min, kept.id


def counted(kept: KeptDigest) -> dict[str, int]:
    """Return how many items of each kind a digest makes."""
    return dict(Counter(item.kind.value for item in items_of(kept)))
