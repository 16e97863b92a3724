"""Whether an attempt says the opposite of an idea: by a negation, a contrary, a swap of roles."""

from collections import Counter
from collections.abc import Iterator, Sequence

from cards.kinds.contraries import contraries_of
from cards.kinds.irregular import base_of
from cards.kinds.meeting import Word


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
        self._places: dict[int, list[Word]] = {}
        for word in given:
            self._places.setdefault(word.unit, []).append(word)

    def within(self, where: frozenset[int]) -> list[Word]:
        """Return the words of some sentences of the attempt."""
        return [word for sentence in sorted(where) for word in self._places.get(sentence, ())]

    def meeting(self, place: Word) -> int:
        """Return how many words of the digest say the same as one of the attempt, about."""
        return max(self._meanings[meaning] for meaning in place.means)

    def negated_somewhere(self, stem: str) -> bool:
        """Tell whether a word of the digest stands under a negation anywhere in it."""
        return stem in self._negated


def is_turned(words: Sequence[Word], said: Said, where: frozenset[int]) -> bool:
    """Tell whether the sentences of an attempt that hold an idea seem to say the opposite.

    Only the same words are held against each other, since who says the opposite changes
    little else, and who says the same in other words negates other words too.
    """
    here = said.within(where)
    return (
        _negation_lost(words, here)
        or _negation_put_in(words, said, here)
        or _contrary(words, said, here)
    )


def _negation_lost(words: Sequence[Word], here: Sequence[Word]) -> bool:
    """Tell whether what is denied in the digest stands without a denial in the attempt.

    In a sentence that holds another word of the idea too, where it has any: elsewhere the
    word may belong to another idea.
    """
    own = {word.stem for word in words}
    beside = Counter(
        place.unit
        for place in {(place.unit, place.stem): place for place in here}.values()
        if place.stem in own
    )
    enough = min(2, max(beside.values(), default=0))
    for word in words:
        if word.bearing.governed:
            same = [p for p in here if p.stem == word.stem and beside[p.unit] >= enough]
            if same and not any(place.bearing.negated for place in same):
                return True
    return False


def _negation_put_in(words: Sequence[Word], said: Said, here: Sequence[Word]) -> bool:
    own = {word.stem for word in words}
    return any(
        place.bearing.governed and place.stem in own and not said.negated_somewhere(place.stem)
        for place in here
    )


def _contrary(words: Sequence[Word], said: Said, here: Sequence[Word]) -> bool:
    given = Counter(place.stem for place in here)
    starts = {place.start for place in here}
    for word in words:
        if any(said.given[number].start in starts for number in word.met):
            continue
        for contrary in contraries_of(word.stem):
            if given[contrary] and any(
                place.bearing.negated == word.bearing.negated
                and given[contrary] > said.meeting(place)
                for place in here
                if place.stem == contrary
            ):
                return True
    return False


_ENOUGH = 0.6
"""Share of a sentence's words, the same in both, from which a swap of roles can be told."""
_ACTORS = 12
"""Doers and done-to of a sentence that are looked at."""


def swapped(words: Sequence[Word], here: Sequence[Word]) -> tuple[int, ...]:
    """Return where the doers and the done-to of a sentence stand that have changed places.

    "The whale kills Ahab", "Ahab kills the whale": the same words, the names on the other
    side of the verb, and no "by" that would turn the verb too.

    Args:
        words: those of one sentence of the digest.
        here: those of the attempt.
    """
    places = {place.stem: place for place in reversed(here)}
    same = [word for word in words if word.stem in places]
    if len(same) < _ENOUGH * len(words):
        return ()
    actors = [word for word in same if word.actor and places[word.stem].actor]
    for first, second in _pairs(actors):
        if places[first.stem].start < places[second.stem].start:
            continue
        if places[first.stem].after_by or second.after_by:
            continue
        if any(
            first.start < verb.start < second.start
            and places[second.stem].start < places[verb.stem].start < places[first.stem].start
            for verb in same
            if not verb.actor and (_like_a_verb(verb) or _like_a_verb(places[verb.stem]))
        ):
            return (first.start, second.start)
    return ()


def _like_a_verb(word: Word) -> bool:
    folded = word.text.casefold()
    return folded.endswith(("s", "ed", "ing", "en")) or base_of(folded) not in {folded, "person"}


def _pairs(actors: Sequence[Word]) -> Iterator[tuple[Word, Word]]:
    few = actors[:_ACTORS]
    return ((one, two) for number, one in enumerate(few) for two in few[number + 1 :])
