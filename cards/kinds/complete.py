"""`complete`: a quotation with words left out; later, the whole of it by heart."""

from collections.abc import Iterator
from uuid import UUID

from cards.answers import Grade
from cards.kinds.base import (
    Answered,
    Asked,
    Attempt,
    Cue,
    KindName,
    Mark,
    Occasion,
    Span,
    place_of,
)
from cards.kinds.blanks import SHOWN, by_heart, can_be_completed, left_out
from cards.kinds.opposites import opposed
from cards.kinds.wording import recite, same_word, wording
from cards.kinds.words import held, substance
from cards.parts import KeptDigest, Part, PartKind

# Shares of words that are wrong: reference, part 4, "complete a quotation".
_HAZY, _CLEAR = 0.35, 0.10
_LONGEST_GIVEN = 200
"""Characters of a word given that are read."""
_GIST = 0.5
"""Share of its content words in which the sense of a quotation came back: as of an idea."""


class _Complete:
    name = KindName.COMPLETE

    def sources(self, digest: KeptDigest) -> Iterator[Part]:
        """Yield the quotations of six words or more."""
        for part in digest.held(PartKind.QUOTATION):
            if can_be_completed(digest, part):
                yield part

    def cue(self, occasion: Occasion) -> Cue:
        """Show the quotation with words left out, or how it begins."""
        digest = occasion.digest
        by = f", by {digest.author}" if digest.author else ""
        begins = by_heart(occasion)
        if begins is not None:
            return Cue(
                heading="Give this by heart",
                words=f"“{begins} …”\n{digest.title}{by}",
                question="How does it go on, word for word?",
                asked=(Asked.WORDS,),
            )
        return Cue(
            heading="Complete the quotation",
            words=f"{digest.title}{by}",
            question="Which words are left out?",
            asked=(Asked.BLANKS,),
            pieces=left_out(occasion).pieces,
        )

    def answer(self, occasion: Occasion) -> Answered:
        """Return the quotation, the words left out, and where it stands."""
        part = occasion.part
        words = () if by_heart(occasion) is not None else left_out(occasion).words
        return Answered(
            words=part.text,
            blanks=tuple(part.text[a:b] for a, b in words),
            page=part.page,
            locator=part.locator,
        )

    def mark(self, occasion: Occasion, attempt: Attempt) -> Mark:
        """Suggest a grade by the share of words that are wrong."""
        if attempt.empty:
            return Mark(Grade.BLANK, "Nothing was written.")
        begins = by_heart(occasion)
        if attempt.words.strip():
            return _by_words(occasion.part, attempt.words, 0 if begins is None else SHOWN)
        if begins is None:
            return _by_blanks(occasion, attempt.blanks)
        return Mark(Grade.BLANK, "Nothing was written.")

    def asks(self, occasion: Occasion) -> frozenset[UUID]:
        """The quotation."""
        return frozenset({occasion.part.id})

    def shows(self, occasion: Occasion) -> frozenset[UUID]:
        """The quotation and where it stands."""
        return frozenset({occasion.part.id, place_of(occasion.part)})

    def secret(self, occasion: Occasion) -> str:
        """The quotation; what its cue shows of it is no secret."""
        return occasion.part.text


def _by_blanks(occasion: Occasion, blanks: tuple[str, ...]) -> Mark:
    text, wanted = occasion.part.text, left_out(occasion).words
    given = (*blanks[: len(wanted)], *[""] * (len(wanted) - len(blanks)))
    spans = tuple(
        Span(a, b, same_word(word, text[a:b])) for (a, b), word in zip(wanted, given, strict=True)
    )
    right = sum(span.hit for span in spans)
    turned = any(
        word.strip() and opposed([_one(text[span.start : span.end])], [_one(word)])
        for span, word in zip(spans, given, strict=True)
        if not span.hit
    )
    grade = _grade(1 - right / len(spans), turned=turned)
    return Mark(grade, _of_blanks(right, len(spans)) + _turned(turned), answer_spans=spans)


def _one(word: str) -> str:
    return " ".join(each.folded for each in wording(word[:_LONGEST_GIVEN]))


def _of_blanks(right: int, of: int) -> str:
    if of == 1:
        return "The word left out is right." if right else "The word left out is another."
    if right == of:
        return f"{'Both' if of == 2 else f'All {of}'} words left out are right."
    return f"{right or 'None'} of the {of} words left out {'is' if right == 1 else 'are'} right."


def _by_words(part: Part, attempt: str, shown: int) -> Mark:
    recital = recite(part.text, attempt, shown)
    turned = opposed(recital.missed, recital.put_in)
    grade = _grade(recital.rate, turned=turned)
    reason = _of_words(recital.errors, recital.of)
    rest = part.text[wording(part.text)[shown - 1].end :] if shown else part.text
    if recital.rate > _HAZY and _gist(rest, attempt):
        grade, reason = Grade.HAZY, f"Sense, not words: {reason[0].lower()}{reason[1:]}"
    return Mark(grade, reason + _turned(turned), recital.spans, recital.given)


def _of_words(errors: int, of: int) -> str:
    if errors == 0:
        return "Word for word."
    words = "word is" if errors == 1 else "words are"
    return f"{errors} {words} wrong, missing or too many, where there are {of}."


def _gist(text: str, attempt: str) -> bool:
    wanted = substance(text)
    return len(held(wanted, attempt)) >= _GIST * len(wanted)


def _turned(turned: bool) -> str:
    return " The sense may be turned round: compare them." if turned else ""


def _grade(wrong: float, *, turned: bool) -> Grade:
    if wrong > _HAZY:
        return Grade.BLANK
    if wrong > _CLEAR or turned:
        return Grade.HAZY
    return Grade.CLEAR if wrong > 0 else Grade.VIVID


COMPLETE = _Complete()
"""The kind `complete`."""
