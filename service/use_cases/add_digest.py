"""A reader hands over digests: they are read, recognised, and kept with their items."""

import hashlib
from dataclasses import dataclass, replace
from enum import StrEnum
from uuid import UUID

from cards.digest import Digest, Notice
from cards.errors import SeveralDigests
from cards.identity import keep, share_of, with_places_of
from cards.intake import Understood, understand_all, unplaced
from cards.parts import KeptDigest
from service.use_cases.headings import own_words
from service.use_cases.keeping import book_key, counted, save, wordings
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.records import Cause, Original

SAME_BOOK = 0.5
"""Share of a digest's parts that must be known for a file of the same name, under another
title, to be the same book corrected: our own threshold, half."""

ANOTHER_READING = 90
"""Days between two days of finishing one book from which they are two readings of it, unless
half of the parts are the same: our own threshold, a season. A slip in a date is less, or
leaves the parts as they were."""

LONGEST_NAME = 200
"""Characters of a file's name that are kept, its ending among them."""


class Status(StrEnum):
    """What became of a digest that was handed over."""

    ADDED = "added"
    CHANGED = "changed"
    UNCHANGED = "unchanged"


class Kept(StrEnum):
    """As what a digest of a book already kept is taken, where the reader says so."""

    AS_FOUND = "as found"
    CORRECTION = "correction"
    READING = "reading"


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


def read_digests(desk: Desk, name: str, content: bytes) -> tuple[Understood, ...]:
    """Say what would be understood of a file, and keep nothing: each digest in it, at least one.

    Raises:
        DocumentRefused: no digest can be read from it.
        InvalidDigest: what was read breaks a rule of digests.
    """
    return understand_all(desk.documents.read(name, content), own_words(desk))


def add_digests(desk: Desk, name: str, content: bytes) -> tuple[Added, ...]:
    """Read a file and keep every digest in it, or none; one of a book already kept corrects it.

    The same file again changes nothing, even when a digest was mended since.

    Raises:
        DocumentRefused: no digest can be read from it.
        InvalidDigest: what was read breaks a rule of digests.
    """
    return _add(desk, name, content, read_digests(desk, name, content))


def _add(
    desk: Desk, name: str, content: bytes, understood: tuple[Understood, ...]
) -> tuple[Added, ...]:
    sha256 = hashlib.sha256(content).hexdigest()
    original = Original(bare(name), content, sha256, desk.now())
    with desk.store.writing() as work:
        work.readers.lock(desk.reader)
        added: tuple[Added, ...] = ()
        for each in understood:
            others = frozenset(one.kept.id for one in added)
            added += (keep_understood(desk, work, each, original, others=others),)
        work.commit()
    return added


def read_digest(desk: Desk, name: str, content: bytes) -> Understood:
    """Say what would be understood of a file that holds one digest, and keep nothing.

    Raises:
        SeveralDigests: it holds more than one.
        DocumentRefused: no digest can be read from it.
        InvalidDigest: what was read breaks a rule of digests.
    """
    understood = read_digests(desk, name, content)
    if len(understood) > 1:
        raise SeveralDigests(bare(name), len(understood))
    return understood[0]


def add_digest(desk: Desk, name: str, content: bytes) -> Added:
    """Read a file that holds one digest and keep it; one of a book already kept corrects it.

    Raises:
        SeveralDigests: it holds more than one.
        DocumentRefused: no digest can be read from it.
        InvalidDigest: what was read breaks a rule of digests.
    """
    return _add(desk, name, content, (read_digest(desk, name, content),))[0]


