"""What two texts have in common: content words by their stems, idea units, numbers."""

import re
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

import snowballstemmer
from text_to_num import alpha2digit

from cards.kinds.base import Span

_WORD = re.compile(r"[^\W_]+(?:['’][^\W_]+)*")
_IDEA_END = re.compile(r"(?<=[.!?;])[\s”’\"')\]]+(?=\S)|(?<=:)\s+(?=\S)|\s+[–—]\s+|\n+")
_NUMBER = re.compile(r"\d+(?:[.,]\d+)?")
_TIMES = {"once": "1", "first": "1", "twice": "2", "thrice": "3"}
_ABOVE_ONE = 1.0
_ABBREVIATIONS = ("Mr.", "Mrs.", "Dr.", "St.", "ch.", "pp.", "p.", "vol.", "e.g.", "i.e.")

# Closed-class English words carry no idea of their own; Snowball's own list is of this kind.
_EMPTY_WORDS = frozenset(
    """a about above after again against all also am an and any are as at be because been
    before being below between both but by can could did do does doing down during each even
    ever every few for from further had has have having he her here hers herself him himself
    his how i if in into is it its itself just may me might more most much must my myself no
    nor not now of off on once one only or other our ours ourselves out over own same shall
    she should so some such than that the their theirs them themselves then there these they
    this those through to too under until up upon us very was we were what when where which
    while who whom whose why will with would you your yours yourself""".split()
)
NEGATIONS = frozenset({"no", "not", "never", "nor", "neither", "nobody", "nothing", "cannot"})
"""Words that turn a sentence round; comparing words alone cannot see them."""

HIT = 0.5
"""Share of an idea's content words that must be found (reference: unit hit from one half)."""


@dataclass(frozen=True, slots=True)
class Token:
    """A content word: where it stands and its stem."""

    start: int
    end: int
    stem: str


_STEMMER = snowballstemmer.stemmer("english")


@lru_cache(maxsize=8192)
def _stem(word: str) -> str:
    return str(_STEMMER.stemWord(word))


def content_words(text: str) -> list[Token]:
    """Return the content words of a text in order, with their English stems."""
    return [
        Token(found.start(), found.end(), _stem(folded))
        for found in _WORD.finditer(text)
        if (folded := fold_word(found[0])) not in _EMPTY_WORDS
    ]


def fold_word(word: str) -> str:
    """Return a word in lower case without a possessive ending."""
    folded = word.casefold().replace("’", "'")
    return folded.removesuffix("'s").removesuffix("'")


def stems(text: str) -> frozenset[str]:
    """Return the stems of a text's content words."""
    return frozenset(token.stem for token in content_words(text))


def ideas(text: str) -> list[tuple[int, int]]:
    """Cut a text into idea units: sentences, and clauses set apart by ; : or a dash.

    Each is a pair of offsets, start and end. An approximation of the propositional
    analysis of Kintsch (1974) that needs no parser; the reader corrects it.
    """
    ends = (
        found.end()
        for found in _IDEA_END.finditer(text)
        if not text[: found.start()].endswith(_ABBREVIATIONS)
    )
    units = []
    for start, end in pairwise((0, *ends, len(text))):
        stripped = text[start:end].strip()
        if content_words(stripped):
            begin = text.index(stripped, start)
            units.append((begin, begin + len(stripped)))
    return units


@dataclass(frozen=True, slots=True)
class Comparison:
    """One idea unit of the digest held against an attempt.

    Attributes:
        span: where the unit stands in the digest's words, and whether it was found.
        shared: stems found in both.
        turned: whether one of the two has a negation and the other has not.
    """

    span: Span
    shared: frozenset[str]
    turned: bool


def compare(source: str, attempt: str) -> list[Comparison]:
    """Hold each idea unit of `source` against an attempt.

    A unit is found when at least half its content words, by stem, are in the attempt.
    """
    given = stems(attempt)
    sentences = [attempt[start:end] for start, end in ideas(attempt)]
    found = []
    for start, end in ideas(source):
        unit = source[start:end]
        wanted = stems(unit)
        shared = wanted & given
        hit = len(shared) >= HIT * len(wanted)
        closest = max(sentences, key=lambda text: len(stems(text) & wanted), default="")
        turned = hit and _negated(unit) != _negated(closest)
        found.append(Comparison(Span(start, end, hit), shared, turned))
    return found


def _negated(text: str) -> bool:
    words = {fold_word(found[0]) for found in _WORD.finditer(text)}
    return not words.isdisjoint(NEGATIONS) or any(word.endswith("n't") for word in words)


def spans_of(text: str, wanted: frozenset[str]) -> tuple[Span, ...]:
    """Return the stretches of a text that hold the wanted stems, neighbours joined."""
    spans: list[Span] = []
    previous = False
    for token in content_words(text):
        hit = token.stem in wanted
        if hit and previous:
            spans[-1] = Span(spans[-1].start, token.end, hit=True)
        elif hit:
            spans.append(Span(token.start, token.end, hit=True))
        previous = hit
    return tuple(spans)


def numbers(text: str) -> list[str]:
    """Return the numbers of a text in order, words for them included: "twice" is 2.

    The word "one" is left out: mostly it is an article ("one question", "one of them").
    """
    digits = alpha2digit(text.replace("-", " "), "en", _ABOVE_ONE)
    plain = " ".join(_TIMES.get(word.casefold().strip(".,;:"), word) for word in digits.split())
    return [found[0].replace(",", ".") for found in _NUMBER.finditer(plain)]
