"""What an edit did to the parts of a digest, and the reader's word on it."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from enum import StrEnum
from uuid import UUID

from cards.errors import PartMissing
from cards.parts import KeptDigest, Part, PartKind


class Became(StrEnum):
    """What became of a part in an edit."""

    REWORDED = "reworded"
    REPLACED = "replaced"
    FRESH = "fresh"
    RESTORED = "restored"
    RETIRED = "retired"


@dataclass(frozen=True, slots=True)
class Change:
    """What an edit did to one part.

    Attributes:
        became: `reworded`, and it keeps its history; `replaced`: it stands where another
            was and starts afresh; `fresh`: new, in nobody's place; `restored`: it was
            retired and is held again, with its history; `retired`: no longer held.
        part: as it is now.
        before: as it was; of a replaced part, the one it stands in the place of; None for a
            fresh one.
    """

    became: Became
    part: Part
    before: Part | None = None


def changes(before: KeptDigest, now: KeptDigest) -> tuple[Change, ...]:
    """Return what happened to the parts of a digest between two versions, in its order.

    Parts that say the same as before are left out, wherever they stand.
    """
    return tuple(change for kind in PartKind for change in _changes(before, now, kind))


def _changes(before: KeptDigest, now: KeptDigest, kind: PartKind) -> Iterator[Change]:
    held = {part.id: part for part in before.held(kind)}
    once = {part.id: part for part in before.parts if part.kind is kind}
    kept = now.held(kind)
    ids = {part.id for part in kept}
    gone = [part for part in before.held(kind) if part.id not in ids]
    for part in kept:
        was = held.get(part.id)
        if was is not None:
            if _words(was) != _words(part):
                yield Change(Became.REWORDED, part, was)
        elif part.id in once:
            yield Change(Became.RESTORED, part, once[part.id])
        elif gone:
            nearest = min(gone, key=lambda each: abs(each.number - part.number))
            gone.remove(nearest)
            yield Change(Became.REPLACED, part, nearest)
        else:
            yield Change(Became.FRESH, part)
    for part in gone:
        yield Change(Became.RETIRED, replace(part, retired=True), part)


def _words(part: Part) -> str:
    return " ".join(part.text.split())


def continued(kept: KeptDigest, part_id: UUID, former_id: UUID) -> KeptDigest:
    """Return the digest with a part that started afresh taken for a retired one after all.

    It takes on the other's identity, and with it its history; its own is retired, saying
    what it said.

    Raises:
        PartMissing: the digest does not hold the one, or has not retired the other, of its kind.
    """
    part = _part(kept, part_id)
    former = _part(kept, former_id)
    if part.retired or not former.retired or part.kind is not former.kind:
        raise PartMissing(former_id)
    exchanged = {part_id: replace(part, retired=True), former_id: replace(part, id=former_id)}
    return replace(kept, parts=tuple(exchanged.get(each.id, each) for each in kept.parts))


def afresh(
    kept: KeptDigest, part_id: UUID, before: Part | None, new_id: Callable[[], UUID]
) -> KeptDigest:
    """Return the digest with a reworded part taken for another one: it starts without history.

    Args:
        kept: the digest as it is.
        part_id: the part that is another one now.
        before: the part as it was before, which its history stays with; None leaves that
            saying what it says now.
        new_id: makes a fresh id.

    Raises:
        PartMissing: the digest does not hold this part.
    """
    part = _part(kept, part_id)
    if part.retired:
        raise PartMissing(part_id)
    old = replace(before or part, id=part_id, retired=True)
    others = (old if each.id == part_id else each for each in kept.parts)
    return replace(kept, parts=(*others, replace(part, id=new_id())))


def _part(kept: KeptDigest, part_id: UUID) -> Part:
    try:
        return kept.part(part_id)
    except KeyError as error:
        raise PartMissing(part_id) from error
