"""A reader says how much of a book to keep."""

from dataclasses import replace
from uuid import UUID

from cards.parts import Care, KeptDigest
from service.use_cases.keeping import opened_to_change, save
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.records import Cause


def set_care(desk: Desk, digest_id: UUID, care: Care, revision: int | None = None) -> KeptDigest:
    """Keep a book close, steadily or resting; its due days move to what that aims for.

    No fact changes: every memory is folded again from its answers, under the retention
    the care aims for. What a resting book has unasked waits until it rests no more.

    Raises:
        DigestMissing: this reader has no such digest.
        DigestChanged: it was changed since that revision.
    """
    with desk.store.writing() as work:
        changed = give_care(desk, work, opened_to_change(desk, work, digest_id, revision), care)
        work.commit()
    return changed


def give_care(desk: Desk, work: UnitOfWork, known: KeptDigest, care: Care) -> KeptDigest:
    """Give a digest's book its care and fold its memories again, without committing."""
    if known.care is care:
        return known
    changed = replace(known, care=care, revision=known.revision + 1)
    save(desk, work, changed, Cause.CARED, known)
    reader = work.readers.get(desk.reader)
    for each in work.items.of_digest(desk.reader, known.id):
        if each.memory is not None:
            answers = work.answers.of_item(desk.reader, each.item.id)
            memory = reader.schedule(each.item.kind, care).fold(each.item.id, answers)
            work.items.remember(desk.reader, each.item.id, memory)
    return changed
