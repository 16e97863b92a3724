"""A reader corrects a digest, says where its quotations stand, or takes it out."""

from collections.abc import Mapping
from dataclasses import replace
from uuid import UUID

from cards.digest import Digest
from cards.errors import DigestChanged, DigestMissing, InvalidDigest
from cards.identity import keep
from cards.parts import KeptDigest, PartKind
from service.use_cases.add_digest import save
from service.use_cases.ports import Desk, UnitOfWork


def mend_digest(
    desk: Desk, digest_id: UUID, digest: Digest, revision: int | None = None
) -> KeptDigest:
    """Replace what a digest says; its parts and items keep their history.

    Args:
        desk: the door's desk.
        digest_id: which digest.
        digest: all it is to say from now on.
        revision: the revision it was read at, or None to replace it as it is.

    Raises:
        DigestMissing: this reader has no such digest.
        DigestChanged: it was changed since that revision.
    """
    with desk.store.writing() as work:
        known = _opened(desk, work, digest_id, revision)
        mended = keep(digest, known, desk.new_id)
        if mended.digest() == known.digest():
            return known
        mended = replace(mended, revision=known.revision + 1)
        save(desk, work, mended, desk.now())
        work.commit()
    return mended


def place_quotations(
    desk: Desk, digest_id: UUID, places: Mapping[int, int | None], revision: int | None = None
) -> KeptDigest:
    """Say after which point quotations stand: their numbers to the points' numbers.

    A point's number is 0 for before all points, None for not known.

    Raises:
        DigestMissing: this reader has no such digest.
        DigestChanged: it was changed since that revision.
        InvalidDigest: there is no such quotation or point.
    """
    with desk.store.reading() as work:
        known = _opened(desk, work, digest_id, revision)
    digest = known.digest()
    for number in places:
        if not 1 <= number <= len(digest.quotations):
            raise InvalidDigest(
                f"There is no quotation {number}; the digest has {len(digest.quotations)}.",
                where=f"quotations {number}",
            )
    quotations = tuple(
        replace(quotation, after=places.get(number, quotation.after))
        for number, quotation in enumerate(digest.quotations, 1)
    )
    return mend_digest(desk, digest_id, replace(digest, quotations=quotations), known.revision)


def remove_digest(desk: Desk, digest_id: UUID, revision: int | None = None) -> None:
    """Take a digest out of the library. Its history stays, and comes back with it.

    Raises:
        DigestMissing: this reader has no such digest.
        DigestChanged: it was changed since that revision.
    """
    with desk.store.writing() as work:
        known = _opened(desk, work, digest_id, revision)
        save(desk, work, replace(known, removed=True, revision=known.revision + 1), desk.now())
        work.commit()


def _opened(desk: Desk, work: UnitOfWork, digest_id: UUID, revision: int | None) -> KeptDigest:
    known = work.digests.get(desk.reader, digest_id)
    if known is None or known.removed:
        raise DigestMissing(digest_id)
    if revision is not None and revision != known.revision:
        raise DigestChanged(digest_id)
    return known


def unplaced(kept: KeptDigest) -> tuple[int, ...]:
    """Return the numbers of the quotations of which nothing says after which point they stand."""
    if not kept.held(PartKind.POINT):
        return ()
    return tuple(part.number for part in kept.held(PartKind.QUOTATION) if part.after is None)
