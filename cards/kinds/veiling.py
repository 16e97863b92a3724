"""Words that would tell whose a text is, or what it leads to, hidden in it."""

import re
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise, zip_longest

from cards.digest import folded
from cards.kinds.words import Token, content_words
from cards.parts import KeptDigest, PartKind

VEIL = "———"
"""What stands for a hidden word, and for several in a row: it does not tell their length."""

_SHORTEST = 3
"""Letters of a title word or an author's name that is hidden; shorter ones tell nothing."""
_ROOT = 5
"""Letters of a stem that are told again in a longer one: stemming leaves some words apart."""
_POSSESSIVE = re.compile(r"['’]s\Z", re.IGNORECASE)
_SENTENCE_ENDS = re.compile(r"(?:\A|[.!?…]|\n)[\s”’\"')\]“‘(\[«»_*—–-]*\Z")
_TITLE_BEFORE = re.compile(r"\b(?:Mr|Mrs|Ms|Dr|St|Mme|Mlle|Capt|Rev|Prof|[A-Z])\.\s+\Z")
_BEFORE = 12
"""Characters before a word in which the end of a sentence is looked for."""
# A language that writes nouns with capitals, or a text all in capitals, names nobody by
# them: more than a third of many words. Our own line.
_MANY, _ORTHOGRAPHY = 20, 1 / 3


def veil(text: str, hidden: frozenset[str]) -> str:
    """Return a text with the words of the hidden stems veiled; what is left can be read on."""
    spans = [_span(text, token) for token in content_words(text) if _key(token) in hidden]
    spans = _joined(text, spans)
    begins = (0, *(end for _, end in spans))
    ends = (*(start for start, _ in spans), len(text))
    return VEIL.join(text[a:b] for a, b in zip(begins, ends, strict=True))


def share_left(text: str, hidden: frozenset[str]) -> float:
    """Return the share of a text's content words that veiling leaves; 0 when it has none."""
    tokens = content_words(text)
    left = sum(_key(token) not in hidden for token in tokens)
    return left / len(tokens) if tokens else 0.0


class Telling:
    """What in a quotation tells its book: words of title and author, and names.

    A name is a word with a capital where no sentence begins, or before another such, in the
    quotation or in the digest's theme, points and commitments; or one that begins a
    sentence, when both have it with a capital and neither in small letters.
    """

    def __init__(self, digest: KeptDigest) -> None:
        self._title = title_stems(digest.title, digest.author)
        kinds = (PartKind.THEME, PartKind.POINT, PartKind.COMMITMENT)
        self._digest = _capitals([part.text for kind in kinds for part in digest.held(kind)])

    def of(self, quotation: str) -> frozenset[str]:
        """Return the stems that are to be veiled in a quotation."""
        mine, theirs = _capitals([quotation]), self._digest
        words, capitals = mine.words + theirs.words, mine.capitals + theirs.capitals
        title = {key for key in mine.every | mine.small if _alike(key, self._title)}
        both = mine.every & theirs.every
        if words >= _MANY and capitals > _ORTHOGRAPHY * words:
            return frozenset(title | both)
        known = theirs.inside & (mine.every | (mine.small - theirs.small))
        return frozenset(title | mine.inside | known | (both - mine.small - theirs.small))


def title_stems(*titles: str | None) -> frozenset[str]:
    """Return the stems of titles and authors' names that are hidden: three letters or more."""
    return frozenset(
        _key(token)
        for title in titles
        for token in content_words(title or "")
        if token.end - token.start >= _SHORTEST
    )


def capitalised(text: str, among: frozenset[str]) -> frozenset[str]:
    """Return those of some stems that a text writes with a capital."""
    return (
        frozenset(_key(token) for token in content_words(text) if text[token.start].isupper())
        & among
    )


@dataclass(frozen=True, slots=True)
class _Capitals:
    """The stems of words in texts, by how they are written.

    Attributes:
        every: with a capital.
        inside: with a capital where no sentence begins.
        small: in small letters.
        words, capitals: how many words begin no sentence, and how many of them have one.
    """

    every: frozenset[str]
    inside: frozenset[str]
    small: frozenset[str]
    words: int
    capitals: int


def _capitals(texts: list[str]) -> _Capitals:
    every, inside, small = set[str](), set[str](), set[str]()
    words = capitals = 0
    for text in texts:
        tokens = content_words(text)
        for token, following in zip_longest(tokens, tokens[1:]):
            begins = _begins_sentence(text, token.start) and not _first_name(text, token, following)
            words += not begins
            if not text[token.start].isupper():
                small.add(_key(token))
                continue
            every.add(_key(token))
            if not begins:
                capitals += 1
                inside.add(_key(token))
    return _Capitals(frozenset(every), frozenset(inside), frozenset(small), words, capitals)


def _begins_sentence(text: str, start: int) -> bool:
    before = text[max(0, start - _BEFORE) : start]
    return bool(_SENTENCE_ENDS.search(before)) and not _TITLE_BEFORE.search(before)


def _first_name(text: str, token: Token, following: Token | None) -> bool:
    """Tell whether a word is the first of several with capitals: `Elizabeth Bennet`."""
    return (
        following is not None
        and text[following.start].isupper()
        and text[token.end : following.start] == " "
    )


def _key(token: Token) -> str:
    """Return a token's stem without accents, which a title page and a quotation may differ in."""
    return _folded_stem(token.stem)


@lru_cache(maxsize=16_384)
def _folded_stem(stem: str) -> str:
    return folded(stem) or stem


def _alike(key: str, title: frozenset[str]) -> bool:
    """Tell whether a stem is a title's, or begins or goes on as one: `prejud`, `prejudic`."""
    return key in title or (
        len(key) >= _ROOT
        and any(
            len(each) >= _ROOT and (each.startswith(key) or key.startswith(each)) for each in title
        )
    )


def _span(text: str, token: Token) -> tuple[int, int]:
    word = text[token.start : token.end]
    return token.start, token.start + len(_POSSESSIVE.sub("", word))


def _joined(text: str, spans: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """Join spans between which only a space stands."""
    joined = spans[:1]
    for before, (start, end) in pairwise(spans):
        if text[before[1] : start].isspace():
            joined[-1] = (joined[-1][0], end)
        else:
            joined.append((start, end))
    return joined
