"""The tables of words and turns that say nearly the same, to look one up in."""

from collections.abc import Iterator, Sequence
from functools import lru_cache

from cards.kinds import colloquial, near_words, synonyms
from cards.kinds.irregular import base_of
from cards.kinds.words import stem_of

_JOINED = "-"


def groups_of(stem: str) -> frozenset[str]:
    """Return the names of the groups a stem stands in."""
    return _words().get(stem, frozenset())


@lru_cache(maxsize=1)
def groups_of_turns() -> dict[str, Sequence[tuple[tuple[str, ...], frozenset[str]]]]:
    """Return the turns of several words by their first, as stems: the others and their groups.

    The longest come first.
    """
    whole: dict[tuple[str, ...], set[str]] = {}
    for name, entry in _entries():
        if _JOINED in entry:
            stems = tuple(stem_of(base_of(part)) for part in entry.split(_JOINED))
            whole.setdefault(stems, set()).add(name)
    found: dict[str, list[tuple[tuple[str, ...], frozenset[str]]]] = {}
    for (first, *rest), groups in sorted(whole.items(), key=lambda turn: -len(turn[0])):
        found.setdefault(first, []).append((tuple(rest), frozenset(groups)))
    return dict(found)


@lru_cache(maxsize=1)
def _words() -> dict[str, frozenset[str]]:
    found: dict[str, set[str]] = {}
    for name, entry in _entries():
        if _JOINED not in entry:
            found.setdefault(stem_of(entry), set()).add(name)
    return {stem: frozenset(groups) for stem, groups in found.items()}


def _entries() -> Iterator[tuple[str, str]]:
    """Yield each word or turn with the name of a group it stands in."""
    groups = (*synonyms.GROUPS, *near_words.GROUPS, *colloquial.GROUPS)
    for number, group in enumerate(groups):
        for entry in group.split():
            yield f"={number}", entry
