"""Texts folded so that what a typist may change unnoticed makes no difference, offsets kept.

Folding leaves words alone, in small letters, each parted from the next by one space. Case,
accents, ligatures, quotation marks, dashes, ellipses and all other punctuation, markers of
italics (`_so_`), soft hyphens, hyphens at the end of a line or inside a word, and the sort
and number of white space are gone. What is left can be searched as plain text, and every
place in it leads back to the offset it came from.
"""

import re
import unicodedata
from array import array
from bisect import bisect_left, bisect_right
from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import lru_cache

from cards.proving.text import BookText

_BETWEEN_LETTERS = "-‐‑'’‘ʼ`´_\u00ad"
"""Marks that part no words when letters stand on both sides: `well-known`, `hell’s`, `to-day`."""
_HYPHENS = "-‐\u00ad"
_UNSPACED = "\u3040-\u30ff\u3400-\u4dbf\u4e00-\u9fff"
"""Kana and ideographs, which no space parts: a break between two of them is the line's."""
_BREAK = r"[ \t]*\n[ \t]*"
_TWO_LETTERS = {"æ": "ae", "œ": "oe", "Æ": "ae", "Œ": "oe"}
"""Letters that Unicode does not take apart and typists do."""
_WIDE_SPACE = re.compile(r"\s{2,}")


@lru_cache(maxsize=8192)
def fold_character(character: str) -> str:
    """Return what is left of one character: letters, a space, or nothing.

    Compatibility decomposition and case folding as Unicode defines them (UAX 15, NFKD;
    The Unicode Standard, 3.13), then without combining marks; syllables of Hangul stay
    whole, and letters that are not folded by Unicode (`ł`, `ø`) stay themselves.
    """
    if "\uac00" <= character <= "\ud7a3":
        return character
    if character in _TWO_LETTERS:
        return _TWO_LETTERS[character]
    parts = unicodedata.normalize("NFKD", character).casefold()
    kept = "".join(map(_fold_part, unicodedata.normalize("NFKD", parts)))
    return kept if len(kept) < 2 else "".join(kept.split()) or " "


def _fold_part(part: str) -> str:
    if part.isalnum():
        return part
    if unicodedata.combining(part) or unicodedata.category(part) == "Cf":
        return ""
    # Vowel signs of Indic scripts and of Thai are neither letters nor combining, yet part no words.
    return part if unicodedata.category(part).startswith("M") else " "


_USUAL = {
    character: fold_character(character)
    for character in map(
        chr, [*range(0x250), *range(0x2000, 0x2070), 0x3000, 0xFB00, 0xFB01, 0xFB02]
    )
}
"""What becomes of the characters most texts are made of."""


@dataclass(frozen=True, slots=True)
class FoldedText:
    """A text as folded, with the way back.

    Attributes:
        text: what is left of it.
        original: what it was folded from.
    """

    text: str
    original: str
    _at: "array[int]" = field(repr=False)
    _from: "array[int]" = field(repr=False)

    def offset(self, position: int) -> int:
        """Return the offset in the original of the character at a folded position."""
        index = bisect_right(self._at, position) - 1
        return self._from[index] + position - self._at[index]

    def span(self, start: int, end: int) -> tuple[int, int]:
        """Return the offsets in the original of a folded stretch, which holds a letter.

        Spaces at its ends are left out; combining marks after its last letter belong to it.
        """
        while start < end and self.text[start] == " ":
            start += 1
        while end > start + 1 and self.text[end - 1] == " ":
            end -= 1
        last = self.offset(end - 1) + 1
        while last < len(self.original) and unicodedata.combining(self.original[last]):
            last += 1
        return self.offset(start), last


def fold(original: str) -> FoldedText:
    """Fold a text; a megabyte takes some two tenths of a second."""
    folds = {character: fold_character(character) for character in set(original)}
    table = str.maketrans({one: kept for one, kept in folds.items() if len(kept) == 1})
    pieces: list[str] = []
    at, origin = array("l", [0]), array("l", [0])
    written = last = 0
    for found in _changes(folds).finditer(original):
        start, end = found.span()
        kept = _replacement(found[0], found.lastgroup, folds)
        if start > last:
            pieces.append(original[last:start].translate(table))
            written += start - last
        at.extend(range(written, written + len(kept)))
        origin.extend([start] * len(kept))
        pieces.append(kept)
        written += len(kept)
        last = end
        at.append(written)
        origin.append(end)
    pieces.append(original[last:].translate(table))
    return FoldedText("".join(pieces), original, at, origin)


def _replacement(run: str, kind: str | None, folds: dict[str, str]) -> str:
    if kind == "joined":
        return ""
    if kind == "parted":
        return " " if any(folds[character] == " " for character in run) else ""
    return folds[run]


def _changes(folds: dict[str, str]) -> re.Pattern[str]:
    """Return the pattern of every stretch whose length folding changes."""
    changed = (one for one, kept in folds.items() if len(kept) != 1 or kept == " ")
    return _changes_of(frozenset(one for one in changed if one not in _USUAL))


@lru_cache(maxsize=64)
def _changes_of(unusual: frozenset[str]) -> re.Pattern[str]:
    """Return that pattern for the usual characters and some others."""
    folds = {one: fold_character(one) for one in unusual} | _USUAL
    return _pattern(
        _class(one for one, kept in folds.items() if kept == " "),
        _class(one for one, kept in folds.items() if not kept),
        _class(one for one, kept in folds.items() if len(kept) > 1),
    )


@lru_cache(maxsize=32)
def _pattern(parting: str, nothing: str, several: str) -> re.Pattern[str]:
    """Return that pattern; most texts share one, and compiling it takes longer than using it."""
    no_letter = parting + nothing
    letter_before, letter_after = rf"(?<![{no_letter}])", rf"(?![{no_letter}]|\Z)"
    return re.compile(
        rf"(?P<joined>{letter_before}(?:[{_HYPHENS}]{_BREAK}|[{_class(_BETWEEN_LETTERS)}])"
        rf"{letter_after}|(?<=[{_UNSPACED}])\s+(?=[{_UNSPACED}]))"
        rf"|(?P<parted>[{no_letter}]{{2,}}|[{nothing}])"
        rf"|(?P<several>[{several}])"
    )


def _class(characters: Iterable[str]) -> str:
    return "".join(re.escape(character) for character in sorted(characters))


@dataclass(frozen=True, slots=True)
class Folded:
    """A book folded once, for any number of quotations to be found in it.

    Attributes:
        book: the book itself.
        folded: its text as folded.
        length: of the text with every run of white space made one space and none at its ends.
    """

    book: BookText
    folded: FoldedText
    length: int
    _runs: "array[int]" = field(repr=False)
    _spare: "array[int]" = field(repr=False)

    def fraction(self, offset: int) -> float:
        """Return how far into the book an offset stands, 0 to 1, white space collapsed."""
        before = bisect_left(self._runs, offset)
        spare = self._spare[before - 1] if before else 0
        return min(1.0, max(0, offset - spare) / max(1, self.length))


def fold_book(book: BookText) -> Folded:
    """Fold the text of a book."""
    text = book.text
    lead = len(text) - len(text.lstrip())
    runs, spare = array("l"), array("l")
    total = 0
    for found in _WIDE_SPACE.finditer(text):
        total += found.end() - found.start() - (found.start() > 0)
        runs.append(found.start())
        spare.append(total)
    if lead == 1:
        runs.insert(0, 0)
        spare = array("l", [1, *(known + 1 for known in spare)])
    return Folded(book, fold(text), len(" ".join(text.split())), runs, spare)
