"""Which words announce which part of a digest.

Readers head the parts of a digest as they like. A heading made only of words
known here and of words that add nothing (*my*, *key*, *from the book*) is sure;
one that holds a known word among others is likely, and counts only where it
looks like a heading. The lists are common practice, no published source.
"""

import re
from dataclasses import dataclass
from functools import lru_cache

from rapidfuzz import fuzz, process

from cards.intake.heading_words import BUILT_IN, MAX_HEADING, HeadingWords, Part
from cards.intake.vocabulary import FILLERS, KEYWORDS, PHRASES
from cards.intake.wording import OPENING_MARKS, folded

__all__ = ["MAX_HEADING", "Announced", "Part", "is_verdict", "misspelt", "part_named", "unfilled"]

_MAX_SURE = 8
_MAX_LIKELY = 10
_MIN_MISSPELT = 6
_CLOSE_ENOUGH = 86


@dataclass(frozen=True, slots=True)
class Announced:
    """The part a heading announces, and whether it can mean nothing else."""

    part: Part
    sure: bool


_VERDICTS = frozenset(
    folded(f"{lead} {verdict}")
    for lead in ("", "i", "we", "where i", "partly", "mostly", "i partly", "i mostly", "wholly")
    for verdict in (
        "agree",
        "disagree",
        "agreed",
        "disagreed",
        "suspend",
        "suspended",
        "suspending",
    )
)
_JOINTS = frozenset(
    folded(
        "of from in and with to for by on von aus und mit zu zum de du des et dans y del e di en "
        "uit van do da dos das dal om à"
    ).split()
)
_PART_OF = {word: part for part, words in KEYWORDS.items() for word in folded(words).split()}
_PART_OF_PHRASE = {
    folded(phrase): part for part, phrases in PHRASES.items() for phrase in phrases.split("|")
}
_LONG_KEYWORDS = tuple(word for word in _PART_OF if len(word) >= _MIN_MISSPELT)
_NUMBERING = re.compile(r"^[\s#*_>]*(?:\(?(?:\d{1,2}|[ivxIVX]{1,4}|[a-hA-H])[.):]{1,2}\s+)?")
_QUOTING = tuple(OPENING_MARKS)
"""Signs that open words of a book, and no heading."""
_ARTICLE = re.compile(r"^(?:the|my|die|der|das|le|la|el|lo|il|o|os|a|de|het|mes|meine) ")
_SHORTENED = re.compile(
    r"(?:the |my )?(?:whole )?(?:argument|book|plot|story|novel|play|poem|work|thesis|case|essay) "
    r"(?:in|at) (?:brief|short|a nutshell|miniature|a glance|essence|"
    r"(?:a|one|two|three|four|a few) (?:single |short )?(?:words?|lines?|sentences?|paragraphs?))"
)
"""What a book comes to, whatever it is called: *the argument in brief*, *the novel in a line*."""
_ASIDE = re.compile(r"[(\[][^()\[\]]{0,80}[)\]]")


def is_verdict(text: str) -> bool:
    """Tell whether words are a verdict themselves, and no mere name of the judgement's part."""
    return folded(text) in _VERDICTS


def part_named(text: str, own: HeadingWords = BUILT_IN) -> Announced | None:
    """Return the part a heading's words announce, or None. The reader's `own` words win."""
    text = text.strip()
    if len(text) > MAX_HEADING or "\n" in text or text[:1] in _QUOTING:
        return None
    return _named(text, own)


# Every line of a document is asked several times whether it could be a heading.
@lru_cache(maxsize=1024)
def _named(text: str, own: HeadingWords) -> Announced | None:
    words = folded(_ASIDE.sub(" ", _NUMBERING.sub("", text, count=1)))
    whole = own.part(folded(text)) or own.part(words) or _PART_OF_PHRASE.get(words)
    whole = whole or _PART_OF_PHRASE.get(_ARTICLE.sub("", words, count=1))
    if whole is None and _SHORTENED.fullmatch(words):
        whole = Part.THEME
    if words in _VERDICTS and whole is None:
        whole = Part.JUDGEMENT
    if whole is not None:
        return Announced(whole, sure=True)
    tokens = words.split()
    if not tokens or len(tokens) > _MAX_LIKELY:
        return None
    part = _part_of(tokens)
    if part is None:
        return None
    known = all(token in _PART_OF or token in FILLERS or token.isdigit() for token in tokens)
    return Announced(part, sure=known and len(tokens) <= _MAX_SURE)


def unfilled(text: str) -> set[str]:
    """Return the words of a heading that say something: without *the*, *my*, *in one paragraph*.

    A word that is a filler beside others, as *story* is, stays where it is alone.
    """
    words = folded(_ASIDE.sub(" ", _NUMBERING.sub("", text, count=1))).split()
    return {word for word in words if word not in FILLERS} or set(words[-1:])


def misspelt(text: str) -> Announced | None:
    """Return the part a heading of one to three words announces despite a typing error."""
    tokens = folded(_NUMBERING.sub("", text[:MAX_HEADING], count=1)).split()
    if not 1 <= len(tokens) <= 3 or "\n" in text.strip():
        return None
    for token in tokens:
        if len(token) < _MIN_MISSPELT:
            continue
        found = process.extractOne(
            token, _LONG_KEYWORDS, scorer=fuzz.ratio, score_cutoff=_CLOSE_ENOUGH
        )
        if found is not None:
            return Announced(_PART_OF[found[0]], sure=False)
    return None


def _part_of(tokens: list[str]) -> Part | None:
    """Return the part of the head noun: the last known word before the first joint."""
    head = next((i for i, token in enumerate(tokens) if i and token in _JOINTS), len(tokens))
    for token in [*reversed(tokens[:head]), *tokens[head:]]:
        if token in _PART_OF:
            return _PART_OF[token]
    return None
