"""Sentences of two texts that are nearly the same, laid beside each other word by word."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from rapidfuzz.distance import Levenshtein

from cards.kinds.alike import root_of
from cards.kinds.contraries import contraries_of
from cards.kinds.ideas import sentences
from cards.kinds.irregular import base_of
from cards.kinds.polarity import negates
from cards.kinds.words import WORD, content_words, fold_word, stem_of

_DETERMINERS = frozenset("the a an his her their its my our your this that only".split())
"""Words that only go with others; left out, names are laid beside names."""
_NEARLY_THE_SAME = 0.5
"""Share of a sentence's content words that must stand in the other for the two to be laid so."""
_SAME_BUT_ROLES = 0.55
"""The same, for a change of places: with fewer, a sentence is built another way."""
_MOVED = 30
"""Words that did not stay which are held against each other, at the most."""
_LOOKED_AT = 40
"""Sentences of an attempt that hold a word which are looked at."""
_BLOCK = 6
"""Words in a row put in the place of others that are held against each other, at the most."""
_LONGEST = 400
"""Words of a sentence that are laid beside another's; no sentence written is longer."""


@dataclass(frozen=True, slots=True)
class _Sentence:
    starts: tuple[int, ...]
    roots: tuple[str, ...]
    content: frozenset[str]

    @property
    def passives(self) -> int:
        """How often "by" stands in it, with which doer and done-to change places."""
        return self.roots.count("by")

    @property
    def negations(self) -> int:
        """How many of its words are negations."""
        return sum(map(negates, self.roots))


def turned_words(source: str, attempt: str) -> frozenset[int]:
    """Return where words of a text start that an attempt, nearly the same, turned round.

    A word for which its contrary stands, or one that has changed places with another across
    a word that stayed: "the whale kills Ahab", "Ahab kills the whale".
    """
    given = list(_sentences(attempt))
    holding: dict[str, list[int]] = {}
    for number, sentence in enumerate(given):
        for root in sentence.content:
            holding.setdefault(root, []).append(number)
    found = set[int]()
    for sentence in _sentences(source):
        shared = Counter(
            number for root in sentence.content for number in holding.get(root, ())[:_LOOKED_AT]
        )
        if not shared:
            continue
        closest = max(shared, key=lambda number: (shared[number], -number))
        share = shared[closest] / len(sentence.content)
        if share >= _NEARLY_THE_SAME:
            found.update(
                sentence.starts[place] for place in _turned(sentence, given[closest], share)
            )
    return frozenset(found)


def _sentences(text: str) -> Iterator[_Sentence]:
    content = {token.start for token in content_words(text)}
    for start, end in sentences(text):
        words = [
            (found.start(), _root(found[0]))
            for found in WORD.finditer(text, start, end)
            if found[0].casefold() not in _DETERMINERS
        ][:_LONGEST]
        yield _Sentence(
            tuple(place for place, _ in words),
            tuple(root for _, root in words),
            frozenset(root for place, root in words if place in content),
        )


def _root(word: str) -> str:
    return root_of(stem_of(base_of(fold_word(word))))


def _turned(ours: _Sentence, theirs: _Sentence, share: float) -> Iterator[int]:
    moved: list[tuple[str, int, int]] = []
    moved_there: list[tuple[str, int]] = []
    stayed = 0
    for step in Levenshtein.opcodes(ours.roots, theirs.roots):
        here, there = range(step.src_start, step.src_end), range(step.dest_start, step.dest_end)
        if step.tag == "equal":
            stayed += sum(ours.roots[place] in ours.content for place in here)
            continue
        if step.tag == "replace" and len(here) <= _BLOCK:
            yield from _contrary(ours, here, theirs, there)
        moved += [(ours.roots[place], stayed, place) for place in here]
        moved_there += [(theirs.roots[place], stayed) for place in there]
    if share >= _SAME_BUT_ROLES and ours.passives == theirs.passives:
        yield from _exchanged(
            [word for word in moved if word[0] in ours.content],
            frozenset(moved_there),
        )


def _contrary(ours: _Sentence, here: range, theirs: _Sentence, there: range) -> Iterator[int]:
    """Yield the places for which a contrary stands, unless a negation came or went with it.

    A contrary that is a negation itself, as "never" of "always", is none where another
    came for it: "without a fight", "with no fight".
    """
    given = {theirs.roots[place] for place in there}
    alike = any(map(negates, given)) == any(negates(ours.roots[place]) for place in here)
    as_many = ours.negations == theirs.negations
    for place in here:
        contraries = contraries_of(ours.roots[place]) & given
        itself = negates(ours.roots[place]) or any(map(negates, contraries))
        if contraries and (not as_many if itself else alike):
            yield place


def _exchanged(
    moved: Sequence[tuple[str, int, int]], there: frozenset[tuple[str, int]]
) -> Iterator[int]:
    """Yield the places of words that have changed places with each other across what stayed.

    Args:
        moved: words of the one sentence that did not stay, with how many of those that
            stayed stand before them, and where they are.
        there: those of the other.
    """
    few = moved[:_MOVED]
    for number, (one, before, place) in enumerate(few):
        for other, after, _ in few[number + 1 :]:
            if after > before and (other, before) in there and (one, after) in there:
                yield place
