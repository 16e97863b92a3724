"""The words of a text that carry an idea, and where another text says the same."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from cards.kinds.alike import meanings, root_of, slip_of, slips
from cards.kinds.grouping import groups_of
from cards.kinds.irregular import base_of
from cards.kinds.phrases import REFLEXIVE, turns_in
from cards.kinds.polarity import Bearing, bearings, negates
from cards.kinds.words import WORD, content_words, fold_word, stem_of

_THIN = frozenset(
    """man men woman thing make made makes come comes came go goes went get gets got people say
    says said take takes took give gives gave find finds found see sees saw know knows put puts
    bring brings turn turns turned become becomes became time times way ways day days year years
    little great good old new long man's life world let lets first last while whole like mere
    merely even still yet too also ever end keep keeps show shows shown call called use used
    want wants set back away two three one""".split()
)
_WEIGHT, _THIN_WEIGHT, _NEGATION_WEIGHT = 1.0, 0.5, 0.25
"""What a word weighs in its idea: one that could stand in any tells less, and a negation,
which is looked at apart, hardly anything."""
_SEEN_AT_MOST = 40
"""Places of a word in an attempt that are looked at; further ones add nothing to it."""


@dataclass(slots=True)
class Word:
    """A word that carries an idea.

    Attributes:
        start, end: where it stands.
        text, stem, root: what it is; its root is what it has in common with its family.
        weight: how much it tells.
        unit: the number of the idea or the sentence it stands in.
        bearing: how negations bear on it.
        name: whether it is taken for a name: with a capital inside a sentence, or unknown.
        own: whether it is a deed done to oneself.
        means: what it goes by.
        met: the numbers of the words of another text that say the same.
    """

    start: int
    end: int
    text: str
    stem: str
    root: str
    weight: float
    unit: int
    bearing: Bearing
    name: bool
    own: bool = False
    means: frozenset[str] = frozenset()
    met: list[int] = field(default_factory=list)


def read(text: str, units: Sequence[tuple[int, int]]) -> list[Word]:
    """Return the words of a text that carry an idea; all its words where none does."""
    content = {token.start for token in content_words(text)}
    every = [
        (found.start(), found.end(), found.start() in content) for found in WORD.finditer(text)
    ]
    if not content:
        every = [(start, end, True) for start, end, _ in every] or [(0, len(text), True)]
    starts = [start for start, _ in units]
    words, unit, opened = [], 0, -1
    after = [*(fold_word(text[start:end]) for start, end, _ in every[1:]), ""]
    for (start, end, carries), bearing, following in zip(
        every, bearings(text, every), after, strict=True
    ):
        while unit + 1 < len(starts) and start >= starts[unit + 1]:
            unit += 1
        if carries:
            said = text[start:end]
            stem = stem_of(base_of(fold_word(said)))
            name = said[:1].isupper() and (unit == opened or not groups_of(stem))
            word = Word(start, end, said, stem, root_of(stem), _weight(said), unit, bearing, name)
            word.own = following in REFLEXIVE
            word.means = meanings(said)
            words.append(word)
        opened = unit
    _add_turns(text, every, words)
    return words


def _add_turns(text: str, every: Sequence[tuple[int, int, bool]], words: Sequence[Word]) -> None:
    """Give the first word of each turn that carries an idea what the whole turn means."""
    at = {word.start: word for word in words}
    for places, groups in turns_in([text[start:end] for start, end, _ in every]):
        head = next((at[every[n][0]] for n in places if every[n][0] in at), None)
        if head is not None:
            head.means |= groups


def _weight(word: str) -> float:
    if negates(word):
        return _NEGATION_WEIGHT
    return _THIN_WEIGHT if fold_word(word) in _THIN else _WEIGHT


def meet(wanted: Sequence[Word], given: Sequence[Word]) -> None:
    """Note for each wanted word where in the attempt it stands, in whatever words."""
    places: dict[str, list[int]] = {}
    for number, word in enumerate(given):
        for meaning in word.means:
            places.setdefault(meaning, []).append(number)
    for word in wanted:
        met = {n for meaning in word.means for n in places.get(meaning, ())[:_SEEN_AT_MOST]}
        word.met.extend(sorted(met))
    _meet_by_slips([word for word in wanted if not word.met], given)


def _meet_by_slips(wanted: Sequence[Word], given: Sequence[Word]) -> None:
    left: dict[str, list[int]] = {}
    for number, word in enumerate(given):
        for slip in slips(fold_word(word.text)):
            left.setdefault(slip, []).append(number)
    for word in wanted:
        own = fold_word(word.text)
        near = {n for slip in slips(own) for n in left.get(slip, ())[:_SEEN_AT_MOST]}
        word.met.extend(
            sorted(
                n
                for n in near
                if slip_of(fold_word(given[n].text), own, name=word.text[:1].isupper())
            )
        )
