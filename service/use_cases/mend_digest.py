"""A reader corrects a digest, says where its quotations stand, or takes it out."""

from collections.abc import Mapping
from dataclasses import replace
from uuid import UUID

from cards.digest import Digest
from cards.errors import InvalidDigest
from cards.identity import keep
from cards.parts import Care, KeptDigest, PartKind
from service.use_cases.care import give_care
from service.use_cases.keeping import opened, opened_to_change, save, wordings
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.records import Cause


def mend_digest(
    desk: Desk,
    digest_id: UUID,
    digest: Digest,
    revision: int | None = None,
    care: Care | None = None,
) -> KeptDigest:
    """Replace what a digest says; its parts and items keep their history.

    Args:
        desk: the door's desk.
        digest_id: which digest.
        digest: all it is to say from now on.
        revision: the revision it was read at, or None to replace it as it is.
        care: how much of its book to keep, or None to leave that as it is.

    Raises:
        DigestMissing: this reader has no such digest.
        DigestChanged: it was changed since that revision.
    """
    with desk.store.writing() as work:
        known = opened_to_change(desk, work, digest_id, revision)
        mended = change_digest(desk, work, known, digest, Cause.MENDED)
        if care is not None:
            mended = give_care(desk, work, mended, care)
        work.commit()
    return mended


def change_digest(
    desk: Desk, work: UnitOfWork, known: KeptDigest, digest: Digest, cause: Cause
) -> KeptDigest:
    """Replace what a digest says, without committing; unchanged, it stays at its revision."""
    mended = keep(digest, known, desk.new_id, wordings(desk, work, known))
    if mended.digest() == known.digest():
        return known
    mended = replace(mended, revision=known.revision + 1)
    save(desk, work, mended, cause, known)
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
        known = opened(desk, work, digest_id, revision)
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
    placed = replace(digest, quotations=quotations)
    with desk.store.writing() as work:
        known = opened_to_change(desk, work, digest_id, known.revision)
        kept = change_digest(desk, work, known, placed, Cause.PLACED)
        work.commit()
    return kept


def remove_digest(desk: Desk, digest_id: UUID, revision: int | None = None) -> None:
    """Take a digest out of the library. Its history stays, and comes back with it.

    Raises:
        DigestMissing: this reader has no such digest.
        DigestChanged: it was changed since that revision.
    """
    with desk.store.writing() as work:
        known = opened_to_change(desk, work, digest_id, revision)
        gone = replace(known, removed=True, revision=known.revision + 1)
        save(desk, work, gone, Cause.REMOVED, known)
        work.commit()


def unplaced(kept: KeptDigest) -> tuple[int, ...]:
    """Return the numbers of the quotations of which nothing says after which point they stand."""
    if not kept.held(PartKind.POINT):
        return ()
    return tuple(part.number for part in kept.held(PartKind.QUOTATION) if part.after is None)
