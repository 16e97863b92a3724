"""Which pages to read: around the parts concerned, and nothing the digest does not place."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from uuid import UUID

from cards.parts import KeptDigest, Part, PartKind
from cards.rereading.because import Because
from cards.rereading.pages import LONGEST, pages_of

MARGIN = 1
"""Pages read before and after what stands on one."""
_SHOWN = 60
"""Characters of a quotation that name its place where nothing else does."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """Something to read again in a book.

    Attributes:
        first, last: pages, both included; None where no page is known.
        place: what the reader looks for: `pp. 52-56`, a locator as they wrote it, or
            `where it says “…”`.
        points, quotations: those that stand there.
    """

    first: int | None
    last: int | None
    place: str
    points: tuple[Part, ...] = ()
    quotations: tuple[Part, ...] = ()

    @property
    def pages(self) -> int | None:
        """How many pages it has, or None where none is known."""
        return None if self.first is None or self.last is None else self.last - self.first + 1


def stretches_of(digest: KeptDigest, reasons: Iterable[Because]) -> tuple[Stretch, ...]:
    """Return what to read for some reasons: by page in the book's order, then what has no page.

    A page that is named stands in a locator of the digest or in brackets in a commitment, no
    more than `MARGIN` off, or lies between two neighbouring points of which both have pages.
    """
    reasons = list(reasons)
    held = (*digest.held(PartKind.POINT), *digest.held(PartKind.QUOTATION))
    wanted = {each for reason in reasons for each in reason.around}
    around = [part for part in held if part.id in wanted]
    spans = [_widened(span, digest) for reason in reasons for span in reason.named]
    spans += [_widened(span, digest) for part in around if (span := pages_of(part.locator))]
    broken = {each for reason in reasons for each in reason.threads}
    for span, between in _threads(digest, broken):
        spans += [span] if between else [_widened(span, digest)]
    paged = [_by_page(first, last, held) for first, last in _merged(spans)]
    return (*paged, *_without_page([part for part in around if part.page is None]))


def _threads(digest: KeptDigest, broken: set[UUID]) -> Iterator[tuple[tuple[int, int], bool]]:
    """Yield the pages from a point to the next; of what lies too far apart, both ends."""
    points = digest.held(PartKind.POINT)
    for here, following in pairwise(points):
        ends = pages_of(here.locator), pages_of(following.locator)
        if following.id not in broken or ends[0] is None or ends[1] is None:
            continue
        first, last = ends[0][0], ends[1][1]
        if 0 <= last - first < LONGEST:
            yield (first, last), True
        else:
            yield from ((ends[0], False), (ends[1], False))


def _widened(span: tuple[int, int], digest: KeptDigest) -> tuple[int, int]:
    first, last = span
    end = last + MARGIN if digest.pages is None else max(last, min(last + MARGIN, digest.pages))
    return max(1, first - MARGIN) if first else first, end


def _merged(spans: list[tuple[int, int]]) -> Iterator[tuple[int, int]]:
    """Yield spans without overlap, neighbours as one, none longer than a stretch may be."""
    merged: list[tuple[int, int]] = []
    for first, last in sorted(spans):
        if merged and first <= merged[-1][1] + 1:
            merged[-1] = merged[-1][0], max(last, merged[-1][1])
        else:
            merged.append((first, last))
    for first, last in merged:
        for start in range(first, last + 1, LONGEST):
            yield start, min(start + LONGEST - 1, last)


def _by_page(first: int, last: int, held: tuple[Part, ...]) -> Stretch:
    place = f"p. {first}" if first == last else f"pp. {first}-{last}"
    there = [
        part
        for part in held
        if (pages := pages_of(part.locator)) and pages[0] <= last and pages[1] >= first
    ]
    return _stretch(first, last, place, there)


def _without_page(parts: list[Part]) -> Iterator[Stretch]:
    by_place: dict[str, list[Part]] = {}
    for part in parts:
        by_place.setdefault(_place(part), []).append(part)
    for place, there in by_place.items():
        yield _stretch(None, None, place, there)


def _place(part: Part) -> str:
    if part.locator is not None:
        return part.locator
    text = " ".join(part.text.split())
    shown = text if len(text) <= _SHOWN else text[: _SHOWN - 1].rstrip() + "…"
    if part.kind is PartKind.QUOTATION:
        return f"where it says “{shown}”"
    return f"where point {part.number} stands: {shown}"


def _stretch(first: int | None, last: int | None, place: str, there: list[Part]) -> Stretch:
    return Stretch(
        first,
        last,
        place,
        tuple(part for part in there if part.kind is PartKind.POINT),
        tuple(part for part in there if part.kind is PartKind.QUOTATION),
    )
