"""What a reader asks while they look a draft over: is the book kept already, and read it anew."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from uuid import UUID

from cards.digest import Digest
from cards.errors import DraftMissing, InvalidDraft
from cards.parts import KeptDigest
from service.use_cases.add_digest import read_digests
from service.use_cases.keeping import book_key
from service.use_cases.ports import Desk
from service.use_cases.records import Draft


def already_kept(desk: Desk, digest: Digest) -> tuple[KeptDigest, ...]:
    """Return the digests in the library of the same title and author, or ISBN; oldest first."""
    with desk.store.reading() as work:
        alike = work.digests.alike(desk.reader, book_key(digest))
    return tuple(known for known in alike if not known.removed)


def read_again(desk: Desk, draft_id: UUID, lay: Callable[[Digest], Mapping[str, str]]) -> Draft:
    """Read the file of a draft once more, with the heading words that hold now.

    What was changed in the draft meanwhile gives way to what is read.

    Args:
        desk: the door's desk.
        draft_id: which draft.
        lay: turns a digest into the fields of the door's form.

    Raises:
        DraftMissing: this reader has no such draft, or it came from no file.
        InvalidDraft: read so, the file has no digest in the place of this one.
        DocumentRefused: no digest can be read from it.
        InvalidDigest: what was read breaks a rule of digests.
    """
    with desk.store.reading() as work:
        known = work.drafts.get(desk.reader, draft_id)
        original = work.drafts.original(desk.reader, draft_id)
    if known is None or original is None:
        raise DraftMissing(draft_id)
    understood = read_digests(desk, original.name, original.content)
    if known.number > len(understood):
        held = "1 digest" if len(understood) == 1 else f"{len(understood)} digests"
        raise InvalidDraft(
            f"Read so, “{original.name}” holds {held}, and this draft was made "
            f"of number {known.number}. Hand the file in again to look over what it holds now.",
            where="form",
        )
    read = understood[known.number - 1]
    draft = replace(
        known,
        typed=dict(lay(read.digest)),
        changed_at=desk.now(),
        sources=read.sources,
        left=read.left,
        notices=read.notices,
    )
    with desk.store.writing() as work:
        work.readers.lock(desk.reader)
        now = work.drafts.get(desk.reader, draft_id)
        if now is None:
            raise DraftMissing(draft_id)
        # What another tab kept meanwhile has a revision of its own, which is not given twice.
        draft = replace(draft, revision=now.revision + 1)
        work.drafts.drop(desk.reader, draft_id)
        work.drafts.put(desk.reader, draft)
        work.drafts.keep_original(desk.reader, draft_id, original)
        work.commit()
    return draft
