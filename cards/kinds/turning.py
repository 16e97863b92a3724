"""Whether an attempt says the opposite of an idea: by a negation or a contrary."""

from collections import Counter
from collections.abc import Collection, Iterable, Sequence

from cards.kinds.contraries import contraries_of
from cards.kinds.meeting import Word
from cards.kinds.words import HIT

_TWO = 2
"""Words of an idea from which a sentence tells of it."""
_REUSED, _REUSING = 0.4, 0.5
"""Share of an idea's words, or of a sentence's, that are the same from which the two are held
against each other: who says the opposite changes little else."""
_LOOKED_AT = 40
"""Places of a word in a sentence that are looked at, and sentences that hold it."""


class _Sentence:
    """The words of one sentence of an attempt, by stem and by root."""

    def __init__(self) -> None:
        self.stems: dict[str, list[Word]] = {}
        self.roots: dict[str, list[Word]] = {}
        self.governed: set[str] = set()

    def add(self, word: Word) -> None:
        """Take in the next word."""
        self.stems.setdefault(word.stem, []).append(word)
        self.roots.setdefault(word.root, []).append(word)
        if word.bearing.governed:
            self.governed.add(word.stem)


class Said:
    """Both texts, and what of each meets the other.

    Attributes:
        wanted, given: the words of the digest and of the attempt.
    """

    def __init__(self, wanted: Sequence[Word], given: Sequence[Word]) -> None:
        self.wanted = wanted
        self.given = given
        self._meanings = Counter(meaning for word in wanted for meaning in word.means)
        self._negated = {word.stem for word in wanted if word.bearing.negated}
        self._sentences: dict[int, _Sentence] = {}
        for word in given:
            self._sentences.setdefault(word.unit, _Sentence()).add(word)

    def within(self, where: Iterable[int]) -> list[_Sentence]:
        """Return some sentences of the attempt, those without a word left out."""
        return [self._sentences[number] for number in sorted(where) if number in self._sentences]

    def negated_somewhere(self, stem: str) -> bool:
        """Tell whether a word of the digest stands under a negation anywhere in it."""
        return stem in self._negated

    def meeting(self, place: Word) -> int:
        """Return how many words of the digest say the same as one of the attempt, about."""
        return max(self._meanings[meaning] for meaning in place.means)


def is_turned(words: Sequence[Word], said: Said, where: Collection[int], *, found: bool) -> bool:
    """Tell whether the sentences of an attempt that hold an idea seem to say the opposite.

    Of an idea that was not found, a sentence that holds two of its words is looked at.

    Only the same words are held against each other, since who says the opposite changes
    little else, and who says the same in other words negates other words too.
    """
    own = {word.stem for word in words}
    here = [
        sentence
        for sentence in said.within(where)
        if (same := sum(stem in sentence.stems for stem in own)) >= (1 if found else _TWO)
        and (same >= _REUSED * len(own) or same >= _REUSING * len(sentence.stems))
    ]
    return (
        _negation_lost(words, here)
        or _negation_put_in(words, said, here)
        or _contrary(words, said, here, where)
    )


def _negation_lost(words: Sequence[Word], here: Sequence[_Sentence]) -> bool:
    """Tell whether what is denied in the digest stands without a denial in the attempt.

    In a sentence that holds another word of the idea too, where any does: elsewhere the
    word may belong to another idea.
    """
    own = {word.stem for word in words}
    beside = [sum(stem in sentence.stems for stem in own) for sentence in here]
    enough = min(_TWO, max(beside, default=0))
    close = [sentence for sentence, held in zip(here, beside, strict=True) if held >= enough]
    for stem in {word.stem for word in words if word.bearing.governed}:
        same = [place for sentence in close for place in sentence.stems.get(stem, ())[:_LOOKED_AT]]
        if same and not any(place.bearing.negated for place in same):
            return True
    return False


def _negation_put_in(words: Sequence[Word], said: Said, here: Sequence[_Sentence]) -> bool:
    """Tell whether the attempt denies what the digest nowhere denies."""
    own = {word.stem for word in words}
    for sentence in here:
        denied = sentence.governed & own
        if not denied:
            continue
        same = sum(stem in sentence.stems for stem in own)
        for stem in denied:
            if said.negated_somewhere(stem):
                continue
            clauses = {place.bearing.clause for place in sentence.stems[stem]}
            beside = any(
                said.given[number].bearing.clause in clauses
                for word in words
                if word.stem != stem
                for number in word.met[:_LOOKED_AT]
            )
            if beside or same >= HIT * len(own):
                return True
    return False


def _contrary(
    words: Sequence[Word], said: Said, here: Sequence[_Sentence], where: Collection[int]
) -> bool:
    """Tell whether the attempt has the contrary of a word in its place, denied as it is."""
    for word in words:
        if any(said.given[number].unit in where for number in word.met):
            continue
        for contrary in contraries_of(word.root):
            places = [place for sentence in here for place in sentence.roots.get(contrary, ())][
                :_LOOKED_AT
            ]
            if any(
                place.bearing.negated == word.bearing.negated
                and place.own == word.own
                and len(places) > said.meeting(place)
                for place in places
            ):
                return True
    return False
