"""A reader hands over a digest: it is read, recognised, and kept with its items."""

import hashlib
from collections import Counter
from dataclasses import dataclass, replace
from datetime import datetime
from enum import StrEnum

from cards.digest import Digest, Notice, folded
from cards.identity import keep, share_of, with_places_of
from cards.intake import Understood, understand, unplaced
from cards.items import items_of, reconcile
from cards.parts import KeptDigest
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.records import BookKey, Original

SAME_BOOK = 0.5
"""Share of a digest's parts that must be known for a file of the same name, under another
title, to be the same book corrected: our own threshold, half."""

LONGEST_NAME = 200
"""Characters of a file's name that are kept, its ending among them."""


class Status(StrEnum):
    """What became of a file that was handed over."""

    ADDED = "added"
    CHANGED = "changed"
    UNCHANGED = "unchanged"


@dataclass(frozen=True, slots=True)
class Added:
    """What became of a digest that was handed over.

    Attributes:
        kept: the digest as it is kept now.
        status: whether it is new, changed, or was the same already.
        items: how many items of each kind it makes now.
        notices: what to tell the reader.
    """

    kept: KeptDigest
    status: Status
    items: dict[str, int]
    notices: tuple[Notice, ...]


def read_digest(desk: Desk, name: str, content: bytes) -> Understood:
    """Say what would be understood of a file, and keep nothing.

    Raises:
        DocumentRefused: no digest can be read from it.
        InvalidDigest: what was read breaks a rule of digests.
    """
    return understand(desk.documents.read(name, content))


def add_digest(desk: Desk, name: str, content: bytes) -> Added:
    """Read a file and keep its digest; one of a book already kept corrects it.

    The same file again changes nothing, even when the digest was mended since.

    Raises:
        DocumentRefused: no digest can be read from it.
        InvalidDigest: what was read breaks a rule of digests.
    """
    understood = read_digest(desk, name, content)
    now = desk.now()
    name = bare(name)
    original = Original(name, content, hashlib.sha256(content).hexdigest(), now)
    with desk.store.writing() as work:
        work.readers.lock(desk.reader)
        known = _recognise(desk, work, understood.digest, name)
        added = _settle(desk, work, understood, known, original)
        if added.status is not Status.UNCHANGED:
            save(desk, work, added.kept, now)
        if work.digests.original_hash(desk.reader, added.kept.id) != original.sha256:
            work.digests.keep_original(desk.reader, added.kept.id, original)
        work.commit()
    return added


def bare(name: str) -> str:
    """Return a file's name without folders, in printable characters, at most 200 of them."""
    last = name.replace("\\", "/").rpartition("/")[2]
    return "".join(letter for letter in last if letter.isprintable())[-LONGEST_NAME:] or "digest"


def save(desk: Desk, work: UnitOfWork, kept: KeptDigest, now: datetime) -> None:
    """Put a digest and its reconciled items into the store, without committing."""
    known = [each.item for each in work.items.of_digest(desk.reader, kept.id)]
    work.digests.put(desk.reader, kept, book_key(kept), now)
    work.items.put(desk.reader, reconcile(items_of(kept), known), now)


def book_key(book: Digest | KeptDigest) -> BookKey:
    """Return what a book is recognised by."""
    return BookKey(folded(book.title), folded(book.author), book.isbn)


def _recognise(desk: Desk, work: UnitOfWork, digest: Digest, name: str) -> KeptDigest | None:
    alike = work.digests.alike(desk.reader, book_key(digest))
    found = [known for known in alike if _the_same_book(digest, known)]
    if not found:
        named = work.digests.from_file(desk.reader, name)
        found = [known for known in named if share_of(digest, known) >= SAME_BOOK]
    return min(found, key=lambda known: known.removed, default=None)


def _the_same_book(digest: Digest, known: KeptDigest) -> bool:
    """Tell whether a digest alike is of the same book; an ISBN alone may be a slip of the pen."""
    one, other = book_key(digest), book_key(known)
    if one.title.startswith(other.title) or other.title.startswith(one.title):
        return True
    return share_of(digest, known) >= SAME_BOOK


def _settle(
    desk: Desk,
    work: UnitOfWork,
    understood: Understood,
    known: KeptDigest | None,
    original: Original,
) -> Added:
    notices = understood.notices
    if known is None:
        fresh = keep(understood.digest, None, desk.new_id)
        return Added(fresh, Status.ADDED, counted(fresh), notices)
    if known.removed:
        back = _corrected(understood.digest, known, desk)
        return Added(back, Status.ADDED, counted(back), _still_true(notices, back))
    if work.digests.original_hash(desk.reader, known.id) == original.sha256:
        if known.digest() != understood.digest:
            notices = (*notices, Notice("document", _MENDED))
        return Added(known, Status.UNCHANGED, counted(known), _still_true(notices, known))
    changed = _corrected(understood.digest, known, desk)
    if changed.digest() == known.digest():
        return Added(known, Status.UNCHANGED, counted(known), _still_true(notices, known))
    return Added(changed, Status.CHANGED, counted(changed), _still_true(notices, changed))


def _still_true(notices: tuple[Notice, ...], kept: KeptDigest) -> tuple[Notice, ...]:
    """Return the notices without what the reader already said: where a quotation stands."""
    quotations = enumerate(kept.digest().quotations, 1)
    said = {unplaced(number) for number, each in quotations if each.after is not None}
    return tuple(notice for notice in notices if notice not in said)


_MENDED = (
    "This very file was added before, and the digest was mended since. Your corrections stay; "
    "nothing was changed."
)


def _corrected(digest: Digest, known: KeptDigest, desk: Desk) -> KeptDigest:
    kept = with_places_of(known, keep(digest, known, desk.new_id))
    return replace(kept, removed=False, revision=known.revision + 1)


def counted(kept: KeptDigest) -> dict[str, int]:
    """Return how many items of each kind a digest makes."""
    return dict(Counter(item.kind.value for item in items_of(kept)))
