"""The words of a text: content words by their stems, stretches that hold them, numbers."""

import re
from dataclasses import dataclass
from functools import lru_cache

import snowballstemmer
from text_to_num import alpha2digit

from cards.kinds.base import Span

WORD = re.compile(r"[^\W_]+(?:['’][^\W_]+)*")
_NUMBER = re.compile(r"\d{1,3}(?:,\d{3})+(?:\.\d+)?(?!\d)|\d+(?:[.,]\d+)?")
_THOUSANDS = re.compile(r"\d{1,3}(?:,\d{3})+(?:\.\d+)?")
_TIMES = {"once": "1", "first": "1", "twice": "2", "thrice": "3"}
_TIMES_WORD = re.compile(rf"\b(?:{'|'.join(_TIMES)})\b", re.IGNORECASE)
_ORDINALS_FROM = 1

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


@lru_cache(maxsize=16_384)
def stem_of(word: str) -> str:
    """Return the English stem of a folded word."""
    return str(_STEMMER.stemWord(word))


def content_words(text: str) -> list[Token]:
    """Return the content words of a text in order, with their English stems."""
    return list(_content_words(text))


# One marking, and one digest that is taken in, ask for the words of the same texts many times.
@lru_cache(maxsize=128)
def _content_words(text: str) -> tuple[Token, ...]:
    return tuple(
        Token(found.start(), found.end(), stem_of(folded))
        for found in WORD.finditer(text)
        if (folded := fold_word(found[0])) not in _EMPTY_WORDS
    )


def fold_word(word: str) -> str:
    """Return a word in lower case without a possessive ending."""
    folded = word.casefold().replace("’", "'")
    return folded.removesuffix("'s").removesuffix("'")


def stems(text: str) -> frozenset[str]:
    """Return the stems of a text's content words."""
    return frozenset(token.stem for token in content_words(text))


def substance(text: str) -> frozenset[str]:
    """Return what recalling a text must bring back: the stems of its content words.

    Where no word carries an idea ("To be or not to be") it is the stems of all its
    words, and where there is no word at all the text itself.
    """
    return stems(text) or _every_stem(text) or frozenset({text.strip()})


def held(wanted: frozenset[str], attempt: str) -> frozenset[str]:
    """Return what of a substance is in an attempt."""
    return wanted & (_every_stem(attempt) | {attempt.strip()})


def _every_stem(text: str) -> frozenset[str]:
    return frozenset(stem_of(fold_word(found[0])) for found in WORD.finditer(text))


def negated(text: str) -> bool:
    """Tell whether a text holds a negation."""
    words = {fold_word(found[0]) for found in WORD.finditer(text)}
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

    However a number is written it reads the same: `10,000`, `10000` and "ten thousand".
    """
    digits = alpha2digit(text.replace("-", " "), "en", _ORDINALS_FROM)
    plain = _TIMES_WORD.sub(lambda found: _TIMES[found[0].casefold()], digits)
    return [_plain(found[0]) for found in _NUMBER.finditer(plain)]


def _plain(number: str) -> str:
    """Return a number without separators of thousands and without idle zeros."""
    grouped = _THOUSANDS.fullmatch(number)
    whole, _, part = number.replace(",", "" if grouped else ".").partition(".")
    whole, part = whole.lstrip("0") or "0", part.rstrip("0")
    return f"{whole}.{part}" if part else whole
