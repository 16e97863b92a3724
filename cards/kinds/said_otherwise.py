"""How much of each idea may have been said in words that nothing here knows to mean the same."""

from collections.abc import Iterator, Sequence
from itertools import accumulate

from cards.kinds.contraries import contraries_of
from cards.kinds.meeting import Word

_BY_TABLE = 0.25
"""What a word counts that only the tables know again: many an answer to another book has some."""
_BY_CHANCE, _SURELY = 0.1, 0.2
"""Shares of a text's words: known again in answers to other books, and in hardly one of those.

All three were chosen on three sets of graded answers of our own, with none, a half, four
fifths and all of the tables taken away, for the best agreement at which answers to other books
stay blank.
"""


def tells_of(wanted: Sequence[Word], given: Sequence[Word]) -> float:
    """Return how sure it is, from 0 to 1, that an attempt tells of a text at all.

    By the share of the text's words that were known again in it.
    """
    known = sum(word.weight * _known(word, given) for word in wanted if word.met)
    share = known / sum(word.weight for word in wanted)
    return min(1.0, max(0.0, (share - _BY_CHANCE) / (_SURELY - _BY_CHANCE)))


def _known(word: Word, given: Sequence[Word]) -> float:
    met = (given[number] for number in word.met)
    same = any(place.stem == word.stem or place.root == word.root for place in met)
    return 1.0 if same else _BY_TABLE


def said_otherwise(wanted: Sequence[Word], given: Sequence[Word], units: int) -> list[float]:
    """Return for each idea, from 0 to 1, how much of what is missing of it may be said otherwise.

    Readers tell a text in its order. Words of the attempt that met nothing count for an idea
    where they stand in its place: after what was known again of the idea before, and before
    what was of the idea after. Words that are denied count for nothing, unless the idea denies
    too; and nothing counts where only half of a contrast came back.

    Args:
        wanted: the words of the digest, after `meet`.
        given: those of the attempt.
        units: how many ideas the digest's words are of.
    """
    ours: list[list[Word]] = [[] for _ in range(units)]
    for word in wanted:
        ours[word.unit].append(word)
    if any(map(_half_of_a_contrast, ours)):
        return [0.0] * units
    met = {number for word in wanted for number in word.met}
    other = [0.0 if number in met else word.weight for number, word in enumerate(given)]
    plain = [
        0.0 if word.bearing.negated else weight for word, weight in zip(given, other, strict=True)
    ]
    sums, plain_sums = list(accumulate(other, initial=0.0)), list(accumulate(plain, initial=0.0))
    missing = [sum(word.weight for word in words if _missed(word)) for words in ours]
    everywhere = min(1.0, sums[-1] / max(sum(missing), 1.0))
    found = []
    for words, lacking, (start, end) in zip(ours, missing, _places(ours, len(given)), strict=True):
        own = sums if any(word.bearing.negated for word in words) else plain_sums
        here = (own[end] - own[start]) / lacking if lacking else 0.0
        found.append(min(everywhere, here))
    return found


def _half_of_a_contrast(words: Sequence[Word]) -> bool:
    """Tell whether of two contraries an idea sets against each other only one came back.

    "When able, seem unable": who has the one alone may well say the opposite.
    """
    met = {word.root: bool(word.met) for word in words}
    return any(
        met[one] != met[other] for one in met for other in contraries_of(one) if other in met
    )


def _missed(word: Word) -> bool:
    return not word.met and not word.name


def _places(ours: Sequence[Sequence[Word]], length: int) -> Iterator[tuple[int, int]]:
    """Yield where in the attempt each idea would stand: from which word, and up to which."""
    holders: dict[int, set[int]] = {}
    for unit, words in enumerate(ours):
        for word in words:
            for number in word.met:
                holders.setdefault(number, set()).add(unit)
    alone: list[list[int]] = [[] for _ in ours]
    for number, of in sorted(holders.items()):
        if len(of) == 1:
            alone[next(iter(of))].append(number)
    until = length
    ends = []
    for own in reversed(alone):
        ends.append(max(until, own[-1] + 1) if own else until)
        until = own[0] if own else until
    start = 0
    for own, end in zip(alone, reversed(ends), strict=True):
        first = min(start, own[0]) if own else start
        yield first, max(first, end)
        start = own[-1] + 1 if own else start
