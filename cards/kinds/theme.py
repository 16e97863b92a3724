"""`theme`: recall what a book comes to, and by what stages, from its title and author."""

from collections.abc import Iterator
from uuid import UUID

from cards.kinds.base import Answered, Asked, Attempt, Cue, KindName, Mark, Occasion
from cards.kinds.recalling import recalled
from cards.parts import KeptDigest, Part, PartKind


class _Theme:
    name = KindName.THEME

    def sources(self, digest: KeptDigest) -> Iterator[Part]:
        """Yield the theme, when the digest has one."""
        yield from digest.held(PartKind.THEME)

    def cue(self, occasion: Occasion) -> Cue:
        """Show the title, ask for the theme."""
        digest = occasion.digest
        by = f", by {digest.author}" if digest.author else ""
        return Cue(
            heading="Recall the theme",
            words=f"{digest.title}{by}",
            question="What does the book come to, and by what stages?",
            asked=(Asked.WORDS,),
        )

    def answer(self, occasion: Occasion) -> Answered:
        """Return the theme as the digest puts it."""
        part = occasion.part
        return Answered(words=part.text)

    def mark(self, occasion: Occasion, attempt: Attempt) -> Mark:
        """Suggest a grade by the share of the theme's ideas that came back.

        The points are its stages: who names those has recalled the ideas they stand for.
        """
        points = occasion.digest.held(PartKind.POINT)
        return recalled(occasion.part.text, attempt, [point.text for point in points])

    def asks(self, occasion: Occasion) -> frozenset[UUID]:
        """The theme itself, and the points, which are its stages."""
        digest, part = occasion.digest, occasion.part
        return frozenset({part.id, *(point.id for point in digest.held(PartKind.POINT))})

    def shows(self, occasion: Occasion) -> frozenset[UUID]:
        """The theme, on the right page."""
        part = occasion.part
        return frozenset({part.id})

    def secret(self, occasion: Occasion) -> str:
        """The theme."""
        return occasion.part.text


THEME = _Theme()
"""The kind `theme`."""
