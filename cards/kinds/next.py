"""`next`: recall a point of a book from the point before it."""

from collections.abc import Iterator
from uuid import UUID

from cards.kinds.base import Answered, Asked, Attempt, Cue, KindName, Mark, Occasion
from cards.kinds.recalling import recalled
from cards.kinds.words import stems, substance
from cards.parts import KeptDigest, Part, PartKind

_GIVEN_AWAY = 0.5
"""Share of a point's content words from which what is shown counts as giving it away."""


class _Next:
    name = KindName.NEXT

    def sources(self, digest: KeptDigest) -> Iterator[Part]:
        """Yield every point: the points are the body of a digest, and each comes back singly."""
        yield from digest.held(PartKind.POINT)

    def cue(self, occasion: Occasion) -> Cue:
        """Show the point before; for the first, or where that tells it, the book alone."""
        digest, part = occasion.digest, occasion.part
        points = digest.held(PartKind.POINT)
        book = digest.title + (f", by {digest.author}" if digest.author else "")
        before = _shown_before(digest, part)
        if before is not None:
            words, question = f"{before.text}\n{book}", "What comes next?"
        elif part.number == 1:
            words, question = book, "What does it begin with?"
        else:
            words = f"Point {part.number} of {len(points)}\n{book}"
            question = "What does this point say?"
        return Cue(
            heading="Recall the next point" if before else "Recall the point",
            words=words,
            question=question,
            asked=(Asked.WORDS,),
        )

    def answer(self, occasion: Occasion) -> Answered:
        """Return the point as the digest puts it, and where it stands."""
        part = occasion.part
        return Answered(words=part.text, page=part.page, locator=part.locator)

    def mark(self, occasion: Occasion, attempt: Attempt) -> Mark:
        """Suggest a grade by the share of the point's ideas that came back."""
        return recalled(occasion.part.text, attempt)

    def asks(self, occasion: Occasion) -> frozenset[UUID]:
        """The point."""
        return frozenset({occasion.part.id})

    def shows(self, occasion: Occasion) -> frozenset[UUID]:
        """The point, on the right page, and the one before where the cue shows it."""
        part = occasion.part
        before = _shown_before(occasion.digest, part)
        return frozenset({part.id} if before is None else {before.id, part.id})

    def secret(self, occasion: Occasion) -> str:
        """The point."""
        return occasion.part.text


def _shown_before(digest: KeptDigest, part: Part) -> Part | None:
    """Return the point before another, unless it holds half of the other's content words."""
    before = [point for point in digest.held(PartKind.POINT) if point.number < part.number]
    if not before:
        return None
    wanted = substance(part.text)
    told = wanted & (stems(before[-1].text) | substance(before[-1].text))
    return None if len(told) >= _GIVEN_AWAY * len(wanted) else before[-1]


NEXT = _Next()
"""The kind `next`."""