def keep_understood(
    desk: Desk,
    work: UnitOfWork,
    understood: Understood,
    original: Original | None,
    kept_as: Kept | None = None,
    others: frozenset[UUID] = frozenset(),
) -> Added:
    """Keep one digest and the file it came from, without committing. Lock the reader first.

    `kept_as` is what the reader said who looked it over; None for a digest kept as it was
    read, which changes nothing when the very same file is kept already. `others` are the
    digests of the same file kept before it: none of them is meant again.
    """
    name = original.name if original else None
    likely = _recognised(desk, work, understood.digest, name, kept_as or Kept.AS_FOUND)
    meant = [each for each in likely if each.id not in others]
    known = min(meant, key=lambda each: each.removed, default=None)
    again = (
        kept_as is None
        and known is not None
        and original is not None
        and work.digests.original_hash(desk.reader, known.id) == original.sha256
    )
    added = _settle(desk, work, understood, known, again=again)
    if added.status is not Status.UNCHANGED:
        cause = Cause.ADDED if added.status is Status.ADDED else Cause.CHANGED
        save(desk, work, added.kept, cause, known)
    if original is not None and not again:
        work.digests.keep_original(desk.reader, added.kept.id, original)
    return added


def bare(name: str) -> str:
    """Return a file's name without folders, in printable characters, at most 200 of them."""
    last = name.replace("\\", "/").rpartition("/")[2]
    return "".join(letter for letter in last if letter.isprintable())[-LONGEST_NAME:] or "digest"


def _recognised(
    desk: Desk, work: UnitOfWork, digest: Digest, name: str | None, kept_as: Kept
) -> list[KeptDigest]:
    """Return the digests that may be of the same reading of the same book, oldest first."""
    if kept_as is Kept.READING:
        return []
    alike = work.digests.alike(desk.reader, book_key(digest))
    whatever = kept_as is Kept.CORRECTION
    found = [known for known in alike if whatever or _the_same_reading(digest, known)]
    if not found and name is not None:
        named = work.digests.from_file(desk.reader, name)
        found = [known for known in named if share_of(digest, known) >= SAME_BOOK]
    return found


def _the_same_reading(digest: Digest, known: KeptDigest) -> bool:
    """Tell whether a digest alike is of the same reading of the same book.

    An ISBN alone may be a slip of the pen; finishing the book again a season later is none.
    """
    one, other = book_key(digest), book_key(known)
    titled = one.title.startswith(other.title) or other.title.startswith(one.title)
    if titled and not _seasons_apart(digest, known):
        return True
    return share_of(digest, known) >= SAME_BOOK


def _seasons_apart(digest: Digest, known: KeptDigest) -> bool:
    if digest.finished_on is None or known.finished_on is None:
        return False
    return abs((digest.finished_on - known.finished_on).days) >= ANOTHER_READING


def _settle(
    desk: Desk,
    work: UnitOfWork,
    understood: Understood,
    known: KeptDigest | None,
    *,
    again: bool,
) -> Added:
    digest, notices = understood.digest, understood.notices
    if known is None:
        fresh = keep(digest, None, desk.new_id)
        return Added(fresh, Status.ADDED, counted(fresh), notices)
    if again and not known.removed:
        if known.digest() != digest:
            notices = (*notices, Notice("document", _MENDED))
        return Added(known, Status.UNCHANGED, counted(known), _still_true(notices, known))
    kept = keep(digest, known, desk.new_id, wordings(desk, work, known))
    changed = replace(with_places_of(known, kept), removed=False, revision=known.revision + 1)
    told = _still_true(notices, changed)
    if known.removed:
        return Added(changed, Status.ADDED, counted(changed), told)
    if changed.digest() == known.digest():
        return Added(known, Status.UNCHANGED, counted(known), told)
    return Added(changed, Status.CHANGED, counted(changed), told)


def _still_true(notices: tuple[Notice, ...], kept: KeptDigest) -> tuple[Notice, ...]:
    """Return the notices without what the reader already said: where a quotation stands."""
    quotations = enumerate(kept.digest().quotations, 1)
    said = {unplaced(number) for number, each in quotations if each.after is not None}
    return tuple(notice for notice in notices if notice not in said)


_MENDED = (
    "This very file was added before, and the digest was mended since. Your corrections stay; "
    "nothing was changed."
)
