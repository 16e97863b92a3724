"""A text cut into idea units: sentences, their clauses, and the limbs of long ones."""

import re
from bisect import bisect_left
from collections.abc import Iterator
from itertools import pairwise

from cards.kinds.words import content_words

# A dash is looked for from the first space before it alone: from every space, a page of
# spaces would take seconds.
# A line that goes on in a small letter was only broken to fit a page.
_LINE_END = r"\n+(?![ \t]*[a-z])"
_IDEA_END = re.compile(
    r"(?<=[.!?;])[\s”’\"')\]]+(?=\S)|(?<=:)\s+(?=\S)|(?<!\s)\s+[–—]\s+|" + _LINE_END
)
_SENTENCE_END = re.compile(r"(?<=[.!?])[\s”’\"')\]]+(?=\S)|" + _LINE_END)
_ABBREVIATION = re.compile(r"(?<!\w)(?:Mr|Mrs|Dr|St|ch|pp?|vol|e\.g|i\.e)\.\Z")
_LONGEST_ABBREVIATION = 4
_LIMB = re.compile(
    r"(?<=,)\s(?=\S)|(?<=\S)\s(?=(?:and|but|until|because|so that|rather than|instead of|yet"
    r"|although|though|while|since|who|whom|which|where)\s)",
    re.IGNORECASE,
)
"""Where one limb of a sentence may end and another begin."""
_LEAST = 4
"""Content words a limb has at the least; with fewer it belongs to its neighbour."""


def ideas(text: str) -> list[tuple[int, int]]:
    """Cut a text into idea units: sentences, clauses set apart by ; : or a dash, and limbs.

    A limb is what stands before or after a comma, a conjunction or a relative pronoun,
    where it has four content words or more. Each is a pair of offsets, start and end. An
    approximation of the propositional analysis of Kintsch (1974) that needs no parser; the
    reader corrects it.
    """
    return [limb for sentence in sentences(text) for limb in _limbs(text, *sentence)]


def sentences(text: str) -> list[tuple[int, int]]:
    """Cut a text at the ends of sentences and at ; : and dashes alone."""
    ends = (
        found.end()
        for found in _IDEA_END.finditer(text)
        if not _ABBREVIATION.search(
            text, max(0, found.start() - _LONGEST_ABBREVIATION), found.start()
        )
    )
    units = []
    for start, end in pairwise((0, *ends, len(text))):
        stripped = text[start:end].strip()
        if content_words(stripped):
            begin = text.index(stripped, start)
            units.append((begin, begin + len(stripped)))
    return units


def sentence_ends(text: str) -> list[int]:
    """Return where the sentences of a text end, in order, the last of them with the text.

    The first is the one that says the main idea.
    """
    words = content_words(text)
    if not words:
        return [len(text)]
    ends = [
        cut.start()
        for cut in _SENTENCE_END.finditer(text, words[0].end)
        if not _ABBREVIATION.search(text, max(0, cut.start() - _LONGEST_ABBREVIATION), cut.start())
    ]
    return [*ends, len(text)]


def _limbs(text: str, start: int, end: int) -> Iterator[tuple[int, int]]:
    words = [token.start for token in content_words(text[start:end])]
    begun, before = start, 0
    for cut in _LIMB.finditer(text, start, end):
        until = cut.end() - start
        so_far = bisect_left(words, until)
        if so_far - before >= _LEAST and len(words) - so_far >= _LEAST:
            yield begun, cut.start()
            begun, before = cut.end(), so_far
    yield begun, end
