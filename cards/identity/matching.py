"""Which wording is the same part as a former one."""

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from uuid import UUID

from rapidfuzz import fuzz
from rapidfuzz.distance import OSA

from cards.digest import MAX_PARTS
from cards.parts import Part, PartKind

SAME_WORDS = 60.0
"""Similarity, 0 to 100, from which two wordings of a part are taken for the same part.

Our own threshold: a corrected typing error scores above 90 and a reworded sentence
mostly above 60, while two different points of one book stay under 50
(`tests/cards/identity/test_keeping.py` measures both on the demo library).
"""
SAME_BUT_TURNED = 85.0
"""Similarity of two claims without their negations from which one turns the other round.

Our own threshold, between a reworded sentence and a corrected one."""

A_SLIP = 1
"""Letters, white space apart, that differ by a slip of the pen: no negation is one letter long."""

_THE_SAME = 101.0
_ONCE_THE_SAME = 100.5
_NEGATIONS = frozenset(
    "not no never none nobody nothing neither nor cannot without nicht kein keine keinen keiner "
    "nie niemand nichts ohne ne pas jamais sans nunca jamás sin non mai senza não jamais sem niet "
    "geen nooit zonder".split()
)
_WORD = re.compile(r"[^\W\d_]+(?:['’][^\W\d_]+)?")

_CLAIMS = (PartKind.POINT, PartKind.COMMITMENT)


def matches(
    fresh: Sequence[Part], former: Sequence[Part], wordings: Mapping[UUID, Iterable[str]]
) -> dict[int, int]:
    """Pair new parts of one kind with former ones: indices of `fresh` to indices of `former`.

    The surest pairs come first: the same words, words a part once had, then the likest.
    Held parts win ties over retired ones. A book has one theme, so its theme is the
    same part however it is reworded.

    Args:
        fresh: the parts as they are to be, their ids of no account.
        former: the parts held or once held.
        wordings: what former parts said in earlier versions.
    """
    pairs = sorted(
        (-likeness, former[j].retired, abs(fresh[i].number - former[j].number), i, j)
        for i, j, likeness in _alike(fresh, former, wordings)
    )
    paired: dict[int, int] = {}
    taken: set[int] = set()
    for *_, i, j in pairs:
        if i not in paired and j not in taken:
            paired[i] = j
            taken.add(j)
    return paired


def _alike(
    fresh: Sequence[Part], former: Sequence[Part], wordings: Mapping[UUID, Iterable[str]]
) -> Iterator[tuple[int, int, float]]:
    """Yield the pairs that may be the same part, with their likeness.

    The same words are found among all former parts. Other wordings are compared with
    the held and the first few hundred retired ones alone: else a digest rewritten many
    times over would take ever longer to mend.
    """
    by_text: defaultdict[str, list[tuple[int, float]]] = defaultdict(list)
    for j, old in enumerate(former):
        by_text[old.text].append((j, _THE_SAME))
        for wording in wordings.get(old.id, ()):
            if wording != old.text:
                by_text[wording].append((j, _ONCE_THE_SAME))
    for i, new in enumerate(fresh):
        yield from ((i, j, likeness) for j, likeness in by_text.get(new.text, ()))
    order = sorted(range(len(former)), key=lambda j: (former[j].retired, former[j].number))
    compared = [(j, former[j].text.casefold()) for j in order[: 2 * MAX_PARTS]]
    for i, new in enumerate(fresh):
        words = new.text.casefold()
        one_of_one = new.kind is PartKind.THEME
        cutoff = 0.0 if one_of_one else SAME_WORDS
        for j, others in compared:
            likeness = fuzz.ratio(words, others, score_cutoff=cutoff)
            if former[j].text == new.text or not (likeness or one_of_one):
                continue
            if new.kind in _CLAIMS and turned(words, others):
                continue
            yield i, j, likeness


def turned(one: str, other: str) -> bool:
    """Tell whether one claim says the other's opposite: alike but for a negation.

    The negations known are those of the seven languages of the headings.
    """
    if OSA.distance(_letters(one), _letters(other), score_cutoff=A_SLIP) <= A_SLIP:
        return False
    said, meant = _claim(one), _claim(other)
    if (said[1] - meant[1]) % 2 == 0:
        return False
    return fuzz.ratio(said[0], meant[0]) >= SAME_BUT_TURNED


def _letters(text: str) -> str:
    return "".join(text.split())


def _claim(text: str) -> tuple[str, int]:
    """Return the words of a claim without its negations, and how many of those it has."""
    words = [word.replace("’", "'") for word in _WORD.findall(text.casefold())]
    bare = [word for word in words if word not in _NEGATIONS and not word.endswith("n't")]
    return " ".join(bare), len(words) - len(bare)
