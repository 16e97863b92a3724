"""Words that mean the same: by stem, by family, by the table of near-synonyms, by a slip."""

from collections.abc import Iterable
from functools import lru_cache

from rapidfuzz.distance import DamerauLevenshtein

from cards.digest import folded
from cards.kinds.grouping import groups_of
from cards.kinds.irregular import base_of
from cards.kinds.words import fold_word, numbers, stem_of

_ENDINGS = tuple(
    sorted(
        """ance ence ant ent ous eous ious er or ist ism ment ness ful ive ion ation al ial ity y
        ed ing en ern ship hood est ier iest able ible ly ward dom ic ish ery ry ure i e""".split(),
        key=len,
        reverse=True,
    )
)
_FAMILY = 4
"""Letters of a word's beginning that a family has in common at the least."""
_BRITISH = (
    ("our", "or"),
    ("isation", "ization"),
    ("ise", "ize"),
    ("ising", "izing"),
    ("ogue", "og"),
    ("centre", "center"),
    ("theatre", "theater"),
    ("ence", "ense"),
    ("lled", "led"),
    ("lling", "ling"),
    ("grey", "gray"),
    ("plough", "plow"),
)
"""Spellings, British and American."""
_LONG, _LONG_NAME, _VERY_LONG = 7, 5, 8
"""Letters from which one slip is let pass in a word, one in a name, and two in either."""
_LONGEST = 24
"""Letters of a word beyond which no slips are looked for: longer than any but made-up ones."""


@lru_cache(maxsize=16_384)
def meanings(word: str) -> frozenset[str]:
    """Return what a word goes by: two words that share one of these say nearly the same."""
    plain = folded(fold_word(word)) or fold_word(word)
    said = set[str]()
    for form in _forms(plain):
        stem = stem_of(form)
        family = root_of(stem)
        said.update((stem, f"~{family}", *groups_of(stem), *groups_of(family)))
    said.update(f"#{number}" for number in numbers(plain))
    return frozenset(said)


def _forms(word: str) -> set[str]:
    """Return a word as it is, its base where it is irregular, and both spelt the American way."""
    forms = {word, base_of(word)}
    for british, american in _BRITISH:
        forms.update(
            form.replace(british, american) for form in tuple(forms) if len(form) > _FAMILY
        )
    return forms


@lru_cache(maxsize=8192)
def root_of(stem: str) -> str:
    """Return what a stem has in common with others of its family: `widow` of `widower`."""
    for ending in _ENDINGS:
        root = stem.removesuffix(ending)
        if root != stem and len(root) >= _FAMILY:
            return root
    return stem


def slips(word: str) -> Iterable[str]:
    """Return a word and all that is left of it without one letter: what a slip leaves alike."""
    if not _LONG_NAME <= len(word) <= _LONGEST:
        return ()
    return {word, *(word[:place] + word[place + 1 :] for place in range(len(word)))}


def slip_of(given: str, wanted: str, *, name: bool = False) -> bool:
    """Tell whether one long word is another misspelt, as far as `slips` saw them alike.

    A short word one letter off is another word more often than a slip: `ropes`, `roles`.
    """
    if len(wanted) < (_LONG_NAME if name else _LONG):
        return False
    allowed = 2 if min(len(given), len(wanted)) >= _VERY_LONG else 1
    return DamerauLevenshtein.distance(given, wanted, score_cutoff=allowed) <= allowed
