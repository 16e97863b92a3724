"""From a digest to its items, and the identity of both across edits."""

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from uuid import UUID, uuid5

from rapidfuzz import fuzz

from cards.answers import Grade
from cards.digest import MAX_PARTS, Digest
from cards.kinds import KINDS
from cards.kinds.base import KindName
from cards.parts import Care, KeptDigest, Part, PartKind
from cards.schedule import Memory

SAME_WORDS = 60.0
"""Similarity, 0 to 100, from which two wordings of a part are taken for the same part.

Our own threshold: a corrected typing error scores above 90 and a reworded sentence
mostly above 60, while two different points of one book stay under 50
(`tests/cards/test_items.py` measures both on the demo library).
"""

_ITEMS = UUID("5e8b6f0e-6d2c-5b1e-9c57-0a7c5c1f7f10")


@dataclass(frozen=True, slots=True)
class Item:
    """One thing to recall, made from one part of a digest.

    Attributes:
        id: derived from the part's id and the kind, so that it outlives edits.
        retired: whether its source is gone; its history is kept.
    """

    id: UUID
    kind: KindName
    digest_id: UUID
    part_id: UUID
    number: int
    retired: bool = False


class Standing(StrEnum):
    """How an item stands with the reader's memory."""

    UNASKED = "unasked"
    SETTLING = "settling"
    HELD = "held"
    FADED = "faded"


HELD_FROM = 21.0
"""Days of stability from which an item counts as held: three weeks, our own convention.

Forgetting curves are steep over the first days and flat after some weeks (Ebbinghaus
1885: 25.4% of savings after six days, 21.1% after thirty-one)."""


@dataclass(frozen=True, slots=True)
class KeptItem:
    """An item in a reader's library with its memory, None while unasked."""

    item: Item
    memory: Memory | None

    @property
    def standing(self) -> Standing:
        """Unasked, faded when it last came back blank, held from three weeks' stability."""
        if self.memory is None:
            return Standing.UNASKED
        if self.memory.last_grade is Grade.BLANK:
            return Standing.FADED
        return Standing.HELD if self.memory.stability >= HELD_FROM else Standing.SETTLING


def item_id(part_id: UUID, kind: KindName) -> UUID:
    """Return the identity of the item of a kind made from a part."""
    return uuid5(_ITEMS, f"{part_id}:{kind.value}")


def items_of(kept: KeptDigest) -> tuple[Item, ...]:
    """Return every item a kept digest makes now, in the order of kinds and parts."""
    if kept.removed:
        return ()
    return tuple(
        Item(item_id(part.id, kind.name), kind.name, kept.id, part.id, part.number)
        for kind in KINDS.values()
        for part in kind.sources(kept)
    )


def reconcile(made: Iterable[Item], known: Iterable[Item]) -> tuple[Item, ...]:
    """Return all items of a digest: those it makes now, and the rest retired.

    An item whose source is gone is retired, never dropped; one whose source came
    back is the same item again.
    """
    now = {item.id: item for item in made}
    gone = (replace(item, retired=True) for item in known if item.id not in now)
    return (*now.values(), *gone)


def keep(digest: Digest, known: KeptDigest | None, new_id: Callable[[], UUID]) -> KeptDigest:
    """Give the parts of a digest their identities, those of `known` where they are the same.

    Parts are matched kind by kind: first by the same words, then the most similar
    wordings first. What is no longer there stays as a retired part, to be matched
    again should it return. Without `known` every part is new.
    """
    parts: list[Part] = []
    for kind in PartKind:
        fresh = list(_parts(digest, kind, new_id))
        former = [part for part in known.parts if part.kind is kind] if known else []
        parts.extend(_identified(fresh, former))
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
        found += len(_matches(fresh, [part for part in known.parts if part.kind is kind]))
    return found / total if total else 0.0


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


def _identified(fresh: Sequence[Part], former: Sequence[Part]) -> Iterator[Part]:
    matches = _matches(fresh, former)
    for index, part in enumerate(fresh):
        match = matches.get(index)
        yield part if match is None else replace(part, id=former[match].id)
    taken = set(matches.values())
    for index, part in enumerate(former):
        if index not in taken:
            yield replace(part, retired=True)


def _matches(fresh: Sequence[Part], former: Sequence[Part]) -> dict[int, int]:
    """Pair new parts with former ones, the surest pairs first; held parts win ties over retired.

    A book has one theme, so its theme is the same part however it is reworded.
    """
    if fresh and former and fresh[0].kind is PartKind.THEME:
        return {0: 0}
    pairs = sorted(
        (-likeness, former[j].retired, abs(fresh[i].number - former[j].number), i, j)
        for i, j, likeness in _alike(fresh, former)
    )
    matches: dict[int, int] = {}
    taken: set[int] = set()
    for *_, i, j in pairs:
        if i not in matches and j not in taken:
            matches[i] = j
            taken.add(j)
    return matches


def _alike(fresh: Sequence[Part], former: Sequence[Part]) -> Iterator[tuple[int, int, float]]:
    """Yield the pairs that may be the same part, with their likeness; the same words come to 101.

    The same words are found among all former parts. Other wordings are compared with
    the held and the first few hundred retired ones alone: else a digest rewritten many
    times over would take ever longer to mend.
    """
    by_text: dict[str, list[int]] = defaultdict(list)
    for j, old in enumerate(former):
        by_text[old.text].append(j)
    for i, new in enumerate(fresh):
        yield from ((i, j, 101.0) for j in by_text.get(new.text, ()))
    order = sorted(range(len(former)), key=lambda j: (former[j].retired, former[j].number))
    compared = [(j, former[j].text.casefold()) for j in order[: 2 * MAX_PARTS]]
    for i, new in enumerate(fresh):
        words = new.text.casefold()
        for j, others in compared:
            likeness = fuzz.ratio(words, others, score_cutoff=SAME_WORDS)
            if likeness and former[j].text != new.text:
                yield i, j, likeness
