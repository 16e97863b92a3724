"""A digest given its identities: its parts recognised where it was kept before."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from uuid import UUID

from cards.digest import Digest
from cards.identity.matching import matches
from cards.parts import Care, KeptDigest, Part, PartKind


def keep(
    digest: Digest,
    known: KeptDigest | None,
    new_id: Callable[[], UUID],
    wordings: Mapping[UUID, Iterable[str]] | None = None,
) -> KeptDigest:
    """Give the parts of a digest their identities, those of `known` where they are the same.

    Parts are matched kind by kind: first by the same words, then by words they once had,
    then the most similar wordings first. What is no longer there stays as a retired part,
    to be matched again should it return. Without `known` every part is new.

    Args:
        digest: what is to be kept.
        known: what was kept of the same book.
        new_id: makes a fresh id.
        wordings: what the parts of `known` said in earlier versions, by their ids.
    """
    parts: list[Part] = []
    for kind in PartKind:
        fresh = list(_parts(digest, kind, new_id))
        former = [part for part in known.parts if part.kind is kind] if known else []
        parts.extend(_identified(fresh, former, wordings or {}))
    return KeptDigest(
        id=known.id if known else new_id(),
        title=digest.title,
        author=digest.author,
        edition=digest.edition,
        isbn=digest.isbn,
        pages=digest.pages,
        finished_on=digest.finished_on,
        judgement=digest.judgement,
        parts=tuple(parts),
        revision=known.revision if known else 1,
        care=known.care if known else Care.STEADY,
        links=known.links if known else (),
    )


def with_places_of(known: KeptDigest, kept: KeptDigest) -> KeptDigest:
    """Return `kept` with the places the reader once said, where it says none itself.

    A document that is added again does not hold what the reader told Catchword about
    it: after which point a quotation stands. That is carried over as long as that
    point is still held, under the number it has now.
    """
    numbers = {part.id: part.number for part in kept.held(PartKind.POINT)}
    by_number = {part.number: numbers.get(part.id) for part in known.held(PartKind.POINT)}
    by_number[0] = 0
    said = {part.id: part.after for part in known.held(PartKind.QUOTATION)}

    def placed(part: Part) -> Part:
        after = said.get(part.id)
        if part.after is not None or after is None or part.retired:
            return part
        return replace(part, after=by_number.get(after))

    return replace(kept, parts=tuple(placed(part) for part in kept.parts))


def share_of(digest: Digest, known: KeptDigest) -> float:
    """Return which share, 0 to 1, of a digest's parts a kept digest has or once had.

    Tells a corrected digest from another book's when title and author were corrected too.
    """
    found = total = 0
    for kind in (PartKind.POINT, PartKind.COMMITMENT, PartKind.QUOTATION):
        fresh = list(_parts(digest, kind, lambda: UUID(int=0)))
        total += len(fresh)
        found += len(matches(fresh, [part for part in known.parts if part.kind is kind], {}))
    return found / total if total else 0.0


def restored(then: KeptDigest, known: KeptDigest) -> KeptDigest:
    """Return `known` saying again what it said in an earlier version, every identity as it was.

    What it holds now and did not hold then is retired; its care, its links and its revision stay.
    """
    held = {part.id: part for part in then.parts if not part.retired}
    gone = (replace(part, retired=True) for part in known.parts if part.id not in held)
    return replace(
        then,
        parts=(*held.values(), *gone),
        removed=False,
        revision=known.revision,
        care=known.care,
        links=known.links,
    )


def _parts(digest: Digest, kind: PartKind, new_id: Callable[[], UUID]) -> Iterator[Part]:
    match kind:
        case PartKind.THEME:
            if digest.theme is not None:
                yield Part(new_id(), kind, 1, digest.theme)
        case PartKind.POINT:
            for number, point in enumerate(digest.points, 1):
                yield Part(new_id(), kind, number, point.text, point.locator)
        case PartKind.COMMITMENT:
            for number, commitment in enumerate(digest.commitments, 1):
                yield Part(new_id(), kind, number, commitment.text)
        case PartKind.QUOTATION:
            for number, quotation in enumerate(digest.quotations, 1):
                yield Part(
                    new_id(), kind, number, quotation.text, quotation.locator, quotation.after
                )


def _identified(
    fresh: Sequence[Part], former: Sequence[Part], wordings: Mapping[UUID, Iterable[str]]
) -> Iterator[Part]:
    paired = matches(fresh, former, wordings)
    for index, part in enumerate(fresh):
        match = paired.get(index)
        yield part if match is None else replace(part, id=former[match].id)
    taken = set(paired.values())
    for index, part in enumerate(former):
        if index not in taken:
            yield replace(part, retired=True)
