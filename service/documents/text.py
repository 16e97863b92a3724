"""Files of bare text: their encoding, and lines that a program broke or the writer did."""

import re
from itertools import pairwise

from cards.errors import DocumentBroken
from cards.intake.locating import locator_in, split_start
from cards.intake.wording import OPENING_MARKS
from service.documents.characters import cleaned
from service.documents.encodings import decoded_text
from service.documents.marks import FORGERIES

MIN_WRAPPED = 50
"""Characters in the longest line of a paragraph a program may have wrapped; verse is narrower."""
MAX_STRANGE = 2
"""Characters that are no text in any text; in a long one, one of a hundred."""
MAX_WRAPPED = 120
"""Characters in the longest line of a text a program wrapped; longer lines were left to flow."""
_CONTROL = re.compile(r"[\x00-\x08\x0e-\x1f\x7f-\x84\x86-\x9f\ufffe\uffff]")
_BULLET = re.compile(r"(?m)^([ \t]*)[•◦▪‣●○∙·][ \t]+")
_DASHED_RUN = re.compile(
    r"(?m)(?:^[ \t]*–[ \t]+\S[^\n]*(?:\n[ \t]+[^\s–\-*+>][^\n]*)*(?:\n|\Z)){2,}"
)
_DASH = re.compile(r"(?m)^([ \t]*)–[ \t]+")
_UNDERLINED = re.compile(
    r"(?m)^[ \t]*(\(?(?:\d{1,2}|[IVX]{1,4}|[A-H])[.)][ \t]+[^\n]{1,80})\n"
    r"[ \t]*(?:={3,}|-{3,}|_{3,})[ \t]*$"
)
_FENCE = re.compile(r"(?m)^[ \t]*(?:~{3,}|`{3,})[ \t]*$")
_OPENING = re.compile(
    r"[ \t]*([-*+>#|“„«\"]|\(?\d{1,3}[.)]|\([a-zA-Z]\)|[a-h]\)|\([ivxIVX]{1,5}\)|\[[ xX]?\])"
)
_QUOTED = re.compile(r"[ \t]*>[ \t]?")
_RULE = re.compile(r"\W*")
_LABEL = re.compile(r"[ \t]*[*_]{0,3}[^\W\d][\w ]{0,30}[*_]{0,3}:[*_]{0,3}(\s|$)")

_EMBEDDED = re.compile(r"data:[\w/+.;=-]{0,80},[A-Za-z0-9+/=%\s]{1000,}")


def decoded(name: str, content: bytes) -> str:
    """Return the text of a file, its lines ended by line feeds alone; see `decoded_text`.

    Raises:
        DocumentBroken: its bytes are not text.
    """
    text = decoded_text(content)
    text = text.replace("\r\n", "\n").replace("\r", "\n").replace("\f", "\n\n")
    strange = len(_CONTROL.findall(text)) + text.count("\ufffd")
    if strange > max(len(text) // 100, MAX_STRANGE):
        raise DocumentBroken(
            f"“{name}” does not hold text, whatever its name says. Save the digest as plain text "
            "in UTF-8 and hand it over again.",
            where="file",
        )
    return cleaned(text.replace("\u2029", "\n\n")).translate(FORGERIES)


def without_embedded(text: str) -> str:
    """Return a page without the pictures written into it, which would fill pandoc's memory."""
    return _EMBEDDED.sub("data:,", text)


def without_fences(text: str) -> str:
    """Return bare text with the rules drawn by tildes or backticks made rules of stars.

    Markdown would take what follows them for the text of a program.
    """
    return _FENCE.sub("\n* * *\n", text)


def headings_marked(text: str) -> str:
    """Return text with numbered lines that are underlined made headings, which Markdown misses."""
    return _UNDERLINED.sub(r"\n## \1\n\n", text)


def lists_marked(text: str) -> str:
    """Return text with the bullets people type in front of items turned to hyphens.

    A dash is a bullet where one item follows another, and none is a mere locator: that
    one stands behind the words of a quotation.
    """
    return _DASHED_RUN.sub(_with_hyphens, _BULLET.sub(r"\1- ", text))


def _with_hyphens(run: re.Match[str]) -> str:
    if any(locator_in(line) is not None for line in run[0].splitlines()):
        return run[0]
    return _DASH.sub(r"\1- ", run[0])


def rejoined(text: str) -> str:
    """Return text with the line breaks a program put in taken out of its paragraphs.

    A paragraph was wrapped by a program if no line but the last could have taken
    the next line's first word too, and if it is about as wide as the text. Verse
    and lists do not look so.
    """
    lines = text.split("\n")
    longest = max(map(len, lines))
    if longest > MAX_WRAPPED:
        return text
    least = max(MIN_WRAPPED, longest * 3 // 4)
    return "\n".join(
        _rejoin(paragraph, least) or "\n".join(paragraph) for paragraph in _paragraphs(lines)
    )


def _paragraphs(lines: list[str]) -> list[list[str]]:
    """Return runs of lines with words; what opens a list, a label or a heading opens a run."""
    runs: list[list[str]] = [[]]
    for line in lines:
        bare = _RULE.fullmatch(line) is not None
        before = runs[-1][-1] if runs[-1] else ""
        if bare or not before or _stands_alone(line, before):
            runs.append([line])
        else:
            runs[-1].append(line)
        if bare:
            runs.append([])
    return [run for run in runs if run]


def _stands_alone(line: str, before: str) -> bool:
    """Tell whether the break between two lines was typed on purpose."""
    if before.endswith(("  ", "\\")) or line.isupper() or before.isupper() or " | " in line:
        return True
    if locator_in(_QUOTED.sub("", line, count=1)) is not None or _opens_placed(line):
        return True
    quoted = _QUOTED.match(before) is not None
    words = _QUOTED.sub("", line, count=1) if quoted else line
    return _OPENING.match(words) is not None or (not quoted and _LABEL.match(words) is not None)


def _opens_placed(line: str) -> bool:
    """Tell whether a line is a place with a quotation behind it: `p. 54 "..."`."""
    placed = split_start(line.strip())
    return placed.locator is not None and placed.text[:1] in OPENING_MARKS


def _rejoin(lines: list[str], least: int) -> str:
    lines = [lines[0], *(_QUOTED.sub("", line, count=1).strip() for line in lines[1:])]
    width = max(map(len, lines))
    wrapped = width >= least and all(
        len(line.rstrip()) + 1 + len(following.split(maxsplit=1)[0]) > width
        for line, following in pairwise(lines)
    )
    return " ".join(map(str.rstrip, lines)) if wrapped else ""
