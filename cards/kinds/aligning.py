"""Sentences of two texts that are nearly the same, laid beside each other word by word."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass
from itertools import pairwise

from rapidfuzz.distance import Levenshtein

from cards.kinds.alike import root_of
from cards.kinds.contraries import contraries_of
from cards.kinds.ideas import sentences
from cards.kinds.irregular import base_of
from cards.kinds.phrases import REFLEXIVE
from cards.kinds.polarity import Bearing, bearings, negates
from cards.kinds.words import WORD, content_words, fold_word, stem_of

_DETERMINERS = frozenset("the a an his her their its my our your this that only".split())
"""Words that only go with others; left out, names are laid beside names."""
_PREPOSITIONS = frozenset("about at by for from in into of on over to under with without".split())
_SHORTEST_GERUND = 4
"""Letters of a word in "-ing" which may be no gerund: "king", "ring"."""
_BEING = frozenset("is are was were be been being get gets got getting".split())
"""Words before which the participle of a passive stands."""
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
    names: frozenset[int]
    bearings: tuple[Bearing, ...]
    passives: frozenset[str]
    """Its verbs that are passive, with which doer and done-to change places."""
    doers: int
    """How often a doer is named with "by", which does the same."""
    own: frozenset[int]
    """Where the deeds are that are done to oneself."""

    @property
    def denying(self) -> frozenset[int]:
        """The numbers of its clauses that hold a negation."""
        return frozenset(
            bearing.clause
            for root, bearing in zip(self.roots, self.bearings, strict=True)
            if negates(root)
        )

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
        found = [word.span() for word in WORD.finditer(text, start, end)][:_LONGEST]
        borne = bearings(text, [(*span, span[0] in content) for span in found])
        words = [
            (span, _root(text[slice(*span)]), bearing)
            for span, bearing in zip(found, borne, strict=True)
            if text[slice(*span)].casefold() not in _DETERMINERS
        ]
        said = [text[slice(*span)].casefold() for span, _, _ in words]
        yield _Sentence(
            tuple(span[0] for span, _, _ in words),
            tuple(root for _, root, _ in words),
            frozenset(root for span, root, _ in words if span[0] in content),
            frozenset(
                number
                for number, (span, _, _) in enumerate(words)
                if text[span[0]].isupper() and not (number and said[number - 1] in _PREPOSITIONS)
            ),
            tuple(bearing for _, _, bearing in words),
            _passives(said),
            _doers(said),
            frozenset(place for place, following in enumerate(said[1:]) if following in REFLEXIVE),
        )


def _passives(said: Sequence[str]) -> frozenset[str]:
    """Return the roots of the passive verbs: "was lost", "gets beaten"."""
    return frozenset(
        _root(word) for before, word in pairwise(said) if before in _BEING and _is_participle(word)
    )


def _doers(said: Sequence[str]) -> int:
    """Return how often "by" names a doer, as it does not in "by pooling what they know"."""
    return sum(
        before == "by" and not (len(word) > _SHORTEST_GERUND and word.endswith("ing"))
        for before, word in pairwise(said)
    )


def _same_voice(ours: _Sentence, theirs: _Sentence) -> bool:
    """Tell whether no verb of both is passive in one alone, and no doer named in one alone."""
    changed = ours.passives ^ theirs.passives
    return ours.doers == theirs.doers and changed.isdisjoint({*ours.roots} & {*theirs.roots})


def _is_participle(word: str) -> bool:
    return word.endswith(("ed", "en")) or base_of(word) != word


def _root(word: str) -> str:
    return root_of(stem_of(base_of(fold_word(word))))


def _turned(ours: _Sentence, theirs: _Sentence, share: float) -> Iterator[int]:
    moved: list[tuple[str, int, int]] = []
    moved_there: dict[tuple[str, int], int] = {}
    kept: list[tuple[int, int]] = []
    for step in Levenshtein.opcodes(ours.roots, theirs.roots):
        here, there = range(step.src_start, step.src_end), range(step.dest_start, step.dest_end)
        if step.tag == "equal":
            kept += [
                (place, at)
                for place, at in zip(here, there, strict=True)
                if ours.roots[place] in ours.content
            ]
            continue
        if step.tag == "replace" and len(here) <= _BLOCK:
            yield from _contrary(ours, here, theirs, there)
        moved += [(ours.roots[place], len(kept), place) for place in here]
        moved_there.update({(theirs.roots[place], len(kept)): place for place in there})
    if share < _SAME_BUT_ROLES:
        return
    yield from _denied(ours, theirs, kept)
    if _same_voice(ours, theirs):
        content = [word for word in moved if word[0] in ours.content]
        yield from _exchanged(content, moved_there.keys())
        yield from _crossed(ours, theirs, content, moved_there, kept)


def _denied(ours: _Sentence, theirs: _Sentence, kept: list[tuple[int, int]]) -> Iterator[int]:
    """Yield the places of words that stayed, of which the attempt no longer denies something.

    One that it denies and the digest does not is no sign by itself: who says the same in
    other words denies something else of the same persons.
    """
    if theirs.negations < ours.negations:
        for place, at in kept:
            lost = ours.bearings[place].clause in ours.denying
            if lost and not theirs.bearings[at].negated:
                yield place


def _crossed(
    ours: _Sentence,
    theirs: _Sentence,
    moved: list[tuple[str, int, int]],
    there: Mapping[tuple[str, int], int],
    kept: list[tuple[int, int]],
) -> Iterator[int]:
    """Yield the places of names that have gone to the other side of a verb.

    "She mocks Miss Bates", "Miss Bates mocks Emma": no preposition before them, and a word
    between that stayed and is no name.
    """
    for one, before, place in moved[:_MOVED]:
        if place not in ours.names:
            continue
        for (other, after), at in there.items():
            if other == one and at in theirs.names:
                across = kept[min(before, after) : max(before, after)]
                if any(stayed not in ours.names for stayed, _ in across):
                    yield place


def _contrary(ours: _Sentence, here: range, theirs: _Sentence, there: range) -> Iterator[int]:
    """Yield the places for which a contrary stands, unless a negation came or went with it.

    A contrary that is a negation itself, as "never" of "always", is none where another
    came for it: "without a fight", "with no fight".
    """
    given = {(theirs.roots[place], place in theirs.own) for place in there}
    alike = any(negates(root) for root, _ in given) == any(
        negates(ours.roots[place]) for place in here
    )
    as_many = ours.negations == theirs.negations
    for place in here:
        own = place in ours.own
        contraries = {root for root in contraries_of(ours.roots[place]) if (root, own) in given}
        itself = negates(ours.roots[place]) or any(map(negates, contraries))
        if contraries and (not as_many if itself else alike):
            yield place


def _exchanged(
    moved: Sequence[tuple[str, int, int]], there: AbstractSet[tuple[str, int]]
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
