"""Which words of a text stand under a negation, as far as that can be told without a parser."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from cards.kinds.words import fold_word, stem_of

_WIDE = frozenset(
    """no not never nor neither nobody nothing none nowhere cannot hardly scarcely barely rarely
    seldom dont doesnt didnt isnt arent wasnt werent hasnt havent hadnt cant couldnt shouldnt
    wouldnt wont shant mustnt neednt""".split()
)
"""Negations that hold for their whole clause, what stands before them too."""
_FORWARD = frozenset(map(stem_of, "without refuse fail unable unwilling cease instead".split()))
"""Stems of words that turn round what follows them in their clause, and nothing before."""
_SOFTLY = frozenset(
    map(
        stem_of,
        """unless lest avoid deny lack prevent forbid decline stop reject neglect except
        impossible abstain refrain keep hold than too few little less doubt hesitate dare against
        miss lose lost lack absent rid spare escape quit end false pretend mistake wrong hard
        difficult loath reluctant dislike hate scorn despise barely beyond before want shun
        forget dissuade renounce ban hinder oppose dismiss""".split(),
    )
)
"""Stems of words that may: what follows them is not taken to be said plainly.

Words of lacking, hindering and doubting, and those in whose scope English has "any" and "ever":
"too", "few", "before" (Ladusaw 1979, Polarity Sensitivity as Inherent Scope Relations; recalled,
not seen again)."""
_ONLY = frozenset("nothing nobody none no".split())
_BUT = frozenset("but except than save".split())
"""After "nothing" or "nobody" these make an "only", or a "most": "nobody is poorer than"."""
_NEAR = 8
"""Words within which they do."""
_GIVEN_UP = frozenset("give gives giving gave".split())
"""Words that with "up" after them leave undone what follows; what "was given up" stood before."""
_RATHER = "rather"
_CLAUSE = re.compile(r"[,;:.!?()–—\n=/]|--|->|\s-\s")
_JOINS = frozenset(
    """and but or because since while when whenever if as who whom which that where though
    although until till than for""".split()
)
"""Words a clause ends before."""
_PASSED_OVER = frozenset(
    """make made come get got give take put bring long longer go let say see turn become much any
    quite really""".split()
)
"""Words too light for a negation to be of them: the next one is taken."""


@dataclass(frozen=True, slots=True)
class Bearing:
    """How one word stands to the negations about it.

    Attributes:
        governed: whether it is the word that a negation before it is of.
        negated: whether a negation may bear on it at all: somewhere in its clause, or
            before it there.
        clause: the number of its clause in the text.
    """

    governed: bool
    negated: bool
    clause: int


def negates(word: str) -> bool:
    """Tell whether a word is a negation, or turns round what follows it."""
    folded = fold_word(word)
    return _wide(folded) or stem_of(folded) in _FORWARD


def _wide(word: str) -> bool:
    return word in _WIDE or word.endswith("n't")


def bearings(text: str, words: Sequence[tuple[int, int, bool]]) -> list[Bearing]:
    """Return how each word of a text stands to its negations.

    Args:
        text: the text.
        words: start and end of each of its words in order, and whether it carries an idea.
    """
    said = [fold_word(text[start:end]) for start, end, _ in words]
    found: list[Bearing] = []
    for clause, (first, last) in enumerate(_clauses(text, words, said)):
        found.extend(_in_clause(said, words, range(first, last), clause))
    return found


def _clauses(
    text: str, words: Sequence[tuple[int, int, bool]], said: Sequence[str]
) -> list[tuple[int, int]]:
    starts = [
        number
        for number, (start, _, _) in enumerate(words)
        if number == 0
        or (said[number] in _JOINS and said[number - 1] != _RATHER)
        or _CLAUSE.search(text, words[number - 1][1], start)
    ]
    return list(pairwise((*starts, len(words))))


def _in_clause(
    said: Sequence[str], words: Sequence[tuple[int, int, bool]], places: range, clause: int
) -> list[Bearing]:
    wide = any(_wide(said[place]) for place in places)
    found: list[Bearing] = []
    waiting, under = False, False
    for place in places:
        word, carries = said[place], words[place][2]
        negation = _negates_at(said, place)
        governed = waiting and carries and not negation and word not in _PASSED_OVER
        found.append(Bearing(governed, wide or under, clause))
        waiting = negation or (waiting and not governed)
        under = under or negation or stem_of(word) in _SOFTLY
    return found


def _negates_at(said: Sequence[str], place: int) -> bool:
    word = said[place]
    if word == _RATHER:
        return said[place + 1 : place + 2] == ["than"]
    if word == "up":
        return place > 0 and said[place - 1] in _GIVEN_UP
    return (_wide(word) and not _is_only(said, place)) or stem_of(word) in _FORWARD


def _is_only(said: Sequence[str], place: int) -> bool:
    following = said[place + 1 : place + 1 + _NEAR]
    return said[place] in _ONLY and not _BUT.isdisjoint(following)
