"""The words of a stretch of text, folded, with the marks between them."""

import re
from dataclasses import dataclass

from cards.proving.folding import FoldedText

_QUOTES = re.compile("[\"'“”„‟‘’‚‛«»‹›`´_*\u00ad\u200b]+")
_DASH = re.compile(r"\s*(?:-{2,}|[–—―]|(?<=\s)-(?=\s))[-–—―]*\s*")
_MARKS = 200
"""Characters between two words that are compared; more are a rule across the page."""
_ELLIPSIS = re.compile(r"\s*(?:…|\.(?:\s?\.){2,})\s*")


@dataclass(frozen=True, slots=True)
class Word:
    """A word as folded, and its offsets in the text it was folded from."""

    folded: str
    start: int
    end: int


def words_of(folded: FoldedText, start: int = 0, end: int | None = None) -> list[Word]:
    """Return the words between two folded positions."""
    end = len(folded.text) if end is None else end
    return [
        Word(found[0], *folded.span(found.start(), found.end()))
        for found in re.compile(r"\S+").finditer(folded.text, start, end)
    ]


def marks(between: str) -> str:
    """Return the marks between two words in one form; quotation marks and brackets are none."""
    plain = _QUOTES.sub("", " ".join(between.split()).join("  ")[:_MARKS])
    plain = _DASH.sub("—", _ELLIPSIS.sub("…", plain))
    return "".join(plain.split()).replace("-", "")


def plain_words(text: str) -> str:
    """Return a stretch of a book as one would write it out: one line, no markers of italics."""
    text = re.sub("\u00ad(?:[ \t]*\n[ \t]*)?", "", text)
    text = re.sub(r"(?<=\w)-[ \t]*\n[ \t]*(?=\w)", "-", text)
    return " ".join(re.sub(r"(?<![^\W_])_+|_+(?![^\W_])", "", text).split())
