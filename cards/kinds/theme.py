"""`theme`: recall what a book comes to, and by what stages, from its title and author."""

from collections.abc import Iterator
from uuid import UUID

from cards.answers import Grade
from cards.kinds.base import Answered, Asked, Attempt, Cue, KindName, Mark, Occasion
from cards.kinds.words import Comparison, compare, spans_of
from cards.parts import KeptDigest, Part, PartKind

# Shares of the weighted ideas from which each grade is suggested: reference, part 4,
# "theme, free recall"; the main idea, which weighs double there, is the first.
_HAZY, _CLEAR, _VIVID = 0.35, 0.60, 0.90
_MAIN_WEIGHT = 2


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
        """Suggest a grade by the share of the theme's ideas that came back."""
        part = occasion.part
        if not attempt.words.strip():
            return Mark(Grade.BLANK, "Nothing was written.")
        found = compare(part.text, attempt.words)
        shared = frozenset[str]().union(*(each.shared for each in found if each.span.hit))
        return Mark(
            grade=_grade(found),
            reason=_reason(found),
            answer_spans=tuple(each.span for each in found),
            attempt_spans=spans_of(attempt.words, shared),
        )

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


def _grade(found: list[Comparison]) -> Grade:
    weights = [_MAIN_WEIGHT, *[1] * (len(found) - 1)]
    share = sum(weight for weight, each in zip(weights, found, strict=True) if each.span.hit) / sum(
        weights
    )
    if share < _HAZY or not found[0].span.hit:
        return Grade.BLANK
    if share < _CLEAR or any(each.turned for each in found):
        return Grade.HAZY
    return Grade.CLEAR if share < _VIVID else Grade.VIVID


def _reason(found: list[Comparison]) -> str:
    hits = sum(each.span.hit for each in found)
    main = "the main one among them" if found[0].span.hit else "the main one not among them"
    ideas = "idea" if len(found) == 1 else "ideas"
    if hits == 0:
        reason = f"None of {len(found)} {ideas} was found in what you wrote."
    elif len(found) == 1:
        reason = "Its one idea came back."
    else:
        reason = f"{hits} of {len(found)} {ideas} came back, {main}."
    if any(each.turned for each in found):
        reason += " One of them may be turned round: look at the “not”."
    elif hits < len(found):
        reason += " Only words are compared: what you said in others counts too."
    return reason


THEME = _Theme()
"""The kind `theme`."""
