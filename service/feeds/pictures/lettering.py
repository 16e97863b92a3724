"""How wide words are in the pages' typeface, and how they are cut or broken to fit.

No browser is at hand when a picture is drawn, so widths come from the typeface's own table.
"""

import re
import unicodedata
from functools import cache, lru_cache
from typing import Final

ELLIPSIS: Final = "…"
_GROUPS: Final = {
    200: "'",
    240: " ’‘",
    300: "!|ł",
    320: ",-.:;j·",
    340: "[]ilı",
    360: "/\\t{}",
    380: "()If",
    420: '"J`?',
    440: "“”",
    460: "*r",
    500: "sz",
    520: "$_c–",
    540: "0123456789#+<=>^e~×",
    580: "Sagovxøð",
    620: "ZkyFLbdqþ",
    660: "EPTpußBhn",
    700: "CXYR",
    740: "AKV&DGOQ",
    780: "UN",
    840: "H—@w…æ",
    960: "œ%MmÆ",
    1020: "WŒ",
}
_THOUSANDTHS: Final = {letter: width for width, letters in _GROUPS.items() for letter in letters}
"""Advances of the typeface as the pages load it, in thousandths of its size, rounded up.

What is set for printing is of a narrower cut.
"""
_OTHER: Final = 620
_FULL: Final = 1000
"""Of a letter of no known width, and of one as wide as it is high."""
_ROOM: Final = 1.05
"""What the faces that stand in for ours are wider."""
_FORBIDDEN: Final = re.compile(
    "[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]|[\u202a-\u202e\u2066-\u2069]"
)
"""What XML 1.0 cannot hold (section 2.2), and what would turn the words after it about."""
_BLANKS: Final = re.compile(r"\s+")
_WHOLE_WORDS: Final = 0.6
"""Part of what fits that is kept when words are cut between two of them."""
_LONGEST: Final = 2_000
"""Letters of one piece of writing looked at: many times what any picture shows."""


def clean(words: str) -> str:
    """Return words on one line, without what a picture cannot hold."""
    if words.isascii() and words.isprintable() and "  " not in words:
        return words[:_LONGEST].strip()
    return _BLANKS.sub(" ", _FORBIDDEN.sub("\ufffd", words[:_LONGEST])).strip()


@lru_cache(2048)
def width(words: str, size: float) -> float:
    """Return how wide words are at a size, in the units of the size."""
    return sum(map(_advance, words)) * size * _ROOM / 1000


def fitted(words: str, size: float, room: float) -> str:
    """Return words, cut short with an ellipsis where they are wider than there is room."""
    if width(words, size) <= room:
        return words
    left = room - width(ELLIPSIS, size)
    taken = 0
    for letter in words:
        left -= width(letter, size)
        if left < 0:
            break
        taken += 1
    word = words.rfind(" ", 0, taken + 1)
    end = word if word >= _WHOLE_WORDS * taken else taken
    return words[:end].rstrip(" ,;:–-") + ELLIPSIS


def broken(words: str, size: float, room: float, most: int) -> list[str]:
    """Return words on at most so many lines; the last is cut where there are more."""
    lines: list[str] = []
    waiting = words.split(" ")
    while waiting and len(lines) < most:
        taken = 1
        while taken < len(waiting) and width(" ".join(waiting[: taken + 1]), size) <= room:
            taken += 1
        last = len(lines) == most - 1
        line = " ".join(waiting if last else waiting[:taken])
        lines.append(fitted(line, size, room))
        waiting = waiting[taken:]
    return lines


@cache
def _advance(letter: str) -> int:
    base = unicodedata.normalize("NFD", letter)[0]
    known = _THOUSANDTHS.get(base)
    if known is not None:
        return known
    if unicodedata.combining(letter):
        return 0
    return _FULL if unicodedata.east_asian_width(letter) in "WF" else _OTHER
