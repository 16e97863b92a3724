"""A reader looks at what a digest said before, brings it back, and overrules what an edit did."""

from dataclasses import dataclass, replace
from uuid import UUID

from cards.errors import VersionMissing
from cards.identity import Change, afresh, changes, continued, restored
from cards.parts import KeptDigest
from service.use_cases.keeping import opened, opened_to_change, save
from service.use_cases.library import PAGE
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.records import Cause, Version, VersionEntry

_NO_EDIT = (Cause.OVERRULED, Cause.CARED)
"""What makes a version and says nothing new."""


@dataclass(frozen=True, slots=True)
class Versions:
    """One page of a digest's versions, newest first.

    Attributes:
        kept: the digest as it is now.
        next: the revision below which the following page begins, or None.
    """

    kept: KeptDigest
    entries: tuple[VersionEntry, ...]
    next: int | None


@dataclass(frozen=True, slots=True)
class OpenVersion:
    """One version of a digest, with what the edit that made it did.

    Attributes:
        kept: the digest as it is now.
        version: as it was then.
        changes: from the version before it; empty for the first one kept.
        since: from it to now.
    """

    kept: KeptDigest
    version: Version
    changes: tuple[Change, ...]
    since: tuple[Change, ...]


def list_versions(
    desk: Desk, digest_id: UUID, before: int | None = None, limit: int = PAGE
) -> Versions:
    """Return one page of the versions of a digest, newest first, of revisions below `before`.

    Raises:
        DigestMissing: this reader has no such digest.
    """
    with desk.store.reading() as work:
        kept = opened(desk, work, digest_id, None)
        found = work.versions.page(desk.reader, digest_id, before, limit + 1)
    page = tuple(found[:limit])
    return Versions(kept, page, page[-1].revision if len(found) > limit else None)


def open_version(desk: Desk, digest_id: UUID, revision: int) -> OpenVersion:
    """Return one version of a digest.

    Raises:
        DigestMissing: this reader has no such digest.
        VersionMissing: it has no such version.
    """
    with desk.store.reading() as work:
        kept = opened(desk, work, digest_id, None)
        version = _version(desk, work, digest_id, revision)
        before = _before(desk, work, digest_id, revision)
    done = changes(before, version.kept) if before else ()
    return OpenVersion(kept, version, done, changes(version.kept, kept))


def last_changes(desk: Desk, digest_id: UUID) -> tuple[Change, ...]:
    """Return what the last edit did to the parts, as it stands after the reader's word on any.

    So one part can be overruled after another, and each of them back again. Empty when the
    digest was never edited, or nothing is known of what it said before.

    Raises:
        DigestMissing: this reader has no such digest.
    """
    with desk.store.reading() as work:
        kept = opened(desk, work, digest_id, None)
        before = _before_edit(desk, work, digest_id)
    return changes(before, kept) if before else ()


def restore_version(
    desk: Desk, digest_id: UUID, revision: int, current: int | None = None
) -> KeptDigest:
    """Make a digest say again what it said at a revision; every memory comes back with its part.

    Args:
        desk: the door's desk.
        digest_id: which digest.
        revision: of the version to bring back.
        current: the revision the digest was read at, or None.

    Raises:
        DigestMissing: this reader has no such digest.
        VersionMissing: it has no such version.
        DigestChanged: it was changed since `current`.
    """
    with desk.store.writing() as work:
        known = opened_to_change(desk, work, digest_id, current)
        then = _version(desk, work, digest_id, revision).kept
        back = restored(then, known)
        if _says(back) == _says(known):
            return known
        return _saved(desk, work, back, known, Cause.RESTORED)


def continue_part(
    desk: Desk, digest_id: UUID, part_id: UUID, former_id: UUID, revision: int | None = None
) -> KeptDigest:
    """Overrule an edit: a part that started afresh is a retired one after all, with its history.

    Raises:
        DigestMissing: this reader has no such digest.
        DigestChanged: it was changed since that revision.
        PartMissing: it does not hold the one, or has not retired the other.
    """
    with desk.store.writing() as work:
        known = opened_to_change(desk, work, digest_id, revision)
        settled = continued(known, part_id, former_id)
        return _saved(desk, work, settled, known, Cause.OVERRULED)


def start_afresh(
    desk: Desk, digest_id: UUID, part_id: UUID, revision: int | None = None
) -> KeptDigest:
    """Overrule an edit: a part that was reworded is another one now, and has no history.

    Its history stays with what it said before.

    Raises:
        DigestMissing: this reader has no such digest.
        DigestChanged: it was changed since that revision.
        PartMissing: it does not hold this part.
    """
    with desk.store.writing() as work:
        known = opened_to_change(desk, work, digest_id, revision)
        before = _before_edit(desk, work, digest_id)
        was = {part.id: part for part in before.parts} if before else {}
        settled = afresh(known, part_id, was.get(part_id), desk.new_id)
        return _saved(desk, work, settled, known, Cause.OVERRULED)


def _saved(
    desk: Desk, work: UnitOfWork, changed: KeptDigest, known: KeptDigest, cause: Cause
) -> KeptDigest:
    changed = replace(changed, revision=known.revision + 1)
    save(desk, work, changed, cause, known)
    work.commit()
    return changed


def _version(desk: Desk, work: UnitOfWork, digest_id: UUID, revision: int) -> Version:
    version = work.versions.get(desk.reader, digest_id, revision)
    if version is None:
        raise VersionMissing(digest_id, revision)
    return version


def _before(desk: Desk, work: UnitOfWork, digest_id: UUID, revision: int) -> KeptDigest | None:
    """Return the digest as it was before a revision, or None when that is not known."""
    found = work.versions.page(desk.reader, digest_id, revision, 1)
    if not found:
        return None
    version = work.versions.get(desk.reader, digest_id, found[0].revision)
    return None if version is None else version.kept


def _before_edit(desk: Desk, work: UnitOfWork, digest_id: UUID) -> KeptDigest | None:
    """Return the digest as it was before its last edit, the reader's word on that passed over."""
    entries = work.versions.page(desk.reader, digest_id, None, PAGE)
    edit = next((each for each in entries if each.cause not in _NO_EDIT), None)
    return None if edit is None else _before(desk, work, digest_id, edit.revision)


def _says(kept: KeptDigest) -> tuple[object, ...]:
    held = sorted((part for part in kept.parts if not part.retired), key=lambda part: part.id)
    return kept.digest(), tuple(held)
