"""Places taken for each other: what a quotation was placed at, and where it stands."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations
from uuid import UUID

from cards.answers import Answer
from cards.items import KeptItem
from cards.kinds.base import KindName, Occasion
from cards.kinds.place import PLACE
from cards.parts import Part, PartKind
from cards.rereading.record import CAME_BACK_BADLY, BookRecord

_NEAR = 0.05
"""Share of the book within which a page counts as another quotation's (reference, part 4: what
is still `clear` when a quotation is placed by page)."""


@dataclass(frozen=True, slots=True)
class Confusion:
    """Quotations whose places were confused.

    Attributes:
        parts: the two placed at each other's place, or the one placed wrong twice running.
        items: their items, in the same order.
        sentence: what happened, with the figures.
    """

    parts: tuple[Part, ...]
    items: tuple[UUID, ...]
    sentence: str


@dataclass(frozen=True, slots=True)
class _Placing:
    part: Part
    item_id: UUID
    guesses: tuple[tuple[str, int], ...]
    right: dict[str, int]
    by_points: bool


def confusions(record: BookRecord) -> list[Confusion]:
    """Return the confusions the last answers show, of each quotation at most one."""
    wrong = list(_wrong(record))
    scale = _scale(record)
    found: list[Confusion] = []
    seen: set[UUID] = set()
    for one, other in combinations(wrong, 2):
        if not {one.item_id, other.item_id} & seen and _crossed(one, other, scale):
            seen |= {one.item_id, other.item_id}
            found.append(
                Confusion(
                    (one.part, other.part),
                    (one.item_id, other.item_id),
                    f"Quotations {one.part.number} and {other.part.number} were placed at each "
                    f"other’s place: {_said(one)}, {_said(other)}.",
                )
            )
    for each in wrong:
        twice = len(each.guesses) > 1 and each.guesses[0] == each.guesses[1]
        if twice and each.item_id not in seen and each.guesses[0][0] != "page":
            sentence = f"Quotation {each.part.number} was twice running placed {_guessed(each)}."
            found.append(Confusion((each.part,), (each.item_id,), sentence))
    return found


def _wrong(record: BookRecord) -> Iterator[_Placing]:
    """Yield the quotations placed wrong the last time, what was given the last time first."""
    placed = {part.id: part for part in PLACE.sources(record.digest)}
    for kept in record.asked:
        part = placed.get(kept.item.part_id)
        if kept.item.kind is not KindName.PLACE or part is None:
            continue
        guesses = tuple(_guesses(record, kept))
        answer = PLACE.answer(Occasion(record.digest, part))
        by_points = part.after is not None and bool(record.digest.held(PartKind.POINT))
        known = {"after": answer.gap, "page": answer.page, "chapter": answer.chapter}
        right = {way: number for way, number in known.items() if number is not None}
        if guesses and right.get(guesses[0][0], guesses[0][1]) != guesses[0][1]:
            yield _Placing(part, kept.item.id, guesses, right, by_points)


def _guesses(record: BookRecord, kept: KeptItem) -> Iterator[tuple[str, int]]:
    for answer in reversed(record.since_reread(kept.item)[-2:]):
        guess = _guess(answer)
        if guess is None:
            return
        yield guess


def _guess(answer: Answer) -> tuple[str, int] | None:
    """Return what a quotation was placed by and where, None for what came back well or not at all.

    Read from the answer's text, `Attempt.as_text`: `after 3`, `page 54`, `chapter 2`.
    """
    way, _, rest = answer.attempt.partition(" ")
    number = rest.partition(",")[0]
    if answer.grade not in CAME_BACK_BADLY or way not in {"after", "page", "chapter"}:
        return None
    return (way, int(number)) if number.isascii() and number.isdigit() else None


def _crossed(one: _Placing, other: _Placing, scale: int) -> bool:
    (way, mine), (their_way, theirs) = one.guesses[0], other.guesses[0]
    if way != their_way or way not in other.right:
        return False
    if way == "page":
        most = _NEAR * scale
        return abs(mine - other.right[way]) <= most < abs(mine - one.right[way]) and abs(
            theirs - one.right[way]
        ) <= most < abs(theirs - other.right[way])
    # Among the other quotations each is asked with another row of gaps: those do not compare.
    alike = way == "chapter" or (one.by_points and other.by_points)
    return alike and mine == other.right[way] and theirs == one.right[way]


def _scale(record: BookRecord) -> int:
    known = [part.page for part in record.digest.parts if part.page is not None]
    return max([record.digest.pages or 1, *known])


def _said(placing: _Placing) -> str:
    return f"{placing.part.number} {_guessed(placing)}"


def _guessed(placing: _Placing) -> str:
    way, number = placing.guesses[0]
    right = placing.right.get(way)
    what = "point" if placing.by_points else "quotation"
    match way:
        case "page":
            return f"on page {number}, where page {right} is right"
        case "chapter":
            return f"in chapter {number}, where chapter {right} is right"
        case _:
            return f"{_gap(number, what)}, where it stands {_gap(right or 0, what)}"


def _gap(number: int, what: str) -> str:
    return f"after {what} {number}" if number else f"before the first {what}"
