"""`restate`: say a commitment again, cued by its book and the situation it is for."""

from collections.abc import Iterator
from uuid import UUID

from cards.answers import Grade
from cards.cautions import caution
from cards.kinds.attempted import alike_in, found_in
from cards.kinds.base import Answered, Asked, Attempt, Cue, KindName, Mark, Occasion
from cards.kinds.situations import situation
from cards.kinds.slots import Held, hold
from cards.kinds.words import numbers, stems
from cards.parts import KeptDigest, Part, PartKind


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
        """Suggest a grade by the slots that came back: act, measure, cue, term, the rest.

        Reference, part 4, "restate a commitment": without the act blank; with anything that
        can be measured wrong or missing hazy, as where the act is turned round; all of it
        right clear; all five slots vivid. What the cue shows is not asked again.
        """
        text, words = occasion.part.text, attempt.words
        if not words.strip():
            return Mark(Grade.BLANK, "Nothing was written.")
        grade, reason = _judged(hold(text, words, self.cue(occasion).words))
        if _plain(text) == _plain(words):
            grade, reason = Grade.VIVID, "All of it came back."
        return Mark(grade, reason, alike_in(text, words), found_in(words, text))

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


def _judged(held: Held) -> tuple[Grade, str]:
    if not held.act:
        return Grade.BLANK, "What you wrote does not hold the act you meant to do."
    if held.turned and not held.perhaps:
        return Grade.HAZY, "The act came back, perhaps turned round: look at the “not”."
    if held.wrong:
        return Grade.HAZY, f"The act came back, but not {_listed(held.wrong)}."
    slots = (
        ("when or where you do it", held.cue),
        ("what ends it", held.term),
        ("all that it is about", held.rest),
    )
    missing = [what for what, is_there in slots if not is_there]
    if missing:
        return Grade.CLEAR, f"The act and its measure came back, but not {_listed(missing)}."
    return Grade.VIVID, "All of it came back."


def _listed(what: list[str]) -> str:
    return " nor ".join(what)


def _plain(text: str) -> str:
    return " ".join(text.split()).casefold()


RESTATE = _Restate()
"""The kind `restate`."""
