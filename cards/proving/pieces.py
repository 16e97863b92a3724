"""A quotation as a reader writes it: what is the book's, what was left out, what was put in."""

import re
from dataclasses import dataclass

from cards.proving.folding import FoldedText, fold

ELLIPSIS_GAP = 4_000
"""Folded characters a reader's ellipsis may stand for: some two printed pages."""
MOST_PIECES = 40
"""Pieces a quotation is cut into; one with more is taken as it stands, its dots the book's own."""
BRACKET_GAP = 200
"""Folded characters a bracketed insertion may stand in place of: a clause, "[the whale]"."""

_NOTHING = "\u200b"
"""A character that folding drops, written over what is not the book's, so that offsets stay."""
_SIC = re.compile(r"[\[(]\s*sic(?:\s*[!.])?\s*[\])]", re.IGNORECASE)
_LETTERS = re.compile(
    r"(?<![^\W\d_])\[([^\W\d_]{1,3})\](?=[^\W\d_])|(?<=[^\W\d_])\[([^\W\d_]{1,4})\]"
)
_EMPHASIS = re.compile(
    r"[\[(]\s*(?:(?:my|our|his|her|original)\s*)?(?:emphasis|italics)(?:\s*(?:added|mine|original|"
    r"in (?:the )?original))?\s*[\])]",
    re.IGNORECASE,
)
_GAP = re.compile(
    r"(?P<ellipsis>[\[(]\s*(?:…|\.{2,}|\.(?:\s\.){2,})\s*[\])]|…|\.(?:\s?\.){2,})"
    r"|(?P<bracket>\[[^\[\]]{1,200}\])"
)


@dataclass(frozen=True, slots=True)
class Piece:
    """Words that stand together in the book.

    Attributes:
        start, end: offsets in the quotation as written.
        gap: folded characters that may part it from the piece before; 0 for the first.
        folded: its words as folded; the way back leads to offsets counted from `start`.
    """

    start: int
    end: int
    gap: int
    folded: FoldedText

    @property
    def words(self) -> str:
        """Its folded words, without spaces at the ends."""
        return self.folded.text.strip()


def masked(quotation: str) -> str:
    """Return a quotation with `[sic]` and the brackets in `[T]he` gone, its length unchanged."""
    for form in (_SIC, _EMPHASIS):
        quotation = form.sub(lambda found: _NOTHING * len(found[0]), quotation)
    return _LETTERS.sub(lambda found: f"{_NOTHING}{found[1] or found[2]}{_NOTHING}", quotation)


def whole(quotation: str) -> Piece:
    """Return a quotation as one piece, its ellipses taken for the book's own."""
    return Piece(0, len(quotation), 0, fold(masked(quotation)))


def pieces(quotation: str) -> tuple[Piece, ...]:
    """Cut a quotation where something was left out or put in; a piece holds a letter.

    One with more than `MOST_PIECES` is whole.
    """
    words = masked(quotation)
    cut: list[Piece] = []
    start = gap = 0
    ends = [(found.start(), found.end(), _width(found)) for found in _GAP.finditer(words)]
    for end, resume, width in [*ends, (len(words), len(words), 0)]:
        stretch = words[start:end]
        folded = fold(stretch) if stretch.strip() else None
        if folded is not None and folded.text.strip():
            cut.append(Piece(start, end, gap if cut else 0, folded))
            gap = width
            if len(cut) > MOST_PIECES:
                return (whole(quotation),)
        else:
            gap = max(gap, width)
        start = resume
    return tuple(cut)


def _width(found: re.Match[str]) -> int:
    return ELLIPSIS_GAP if found.lastgroup == "ellipsis" else BRACKET_GAP
