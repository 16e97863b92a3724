"""`restate`: say a commitment again, cued by its book and the situation it is for."""

from collections.abc import Iterator
from uuid import UUID

from cards.answers import Grade
from cards.cautions import caution
from cards.kinds.base import Answered, Asked, Attempt, Cue, KindName, Mark, Occasion, Span
from cards.kinds.situations import situation
from cards.kinds.words import (
    HIT,
    content_words,
    held,
    negated,
    numbers,
    spans_of,
    stems,
    substance,
)
from cards.parts import KeptDigest, Part, PartKind

_VIVID = 0.90
"""Share of the commitment's content words from which `vivid` is suggested, as for a theme."""


class _Restate:
    name = KindName.RESTATE

    def sources(self, digest: KeptDigest) -> Iterator[Part]:
        """Yield every commitment."""
        yield from digest.held(PartKind.COMMITMENT)

    def cue(self, occasion: Occasion) -> Cue:
        """Show the book and the situation, never the action or its number."""
        digest, part = occasion.digest, occasion.part
        told = situation(part.text)
        point = _point(digest, part)
        lines = [told.words] if told.words else []
        if point is not None:
            lines.append(f"From the point: {point.text}")
        several = len(digest.held(PartKind.COMMITMENT))
        which = f"Commitment {part.number} of {several}" if several > 1 else "The one commitment"
        lines.append(f"{which} of {digest.title}" + (f", {digest.author}" if digest.author else ""))
        return Cue(
            heading="Say the commitment again",
            words="\n".join(lines),
            question="What did you mean to do: what, how often or how much, and until when?",
            asked=(Asked.WORDS,),
            caution=caution(part.text),
        )

    def answer(self, occasion: Occasion) -> Answered:
        """Return the commitment as it was made."""
        part = occasion.part
        return Answered(words=part.text, caution=caution(part.text))

    def mark(self, occasion: Occasion, attempt: Attempt) -> Mark:
        """Suggest a grade: the act must be there, and its numbers exactly.

        Reference, part 4, "restate a commitment": without the action blank, with any
        number wrong or a “not” too many hazy, else clear; vivid when nearly every word of
        substance came.
        """
        part = occasion.part
        if not attempt.words.strip():
            return Mark(Grade.BLANK, "Nothing was written.")
        cued = stems(self.cue(occasion).words)
        wanted = substance(part.text) - cued or substance(part.text)
        shared = held(wanted, attempt.words)
        act = wanted - _numbered(part.text) or wanted
        spans = tuple(
            Span(token.start, token.end, token.stem in shared)
            for token in content_words(part.text)
            if token.stem in wanted
        )
        grade, reason = _judge(part.text, attempt.words, len(shared & act) / len(act))
        return Mark(grade, reason, spans, spans_of(attempt.words, shared))

    def asks(self, occasion: Occasion) -> frozenset[UUID]:
        """The commitment's words."""
        part = occasion.part
        return frozenset({part.id})

    def shows(self, occasion: Occasion) -> frozenset[UUID]:
        """The commitment, and the point its cue names."""
        digest, part = occasion.digest, occasion.part
        point = _point(digest, part)
        return frozenset({part.id} if point is None else {part.id, point.id})

    def secret(self, occasion: Occasion) -> str:
        """The commitment."""
        return occasion.part.text


def _point(digest: KeptDigest, part: Part) -> Part | None:
    """Return the point a commitment came from, where showing it gives nothing away."""
    number = situation(part.text).point
    points = digest.held(PartKind.POINT)
    if number is None or not 1 <= number <= len(points):
        return None
    point = points[number - 1]
    gives_away = not stems(point.text).isdisjoint(stems(part.text)) or numbers(point.text)
    return None if gives_away else point


def _judge(wanted: str, given: str, share: float) -> tuple[Grade, str]:
    due, said = numbers(wanted), numbers(given)
    if share < HIT:
        return Grade.BLANK, "What you wrote does not hold the act you meant to do."
    if _measures(due) != _measures(said):
        amount = ", ".join(due) if due else "no number"
        return Grade.HAZY, f"The act came back, but not how much or when: it says {amount}."
    if negated(wanted) != negated(given):
        return Grade.HAZY, "The act came back, perhaps turned round: look at the “not”."
    if share < _VIVID:
        return Grade.CLEAR, "The act came back" + (", its numbers exactly." if due else ".")
    return Grade.VIVID, "All of it came back."


def _numbered(text: str) -> frozenset[str]:
    """Return the stems of the words that are numbers, which are compared as such."""
    return frozenset(
        token.stem for token in content_words(text) if numbers(text[token.start : token.end])
    )


def _measures(said: list[str]) -> list[str]:
    """Return numbers to be compared: without 1, which "a", "every" and "one of" say as well."""
    return sorted(number for number in said if number != "1")


RESTATE = _Restate()
"""The kind `restate`."""
