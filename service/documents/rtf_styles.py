"""RTF paragraphs' styles made plain for pandoc, and the heads and feet of its pages.

RTF keeps the names of styles in a sheet and gives paragraphs numbers; pandoc reads
neither, and takes a heading that a word processor put in a list without numbers for an
item of it.
"""

import re
from collections.abc import Iterator

from service.documents.marks import PAGE, Mark, written
from service.documents.running_heads import PAGE_NUMBER

_STYLE = re.compile(rb"\{\\s(\d{1,4})(?!\d)([^{}]{0,2000});\}")
_CONTROL = re.compile(rb"\\[a-z]+-?\d* ?|[\r\n]")
_PARAGRAPH = re.compile(rb"\\pard(?![a-z])")
_PROPERTIES = re.compile(
    rb"(?:\\(?!(?:par|tab|line|page|sect|cell|row|bullet|emdash|endash|[lr]d?b?l?quote|chpgn)"
    rb"(?![a-z])|u-?\d)[a-z]+-?\d* ?|[\r\n]|\{\\listtext[^{}]*\})*"
)
_NUMBER = re.compile(rb"\\s(\d{1,4})(?!\d)")
_OUTLINE = re.compile(rb"\\outlinelevel(\d)")
_LISTING = re.compile(rb"\{\\listtext[^{}]*\}|\\ls\d+ ?|\\ilvl\d+ ?|\\outlinelevel\d+ ?")
_BEGINS = re.compile(rb"\\pagebb(?![a-z0-9])")
_HEADING = re.compile(r"(?:heading|überschrift|titre|título|titolo|kop) ([1-6])", re.IGNORECASE)
_TITLES = frozenset("title subtitle titel untertitel titre título titolo quote quotations".split())
_RUNNING = re.compile(rb"\{\\(header|footer)[lrf]?(?![a-z])")
_FIELD = re.compile(rb"\{\\field(?![a-z])")
_BRACE = re.compile(rb"\\.|[{}]", re.DOTALL)
_PAGES = re.compile(
    rb"\\fldinst[^A-Za-z]*(?:\\[a-z]+-?\d* ?|[{\s])*(?:NUM)?PAGES?\b", re.IGNORECASE
)
_CODE_PAGE = re.compile(rb"\\ansicpg\d+")
MAX_RUNNING = 8
"""Heads and feet looked at: of first, left and right pages, each perhaps given twice."""
_MAX_GROUP = 20_000


def with_styles_marked(content: bytes) -> tuple[bytes, tuple[Mark, ...]]:
    """Return RTF whose headings are headings, with titles marked and page breaks kept.

    With it comes what the marks stand for.
    """
    names = {int(found[1]): _name(found[2]) for found in _STYLE.finditer(content)}
    marks: list[Mark] = []
    parts: list[bytes] = []
    position = 0
    for found in _PARAGRAPH.finditer(content):
        if found.start() < position:
            continue
        run = _PROPERTIES.match(content, found.end())
        said = b"" if run is None else run[0]
        number = _NUMBER.search(said)
        name = "" if number is None else names.get(int(number[1]), "")
        level = _level(name, said)
        words = ""
        if name.casefold() in _TITLES:
            words = written(len(marks))
            marks.append(Mark(name))
        if _BEGINS.search(said):
            words += PAGE
        if level is not None:
            said = _LISTING.sub(b"", said) + b"\\outlinelevel%d " % level
        parts += [content[position : found.end()], said, _typed(words)]
        position = found.end() + (0 if run is None else len(run[0]))
    parts.append(content[position:])
    return b"".join(parts), tuple(marks)


def running_parts(content: bytes) -> Iterator[tuple[str, bytes]]:
    """Yield the heads and feet of pages, each as RTF of its own, numbers of pages marked."""
    page = _CODE_PAGE.search(content)
    opening = b"{\\rtf1\\ansi" + (page[0] if page else b"")
    seen: set[bytes] = set()
    for found in _RUNNING.finditer(content):
        inner = content[found.end() : _end(content, found.start()) - 1]
        if inner not in seen and len(seen) < MAX_RUNNING:
            seen.add(inner)
            yield found[1].decode(), opening + b" " + _numbers_marked(inner) + b"\\par}"


def _name(entry: bytes) -> str:
    return _CONTROL.sub(b"", entry).strip().decode("ascii", errors="replace")


def _level(name: str, said: bytes) -> int | None:
    """Return which level of the outline a paragraph stands at, from 0, or None."""
    if (found := _HEADING.fullmatch(name)) is not None:
        return int(found[1]) - 1
    outline = _OUTLINE.search(said)
    return int(outline[1]) if outline is not None and int(outline[1]) < 6 else None


def _typed(words: str) -> bytes:
    """Return private-use characters, and figures, as RTF."""
    if not words:
        return b""
    return b"{\\uc0" + b"".join(_letter(letter) for letter in words) + b"}"


def _letter(letter: str) -> bytes:
    return letter.encode() if letter.isascii() else b"\\u%d " % (ord(letter) - 0x10000)


def _numbers_marked(inner: bytes) -> bytes:
    parts: list[bytes] = []
    position = 0
    for found in _FIELD.finditer(inner):
        end = _end(inner, found.start())
        if found.start() >= position and _PAGES.search(inner, found.start(), end):
            parts += [inner[position : found.start()], _typed(PAGE_NUMBER)]
            position = end
    parts.append(inner[position:])
    return b"".join(parts).replace(b"\\chpgn", _typed(PAGE_NUMBER))


def _end(content: bytes, start: int) -> int:
    """Return where the group that opens at `start` has ended, or where looking for it did."""
    depth = 0
    for found in _BRACE.finditer(content, start, start + _MAX_GROUP):
        depth += {b"{": 1, b"}": -1}.get(found[0], 0)
        if depth == 0:
            return found.end()
    return min(start + _MAX_GROUP, len(content))
