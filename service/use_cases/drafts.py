"""A reader writes a digest in Catchword, or looks over one that was read before it is kept."""

import hashlib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime
from uuid import UUID

from cards.digest import Digest
from cards.errors import DraftChanged, DraftMissing, InvalidDraft
from cards.intake import Understood
from cards.parts import Care
from service.use_cases.add_digest import Added, Kept, bare, keep_understood, read_digests
from service.use_cases.care import give_care
from service.use_cases.library import PAGE
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.records import Draft, Original

MOST_DRAFTS = 500
"""Drafts a reader keeps at once: ten years of digests looked over in one go."""
MOST_TYPED = 2_000_000
"""Characters typed into one draft: the longest digest ten times over."""


@dataclass(frozen=True, slots=True)
class DraftPage:
    """One page of the drafts, the last changed first; `next` begins the following one, or None."""

    drafts: tuple[Draft, ...]
    next: tuple[datetime, UUID] | None


def list_drafts(
    desk: Desk, after: tuple[datetime, UUID] | None = None, limit: int = PAGE
) -> DraftPage:
    """Return one page of the drafts, the last changed first, beyond `after`."""
    with desk.store.reading() as work:
        found = work.drafts.page(desk.reader, after, limit + 1)
    page = tuple(found[:limit])
    more = len(found) > limit
    return DraftPage(page, (page[-1].changed_at, page[-1].id) if more else None)


def count_drafts(desk: Desk) -> int:
    """Return how many drafts there are."""
    with desk.store.reading() as work:
        return work.drafts.count(desk.reader)


def open_draft(desk: Desk, draft_id: UUID) -> Draft:
    """Return one draft.

    Raises:
        DraftMissing: this reader has no such draft.
    """
    with desk.store.reading() as work:
        return _opened(desk, work, draft_id, None)


def begin_draft(desk: Desk, typed: Mapping[str, str], draft_id: UUID | None = None) -> Draft:
    """Keep a new draft with what is typed so far.

    `draft_id` is made by whoever writes it, so that a form sent twice begins one draft;
    None for a fresh one.

    Raises:
        InvalidDraft: it is longer than any digest, or there are too many drafts.
    """
    now = desk.now()
    draft = Draft(draft_id or desk.new_id(), _bounded(typed), now, now)
    with desk.store.writing() as work:
        work.readers.lock(desk.reader)
        known = work.drafts.get(desk.reader, draft.id)
        if known is not None:
            return known
        _make_room(desk, work, 1)
        work.drafts.put(desk.reader, draft)
        work.commit()
    return draft


def look_over(
    desk: Desk, name: str, content: bytes, lay: Callable[[Digest], Mapping[str, str]]
) -> tuple[Draft, ...]:
    """Read a file and lay out each digest in it as a draft, keeping none in the library yet.

    Args:
        desk: the door's desk.
        name: the file's name.
        content: its bytes.
        lay: turns a digest into the fields of the door's form.

    Raises:
        DocumentRefused: no digest can be read from it.
        InvalidDigest: what was read breaks a rule of digests.
        InvalidDraft: there are too many drafts.
    """
    understood = read_digests(desk, name, content)
    now = desk.now()
    original = Original(bare(name), content, hashlib.sha256(content).hexdigest(), now)
    drafts = tuple(
        Draft(
            desk.new_id(),
            _bounded(lay(each.digest)),
            now,
            now,
            file=original.name,
            number=number,
            sources=each.sources,
            left=each.left,
            notices=each.notices,
        )
        for number, each in enumerate(understood, 1)
    )
    with desk.store.writing() as work:
        work.readers.lock(desk.reader)
        _make_room(desk, work, len(drafts))
        for draft in drafts:
            work.drafts.put(desk.reader, draft)
            work.drafts.keep_original(desk.reader, draft.id, original)
        work.commit()
    return drafts


def change_draft(
    desk: Desk, draft_id: UUID, typed: Mapping[str, str], revision: int | None = None
) -> Draft:
    """Keep what is typed now, valid or not; None as revision keeps it over anything.

    Raises:
        DraftMissing: this reader has no such draft.
        DraftChanged: it was changed since that revision.
        InvalidDraft: it is longer than any digest.
    """
    with desk.store.writing() as work:
        work.readers.lock(desk.reader)
        known = _opened(desk, work, draft_id, revision)
        if dict(known.typed) == dict(typed):
            return known
        changed = replace(
            known, typed=_bounded(typed), changed_at=desk.now(), revision=known.revision + 1
        )
        work.drafts.put(desk.reader, changed)
        work.commit()
    return changed


def keep_draft(
    desk: Desk,
    draft_id: UUID,
    digest: Digest,
    kept_as: Kept = Kept.AS_FOUND,
    care: Care | None = None,
) -> Added:
    """Keep a draft's digest in the library, and the file it was read from; the draft is done with.

    Args:
        desk: the door's desk.
        draft_id: which draft.
        digest: what its form says.
        kept_as: whether it corrects a digest of the same book, is another reading of it, or
            whichever is found.
        care: how much of its book to keep, or None to leave that as it is.

    Raises:
        DraftMissing: this reader has no such draft.
    """
    with desk.store.writing() as work:
        work.readers.lock(desk.reader)
        _opened(desk, work, draft_id, None)
        original = work.drafts.original(desk.reader, draft_id)
        understood = Understood(digest, ())
        added = keep_understood(desk, work, understood, original, kept_as)
        if care is not None:
            added = replace(added, kept=give_care(desk, work, added.kept, care))
        work.drafts.drop(desk.reader, draft_id)
        work.commit()
    return added


def drop_draft(desk: Desk, draft_id: UUID) -> None:
    """Put a draft away for good; nothing when there is none."""
    with desk.store.writing() as work:
        work.drafts.drop(desk.reader, draft_id)
        work.commit()


def _opened(desk: Desk, work: UnitOfWork, draft_id: UUID, revision: int | None) -> Draft:
    draft = work.drafts.get(desk.reader, draft_id)
    if draft is None:
        raise DraftMissing(draft_id)
    if revision is not None and revision != draft.revision:
        raise DraftChanged(draft_id)
    return draft


def _make_room(desk: Desk, work: UnitOfWork, more: int) -> None:
    if work.drafts.count(desk.reader) + more > MOST_DRAFTS:
        raise InvalidDraft(
            f"At most {MOST_DRAFTS} drafts can wait at once. Keep some, or put some away.",
            where="form",
        )


def _bounded(typed: Mapping[str, str]) -> dict[str, str]:
    if sum(map(len, typed.values())) + sum(map(len, typed)) > MOST_TYPED:
        raise InvalidDraft(
            "What is typed here is many times longer than a digest of two pages. Shorten it "
            "before it can be kept.",
            where="form",
        )
    return dict(typed)
