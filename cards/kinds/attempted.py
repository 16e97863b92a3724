"""The words of an attempt, to look words of a commitment up in."""

from cards.kinds.alike import meanings, slip_of, slips
from cards.kinds.base import Span
from cards.kinds.contraries import contraries_of
from cards.kinds.phrases import turns_in
from cards.kinds.same_deeds import deeds_of
from cards.kinds.words import WORD, content_words, fold_word, stem_of

FAINT = frozenset("go went gone get got do did make made come came have take took".split())
"""Words that mean too many deeds to stand for another."""
_LIMB = 4
"""Letters of either limb of a compound at the least: a notebook is a book."""


class Attempted:
    """The words of an attempt, to look words of a commitment up in."""

    def __init__(self, text: str) -> None:
        self.words = [fold_word(found[0]) for found in WORD.finditer(text)]
        self._stems = frozenset(map(stem_of, self.words))
        self._said = frozenset(self.words)
        turns = (groups for _, groups in turns_in(self.words))
        self._means = frozenset[str]().union(*map(_senses, set(self.words)), *turns)
        self._slips: dict[str, str] = {}
        for word in set(self.words):
            for slip in slips(word):
                self._slips.setdefault(slip, word)

    def holds(self, word: str) -> bool:
        """Tell whether a word, one that means the same, or its misspelling is there."""
        folded = fold_word(word)
        if not _senses(folded).isdisjoint(self._means):
            return True
        if any(folded[cut:] in self._said for cut in range(_LIMB, len(folded) - _LIMB + 1)):
            return True
        near = (self._slips[slip] for slip in slips(folded) if slip in self._slips)
        return any(slip_of(given, folded) for given in near)

    def told_in_turns(self, text: str) -> frozenset[str]:
        """Return the words of a text's turns that the attempt says in another turn or word."""
        words = [fold_word(found[0]) for found in WORD.finditer(text)]
        return frozenset(
            words[place]
            for places, groups in turns_in(words)
            if not groups.isdisjoint(self._means)
            for place in places
        )

    def opposes(self, word: str) -> bool:
        """Tell whether a contrary of a word is there: the act came back, turned round."""
        return not contraries_of(stem_of(fold_word(word))).isdisjoint(self._stems)


def _senses(word: str) -> frozenset[str]:
    stem = stem_of(word)
    return frozenset({stem}) if stem in FAINT else meanings(word) | deeds_of(word)


def alike_in(text: str, other: str) -> tuple[Span, ...]:
    """Return the content words of a text, found in another or not."""
    words = Attempted(other)
    return tuple(
        Span(token.start, token.end, words.holds(text[token.start : token.end]))
        for token in content_words(text)
    )


def found_in(text: str, other: str) -> tuple[Span, ...]:
    """Return the stretches of a text that are in another, neighbours joined."""
    spans: list[Span] = []
    before = False
    for span in alike_in(text, other):
        if span.hit and before:
            spans[-1] = Span(spans[-1].start, span.end, hit=True)
        elif span.hit:
            spans.append(span)
        before = span.hit
    return tuple(spans)
