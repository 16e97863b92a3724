"""`order`: put the points of a book in their order."""

from collections.abc import Iterator
from uuid import UUID

from cards.answers import Grade
from cards.kinds.base import (
    Answered,
    Asked,
    Attempt,
    Cue,
    KindName,
    Landmark,
    Mark,
    Occasion,
    Span,
    order_of,
)
from cards.kinds.inversions import chance, in_order, inversions
from cards.kinds.lots import lot, one_from_each
from cards.parts import KeptDigest, Part, PartKind

FEWEST = 3
"""Points from which an order is asked: two are right by luck every other time."""
MOST = 10
"""Points put in order at once: more are a puzzle and no recall."""

# Reference, part 4, "order points": clear only where chance does as well in at most one
# of twenty tries. The table is silent on hazy: ours is what chance earns one time in
# four, about as rarely as blind placing earns it there (.2775).
_LUCK_OF_CLEAR, _LUCK_OF_HAZY = 0.05, 0.25
# Shares of the points given from which a grade can be suggested: those of free recall.
_HAZY, _CLEAR = 0.35, 0.60


class _Order:
    name = KindName.ORDER

    def sources(self, digest: KeptDigest) -> Iterator[Part]:
        """Yield one part for a digest with three points or more: see `_hangs_on`."""
        points = digest.held(PartKind.POINT)
        if len(points) >= FEWEST:
            yield _hangs_on(digest, points)

    def cue(self, occasion: Occasion) -> Cue:
        """Show the points, ten at the most, in an order that is not theirs.

        Without their pages, which would tell it.
        """
        shown = _shown(occasion)
        digest = occasion.digest
        by = f", by {digest.author}" if digest.author else ""
        return Cue(
            heading="Put the points in order",
            words=f"{digest.title}{by}",
            question="In which order does the book have them?",
            asked=(Asked.ORDER,),
            landmarks=tuple(Landmark(number, each.text) for number, each in enumerate(shown, 1)),
        )

    def answer(self, occasion: Occasion) -> Answered:
        """Return the points in the book's order, a line each, and their numbers as shown."""
        shown = _shown(occasion)
        right = sorted(shown, key=lambda each: each.number)
        return Answered(
            words="\n".join(_lines(right)),
            order=tuple(shown.index(each) + 1 for each in right),
        )

    def mark(self, occasion: Occasion, attempt: Attempt) -> Mark:
        """Suggest a grade by the share given and by inversions against what chance gives."""
        right = self.answer(occasion).order
        given = [right.index(n) for n in dict.fromkeys(attempt.order) if n in right]
        if not given:
            return Mark(Grade.BLANK, "No order was given.")
        return Mark(
            _grade(given, len(right)),
            _reason(given, len(right)),
            answer_spans=_spans(_lines(sorted(_shown(occasion), key=lambda e: e.number)), given),
        )

    def asks(self, occasion: Occasion) -> frozenset[UUID]:
        """The order of the points: what they say is shown."""
        return frozenset({order_of(occasion.digest)})

    def shows(self, occasion: Occasion) -> frozenset[UUID]:
        """Their order, and the points put in it."""
        return frozenset({order_of(occasion.digest), *(each.id for each in _shown(occasion))})

    def secret(self, occasion: Occasion) -> str:  # noqa: ARG002
        """None: an order is no words."""
        return ""


def _hangs_on(digest: KeptDigest, points: tuple[Part, ...]) -> Part:
    """Return the part whose id the item's is derived from.

    The theme, of which there is one, and which an edit changes and hardly ever removes; where
    there is none the point of the least id, which is the same wherever points are moved,
    reworded, or others removed.
    """
    theme = digest.held(PartKind.THEME)
    return theme[0] if theme else min(points, key=lambda each: each.id)


def _shown(occasion: Occasion) -> tuple[Part, ...]:
    """Return the points as they are shown, never in order already."""
    points = one_from_each(occasion, occasion.digest.held(PartKind.POINT), MOST)
    shuffled = tuple(sorted(points, key=lambda each: lot(occasion, each.id)))
    return shuffled if shuffled != points else (*points[1:], points[0])


def _lines(points: list[Part]) -> list[str]:
    return [f"{place}. {' '.join(each.text.split())}" for place, each in enumerate(points, 1)]


def _grade(given: list[int], shown: int) -> Grade:
    wrong = inversions(given)
    share, luck = len(given) / shown, chance(wrong, len(given))
    if share < _HAZY or luck > _LUCK_OF_HAZY:
        return Grade.BLANK
    if share < _CLEAR or luck > _LUCK_OF_CLEAR:
        return Grade.HAZY
    return Grade.VIVID if wrong == 0 and len(given) == shown else Grade.CLEAR


def _reason(given: list[int], shown: int) -> str:
    among, wrong = len(given), inversions(given)
    pairs = among * (among - 1) // 2
    luck = float(chance(wrong, among))
    of = f"all {shown}" if among == shown else f"{among} of {shown}"
    if among == 1:
        return f"Only one of {shown} was given, and one alone has no order."
    if wrong == 0:
        said = f"{of[0].upper()}{of[1:]} in order"
        said += "" if among == shown else ", the rest left out"
    else:
        stand = "pair stands" if wrong == 1 else "pairs stand"
        said = f"{wrong} {stand} the wrong way round, of {pairs}, with {of} given"
    return f"{said}; chance alone does as well in {_percent(luck)} of tries."


def _percent(share: float) -> str:
    return f"{share:.0%}" if share >= 0.01 else "less than 1%"


def _spans(lines: list[str], given: list[int]) -> tuple[Span, ...]:
    """Mark the points that stand as they should towards each other; the rest must be moved."""
    right = in_order(given)
    spans, start = [], 0
    for place, line in enumerate(lines):
        spans.append(Span(start, start + len(line), place in right))
        start += len(line) + 1
    return tuple(spans)


ORDER = _Order()
"""The kind `order`."""
