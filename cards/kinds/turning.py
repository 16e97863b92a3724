"""Whether an attempt says the opposite of an idea: by a negation, a contrary, a swap of roles."""

from collections import Counter
from collections.abc import Collection, Iterable, Iterator, Sequence

from cards.kinds.contraries import contraries_of
from cards.kinds.irregular import base_of
from cards.kinds.meeting import Word

_ENOUGH = 0.5
"""Share of a sentence's words, the same in both, from which a swap of roles can be told."""
_TWO = 2
"""Words of an idea from which a sentence tells of it."""
_ACTORS = 12
"""Doers and done-to of a sentence that are looked at."""
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
        self._holding: dict[str, list[int]] = {}
        for word in given:
            self._sentences.setdefault(word.unit, _Sentence()).add(word)
        for number, sentence in self._sentences.items():
            for stem in sentence.stems:
                self._holding.setdefault(stem, []).append(number)

    def within(self, where: Iterable[int]) -> list[_Sentence]:
        """Return some sentences of the attempt, those without a word left out."""
        return [self._sentences[number] for number in sorted(where) if number in self._sentences]

    def negated_somewhere(self, stem: str) -> bool:
        """Tell whether a word of the digest stands under a negation anywhere in it."""
        return stem in self._negated

    def meeting(self, place: Word) -> int:
        """Return how many words of the digest say the same as one of the attempt, about."""
        return max(self._meanings[meaning] for meaning in place.means)

    def closest(self, stems: Iterable[str]) -> dict[str, Word]:
        """Return the words, by stem, of the sentence of the attempt that has most of some.

        Of a word that stands there twice nothing can be told, and it is left out.
        """
        wanted = list(stems)
        shared = Counter(
            number for stem in wanted for number in self._holding.get(stem, ())[:_LOOKED_AT]
        )
        if not shared:
            return {}
        held = self._sentences[max(shared, key=lambda number: (shared[number], -number))].stems
        return {stem: held[stem][0] for stem in wanted if len(held.get(stem, ())) == 1}


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
        if found or sum(stem in sentence.stems for stem in own) >= _TWO
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
    return any(
        word.stem in sentence.governed and not said.negated_somewhere(word.stem)
        for word in words
        for sentence in here
    )


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
                place.bearing.negated == word.bearing.negated and len(places) > said.meeting(place)
                for place in places
            ):
                return True
    return False


def swapped(words: Sequence[Word], said: Said) -> tuple[int, ...]:
    """Return where the doers and the done-to of a sentence stand that have changed places.

    "The whale kills Ahab", "Ahab kills the whale": the same words, the names on the other
    side of the verb, and no "by" that would turn the verb too.

    Args:
        words: those of one sentence of the digest.
        said: with the attempt, of which the sentence that has most of the same words counts.
    """
    own = {word.stem for word in words}
    places = said.closest(sorted(own))
    if len(places) < _ENOUGH * len(own):
        return ()
    same = [word for word in words if word.stem in places]
    actors = [word for word in same if word.actor and places[word.stem].actor]
    verbs = [
        word
        for word in same
        if not word.actor and (_like_a_verb(word) or _like_a_verb(places[word.stem]))
    ]
    for first, second in _pairs(actors):
        before, after = places[second.stem], places[first.stem]
        if before.start < after.start and not after.after_by and not second.after_by:
            for verb in verbs:
                there = places[verb.stem].start
                if _passive(verb) != _passive(places[verb.stem]):
                    continue
                if first.start < verb.start < second.start and before.start < there < after.start:
                    return (first.start, second.start)
    return ()


def _like_a_verb(word: Word) -> bool:
    folded = word.text.casefold()
    return folded.endswith(("s", "ed", "ing", "en")) or base_of(folded) not in {folded, "person"}


def _passive(word: Word) -> bool:
    return word.text.casefold().endswith("en")


def _pairs(actors: Sequence[Word]) -> Iterator[tuple[Word, Word]]:
    few = actors[:_ACTORS]
    return ((one, two) for number, one in enumerate(few) for two in few[number + 1 :])
