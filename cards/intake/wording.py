"""Small readings of wording that every part of a digest needs: folding, marks, typed markers."""

import re
import unicodedata
from functools import lru_cache

from cards.locators import roman

OPENING_MARKS = "“„«‹‘‚\"'»›‟❝「『"
_PAIRS = {
    "“": "”",
    "„": '“”"',
    "«": "»",
    "»": "«",
    "‹": "›",
    "‘": "’",
    "‚": "‘’",
    '"': '"',
    "'": "'",
    "‟": "”",
    "❝": "❞",
    "›": "‹",
    "「": "」",
    "『": "』",
}
_MAX_COUNT = 3
"""Figures in the number of a row."""
_INVISIBLE = dict.fromkeys(map(ord, "\u00ad\u200b\u2060\ufeff\x00"))
_SPACE = re.compile(r"[^\S\n]+")
_NOT_WORD = re.compile(r"[\W_]+")
_MARKER = re.compile(
    r"(?:\(?(?P<number>\d{1,3}|[ivxIVX]{1,5}|[a-zA-Z])"
    r"(?P<close>\.\)|\.[-–]|\)[-–]|[.)]|(?<=\d)/|"
    r"(?<=\d)[°º](?!\s(?:di |de )?[^\W\d_]{3,10}\s(?:del? )?\d{4}(?!\d)))(?:\s+|$)"
    r"|\d{1,2}\.(?P<sub>\d{1,2})\.?\s+(?=[^\W\d_])"
    r"|(?P<bare>\d{1,2}|o)\s+(?:[–—-]\s+)?(?=[^\W\d_a-z]|[“„«\"'‘])"
    r"|(?P<bullet>[-–—*•◦▪‣●○∙·+])\s+"
    r"|(?P<box>\[[ xX✓✔]?\]|[☐☑☒✓✔□■])\s*)"
)
_BOX = re.compile(r"(?:\[[ xX✓✔]?\]|[☐☑☒✓✔□■])\s*")
_LATER_BOX = re.compile(r"\s(?=(?:\[[ xX✓✔]?\]|[☐☑☒□■])\s)")


def tidied(text: str) -> str:
    """Return text in NFC without invisible characters, single-spaced, without empty lines."""
    text = unicodedata.normalize("NFC", text.replace("\r", "\n")).translate(_INVISIBLE)
    lines = (_SPACE.sub(" ", line).strip() for line in text.split("\n"))
    return "\n".join(line for line in lines if line)


def boxes_apart(text: str) -> str:
    """Return a checklist typed as one paragraph with each of its boxes on a line of its own."""
    return _LATER_BOX.sub("\n", text) if _BOX.match(text) else text


@lru_cache(maxsize=4096)
def folded(text: str) -> str:
    """Return the words of a text alone, in lower case and without accents."""
    if text.isascii():
        return _NOT_WORD.sub(" ", text.lower()).strip()
    letters = unicodedata.normalize("NFKD", text.casefold())
    bare = "".join(letter for letter in letters if not unicodedata.combining(letter))
    return _NOT_WORD.sub(" ", bare).strip()


def unquoted(text: str) -> str:
    """Return text without one pair of quotation marks around the whole of it."""
    text = text.strip()
    closing = closing_of(text)
    if closing is not None and closing == len(text) - 1:
        return text[1:-1].strip()
    return text


def closing_of(text: str) -> int | None:
    """Return where the quotation mark that opens a text is closed, or None.

    A single mark may be an apostrophe, so it closes only at the last one before
    something that is no letter; of the others the first that is balanced counts.
    """
    if not text or text[0] not in _PAIRS:
        return None
    opening, closings = text[0], _PAIRS[text[0]]
    if opening in closings or opening in "‘‚":
        for index in range(len(text) - 1, 0, -1):
            if text[index] in closings and not text[index + 1 : index + 2].isalnum():
                return index
        return None
    depth = 0
    for index, letter in enumerate(text):
        if letter == opening:
            depth += 1
        elif letter in closings:
            depth -= 1
            if depth == 0:
                return index
    return None


class Marker:
    """A number, letter, bullet or box typed in front of an item.

    Attributes:
        rest: the text after it.
        readings: what its number may be: a `digit`'s, a `roman` numeral's, a
            `letter`'s place in the alphabet, a `bare` figure without a sign behind it, or an
            `o` typed for a bullet; none of a bullet.
    """

    __slots__ = ("readings", "rest")

    def __init__(self, rest: str, readings: dict[str, int] | None = None) -> None:
        self.rest = rest
        self.readings = readings or {}

    @property
    def sure(self) -> bool:
        """Whether it can be nothing but a marker: a bullet or figures."""
        return not self.readings or "digit" in self.readings

    def precedes(self, other: "Marker") -> bool:
        """Tell whether another marker is the next of the same row."""
        if "o" in self.readings:
            return "o" in other.readings
        return any(other.readings.get(kind) == number + 1 for kind, number in self.readings.items())


def marker_of(text: str) -> Marker | None:
    """Return the marker a line opens with, or None."""
    found = _MARKER.match(text)
    if found is None:
        return None
    rest = unboxed(text[found.end() :])
    if (bare := found["bare"] or found["sub"]) is not None:
        return Marker(rest, {"o": 0} if bare == "o" else {"bare": int(bare)})
    written = found["number"]
    if written is None:
        return Marker(rest)
    if written.isdigit():
        return Marker(rest, {"digit": int(written)})
    readings = {}
    if (value := roman(written)) is not None:
        readings["roman"] = value
    if len(written) == 1:
        readings["letter"] = ord(written.lower()) - ord("a") + 1
    return Marker(rest, readings)


def uncounted(cells: list[str]) -> list[str]:
    """Return the cells of a row that hold words, without the one that only counts the rows.

    A number of four figures is a year, and a word of its own.
    """
    cells = [cell for cell in cells if cell]
    first = cells[0].rstrip(".)") if len(cells) > 1 else ""
    return cells[1:] if first.isdecimal() and len(first) <= _MAX_COUNT else cells


def unboxed(text: str) -> str:
    """Return text without the checkbox it opens with."""
    return _BOX.sub("", text, count=1) if _BOX.match(text) else text


def flowing(text: str) -> str:
    """Return text with its line breaks turned to spaces, as prose is read."""
    return " ".join(text.split())


def excerpt(text: str, limit: int = 80) -> str:
    """Return the beginning of a text, for a sentence that is about it."""
    text = flowing(text)
    return text if len(text) <= limit else text[:limit].rsplit(" ", 1)[0] + "…"
