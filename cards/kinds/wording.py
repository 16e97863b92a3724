"""Wording held against wording, word by word: words left out of a text, and texts by heart."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from rapidfuzz.distance import Levenshtein

from cards.kinds.base import Span
from cards.proving.folding import fold
from cards.proving.words import Word, words_of

_LONG_WORD = 5
"""Letters from which one typing error in a word is let pass: reference, part 4."""
_LONGEST_GIVEN = 200
"""Characters of a word given that are read: longer than any word there is."""
_SURPLUS = 20
"""Words a reader may give beyond twice those wanted; further ones can only be wrong too."""
_INSIDE = re.compile(r"\s+")


@lru_cache(maxsize=512)
def wording(text: str) -> tuple[Word, ...]:
    """Return the words of a text with their offsets; case, accents, quotes, dashes folded."""
    return tuple(words_of(fold(text)))


def same_word(given: str, wanted: str) -> bool:
    """Tell whether a word given is the one left out.

    Exact after folding case, accents, quotation marks, dashes and white space; in words of
    five letters or more one error is let pass (Levenshtein 1966), though not in the first
    letter, where it makes another word more often than a slip: `amoral`, `moral`.
    """
    mine, own = _plain(given[:_LONGEST_GIVEN]), _plain(wanted)
    if mine == own:
        return bool(own) or given.strip() == wanted.strip()
    return (
        len(own) >= _LONG_WORD
        and own.isalpha()
        and mine[:1] == own[:1]
        and Levenshtein.distance(mine, own, score_cutoff=1) <= 1
    )


def _plain(word: str) -> str:
    return _INSIDE.sub("", fold(word).text)


@dataclass(frozen=True, slots=True)
class Recital:
    """A text given by heart, held against the text.

    Attributes:
        errors: words put in the place of another, left out or put in: S + D + I.
        of: words of the text, N.
        missed, put_in: the words of the text, and of the attempt, that are in error, folded.
        spans: stretches of the text, given or not.
        given: stretches of the attempt, right or not.
    """

    errors: int
    of: int
    missed: frozenset[str]
    put_in: frozenset[str]
    spans: tuple[Span, ...]
    given: tuple[Span, ...]

    @property
    def rate(self) -> float:
        """The word error rate, (S + D + I) / N, capped at 1: reference, part 4."""
        return min(1.0, self.errors / self.of)


def recite(text: str, attempt: str, shown: int = 0) -> Recital:
    """Hold a text given by heart against the text, which has at least one word beyond `shown`.

    Args:
        text: as it should be.
        attempt: as it was given.
        shown: the words of its beginning that were shown; whoever gives them as well, or
            goes on from there, is held to the same.
    """
    wanted, words = wording(text), wording(attempt)
    words = words[: 2 * len(wanted) + _SURPLUS]
    whole = _held(wanted, words)
    rest = _held(wanted[shown:], words)
    return whole if whole.rate < rest.rate else rest


def _held(wanted: Sequence[Word], given: Sequence[Word]) -> Recital:
    ours, theirs = [word.folded for word in wanted], [word.folded for word in given]
    errors, found, used = 0, set[int](), set[int]()
    for step in Levenshtein.opcodes(ours, theirs):
        if step.tag == "equal":
            found.update(range(step.src_start, step.src_end))
            used.update(range(step.dest_start, step.dest_end))
        else:
            errors += max(step.src_end - step.src_start, step.dest_end - step.dest_start)
    return Recital(
        errors=errors,
        of=len(ours),
        missed=frozenset(word for number, word in enumerate(ours) if number not in found),
        put_in=frozenset(word for number, word in enumerate(theirs) if number not in used),
        spans=_spans(wanted, found),
        given=_spans(given, used),
    )


def _spans(words: Sequence[Word], right: set[int]) -> tuple[Span, ...]:
    """Return words as stretches that are right or not, neighbours joined."""
    spans: list[Span] = []
    for number, word in enumerate(words):
        hit = number in right
        if spans and spans[-1].hit == hit:
            spans[-1] = Span(spans[-1].start, max(spans[-1].end, word.end), hit)
        else:
            spans.append(Span(word.start, word.end, hit))
    return tuple(spans)
