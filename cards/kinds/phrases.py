"""Turns of several words that say what one word says: "puts up with", "gave the game away"."""

from collections.abc import Iterator, Sequence
from functools import lru_cache

from cards.kinds.grouping import groups_of_turns
from cards.kinds.irregular import base_of
from cards.kinds.words import fold_word, stem_of

_PASSED_OVER = frozenset(
    "a an the his her their my your our its someone somebody's someone's this that all".split()
)
"""Words that may stand inside a turn, and are not written in the table."""
_PARTICLES = frozenset(
    "up down off out in on away over back apart through around about aside together".split()
)
"""Words before which the one it is done to may stand: "turns him down"."""
_BETWEEN = 3
"""Words that may stand there, at the most."""
REFLEXIVE = frozenset(
    "himself herself themselves myself yourself itself oneself ourselves themself".split()
)
"""Words before which a deed is done to oneself: to teach oneself is to learn."""


def turns_in(words: Sequence[str]) -> Iterator[tuple[range, frozenset[str]]]:
    """Yield where the turns of the tables stand among the words of a text, and their groups.

    Of turns that begin at the same word the longest is taken.

    Args:
        words: the words of a text, in order, as they are written.
    """
    plain = [_plain(word) for word in words]
    table = groups_of_turns()
    for start, first in enumerate(plain):
        for rest, groups in table.get(first, ()):
            end = _end(plain, start + 1, rest)
            if end is not None:
                yield range(start, end), groups
                break


def _end(words: Sequence[str], start: int, rest: Sequence[str]) -> int | None:
    """Return the place after a turn whose first word stands before `start`."""
    place = start
    for number, part in enumerate(rest):
        between = _BETWEEN if number == 0 and part in _PARTICLES else 0
        passed = 0
        while place < len(words) and words[place] != part:
            if words[place] not in _PASSED_OVER:
                passed += 1
            if passed > between:
                return None
            place += 1
        if place == len(words):
            return None
        place += 1
    return place


@lru_cache(maxsize=16_384)
def _plain(word: str) -> str:
    folded = fold_word(word)
    return "self" if folded in REFLEXIVE else stem_of(base_of(folded))
