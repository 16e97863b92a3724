"""An attempt in one's own words held against the digest's, idea by idea."""

from bisect import bisect_left, bisect_right
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass

from cards.kinds.aligning import turned_words
from cards.kinds.base import Span
from cards.kinds.ideas import ideas, sentence_ends, sentences
from cards.kinds.meeting import Word, meet, read
from cards.kinds.said_otherwise import said_otherwise, tells_of
from cards.kinds.turning import Said, is_turned
from cards.kinds.words import HIT

_IN_PART, _OR_SHARE = 2.0, 0.25
"""What must have come back of an idea for it to count in part: two words' weight, or a quarter."""
_MISSING_NAME = 0.5
"""What a name that did not come back counts in an idea: it is often plain who is meant."""


@dataclass(frozen=True, slots=True)
class Comparison:
    """One idea unit of the digest held against an attempt.

    Attributes:
        span: where the unit stands in the digest's words, and whether it was found.
        main: whether it belongs to the first sentence, which says the main idea.
        sentence: the number of the sentence it belongs to, from 0.
        part: share of its content words, weighed, that was found.
        alone: whether that is hardly more than a word, which another book may hold too.
        shared: stretches of the digest's words, one for each word that was found.
        given: stretches of the attempt that hold them.
        turned: whether the attempt seems to say the opposite of it.
        otherwise: how much of what is missing of it may be said in other words, from 0 to 1.
    """

    span: Span
    main: bool
    sentence: int
    part: float
    alone: bool
    shared: tuple[tuple[int, int], ...]
    given: tuple[tuple[int, int], ...]
    turned: bool
    otherwise: float


@dataclass(frozen=True, slots=True)
class Compared:
    """A text of the digest held against an attempt.

    Attributes:
        ideas: each of its idea units; a text without one is one unit.
        unsaid: the share of the text for which the attempt has neither its words nor any
            others. What is missing may have been said in words that nothing here knows to
            mean the same; but not by an attempt that has no more words than were found.
        sure: how sure it is, from 0 to 1, that the attempt tells of the text at all.
    """

    ideas: tuple[Comparison, ...]
    unsaid: float
    sure: float


def compare(source: str, attempt: str) -> Compared:
    """Hold each idea unit of `source` against an attempt.

    A unit is found when at least half of its content words, weighed, stand in two
    neighbouring sentences of the attempt, in the same or in other words that say the same.
    """
    units = ideas(source) or [(0, len(source))]
    ends = sentence_ends(source)
    wanted = read(source, units)
    given = read(attempt, sentences(attempt) or [(0, len(attempt))])
    meet(wanted, given)
    members: list[list[Word]] = [[] for _ in units]
    for word in wanted:
        members[word.unit].append(word)
    said = Said(wanted, given)
    turned = sorted(turned_words(source, attempt))
    return Compared(
        tuple(
            _held(unit, words, said, otherwise=other, ends=ends, turned_at=turned)
            for unit, words, other in zip(
                units, members, said_otherwise(wanted, given, len(units)), strict=True
            )
        ),
        _unsaid(wanted, given),
        tells_of(wanted, given),
    )


def _unsaid(wanted: Sequence[Word], given: Sequence[Word]) -> float:
    met = {number for word in wanted for number in word.met}
    other = sum(word.weight for number, word in enumerate(given) if number not in met)
    missing = sum(word.weight for word in wanted if not word.met and not word.name)
    return max(0.0, missing - other) / sum(word.weight for word in wanted)


def _held(
    unit: tuple[int, int],
    words: Sequence[Word],
    said: Said,
    *,
    otherwise: float,
    ends: Sequence[int],
    turned_at: Sequence[int],
) -> Comparison:
    best, weight, where = set[int](), 0.0, frozenset[int]()
    for sentences_of, window in _windows(words, said.given):
        weighed = sum(words[number].weight for number in window)
        if weighed > weight:
            best, weight, where = window, weighed, sentences_of
    whole = _whole(words, best)
    found = bool(best) and (weight >= HIT * whole or len(best) >= HIT * len(words))
    share = weight / whole if best else 0.0
    part = share if found or weight >= _IN_PART or share >= _OR_SHARE else 0.0
    met = [words[number] for number in sorted(best)]
    places = [n for word in met for n in word.met if said.given[n].unit in where]
    return Comparison(
        Span(*unit, found),
        unit[0] < ends[0],
        bisect_right(ends, unit[0]),
        part,
        weight < _IN_PART,
        tuple((word.start, word.end) for word in met),
        tuple((said.given[n].start, said.given[n].end) for n in places),
        turned=part > 0
        and (
            is_turned(words, said, where, found=found)
            or bisect_left(turned_at, unit[0]) < bisect_left(turned_at, unit[1])
        ),
        otherwise=otherwise,
    )


def _whole(words: Sequence[Word], met: Collection[int]) -> float:
    """Return what the words of an idea weigh, names that did not come back less."""
    return sum(
        word.weight * (_MISSING_NAME if word.name and number not in met else 1.0)
        for number, word in enumerate(words)
    )


def _windows(
    words: Sequence[Word], given: Sequence[Word]
) -> Iterator[tuple[frozenset[int], set[int]]]:
    """Yield what words stand in each two neighbouring sentences of the attempt."""
    inside: dict[int, set[int]] = {}
    for number, word in enumerate(words):
        for place in word.met:
            inside.setdefault(given[place].unit, set()).add(number)
    for sentence, here in inside.items():
        following = inside.get(sentence + 1)
        if following is None:
            yield frozenset({sentence}), here
        else:
            yield frozenset({sentence, sentence + 1}), here | following
