"""The text of a book in a plain text file."""

import re
from collections.abc import Iterator

from cards.intake.isbn import compact, is_isbn
from cards.proving.text import BookText, PageMark
from service.documents.book_texts.chapters import (
    chapters_of,
    number_in,
    opens_chapter,
    opens_volume,
)
from service.documents.book_texts.flow import Heading

_BEGINNING = re.compile(r"(?m)^\*{3} ?START OF .{0,200}\n")
_ENDING = re.compile(r"(?m)^\*{3} ?END OF .{0,200}$")
_NAMED = re.compile(r"(?m)^(Title|Author): *(\S.{0,300}?) *$")
_LISTED = 3
_PAGE_MARK = re.compile(r"\[ ?(?:Pg|Page|p\.|S\.|Seite) ?(\d{1,5}|[ivxlcdm]{1,9}) ?\] ?")
_ISBN = re.compile(r"ISBN(?:-1[03])?:?\s*([\dXx][\dXx \-–]{8,20}[\dXx])")
_BY = re.compile(r"\s*by\s+(\S.{0,200}?)(?:\s*\(\d{4}\))?\s*", re.IGNORECASE)
_BARE = re.compile(r"[ \t]*(\d{1,3}|[IVXLC]{1,8})\.?[ \t]*")
_PARAGRAPH = re.compile(r"\S[^\n]*(?:\n(?![ \t]*\n)[^\n]+)*")
_SENTENCE = re.compile(r"\S+\s+[\w-]+\s+[a-z].*[.!?;,]")
"""What goes on in small letters and ends as a sentence does: `Chapter 5 was the dullest.`"""
_NUMBER_ENDS = re.compile(r"\S+\s+[\w-]+\s*[.:)—–]")
_FRONT = 8
"""Lines with words in which a title page names its author."""
_HEADING = 160
"""Characters of the longest heading, in one line or a few."""
_SHORT = 40
"""Characters of the longest first line of a heading whose title is on the very next one."""
_BODY = 60
"""Characters of the shortest chapter among three in a row; shorter ones are a list of contents."""


def book_in_plain_text(text: str) -> BookText:
    """Return a book from the text of a file, its lines ended by line feeds alone."""
    said = dict(reversed(_NAMED.findall(text[:4000])))
    begins = _BEGINNING.search(text)
    ends = _ENDING.search(text, begins.end() if begins is not None else 0)
    text = text[begins.end() if begins is not None else 0 : ends.start() if ends else None]
    text, pages = _without_marks(text)
    title, author = _title_page(text)
    headings = list(_headings(text))
    return BookText(
        title=said.get("Title", title),
        author=said.get("Author", author),
        isbn=isbn_in(text[:10_000]),
        text=text,
        chapters=chapters_of(headings, len(text)),
        pages=pages,
    )


def isbn_in(text: str) -> str | None:
    """Return the first ISBN with a sound check digit that a text names as one, or None."""
    for found in _ISBN.finditer(text):
        number = compact(found[1])
        if is_isbn(number):
            return number
    return None


def _without_marks(text: str) -> tuple[str, tuple[PageMark, ...]]:
    """Take the marks a transcriber put in for pages (`[Pg 12]`) out of the words."""
    pieces: list[str] = []
    pages: list[PageMark] = []
    length = last = 0
    for mark in _PAGE_MARK.finditer(text):
        pieces.append(text[last : mark.start()])
        length += mark.start() - last
        pages.append(PageMark(mark[1], length))
        last = mark.end()
    pieces.append(text[last:])
    return "".join(pieces), tuple(pages)


def _title_page(text: str) -> tuple[str | None, str | None]:
    lines = [line.strip() for line in text[:4000].splitlines() if line.strip()][:_FRONT]
    if not lines or opens_chapter(lines[0]) or len(lines[0]) > _HEADING:
        return None, None
    for number, line in enumerate(lines[1:], 1):
        by = _BY.fullmatch(line)
        if by is not None:
            return lines[0], by[1]
        if line.lower() == "by" and number + 1 < len(lines):
            return lines[0], re.sub(r"\s*\(\d{4}\)$", "", lines[number + 1])
    return None, None


def _headings(text: str) -> Iterator[Heading]:
    """Yield the lines that stand alone and are worded as headings, those of contents left out."""
    named = list(_standing_alone(text))
    worded: list[Heading] = []
    bare: list[Heading] = []
    for one in named:
        is_worded = opens_chapter(one.title) or opens_volume(one.title)
        (worded if is_worded else bare).append(one)
    chapters = any(opens_chapter(one.title) for one in worded)
    found = worded if chapters else [*worded, *_numbered(bare)]
    yield from _without_contents(sorted(found, key=lambda heading: heading.start), len(text))


def _standing_alone(text: str) -> Iterator[Heading]:
    """Yield paragraphs that are worded as headings, or are a number alone."""
    for found in _PARAGRAPH.finditer(text):
        if len(found[0]) > _HEADING:
            continue
        lines = found[0].split("\n")
        title = " ".join(found[0].split())
        if opens_chapter(title):
            numbered = len(lines) == 1 or _NUMBER_ENDS.match(title) or len(lines[0]) <= _SHORT
            if numbered and not _SENTENCE.fullmatch(title):
                yield Heading(_with_title(title, text, found.end()), found.start(), 2)
        elif len(lines) == 1 and opens_volume(title) and title[-1] not in ",;":
            yield Heading(title, found.start(), 1)
        elif len(lines) == 1 and _BARE.fullmatch(title):
            yield Heading(title, found.start(), 2)


def _with_title(heading: str, text: str, after: int) -> str:
    """Return a chapter's heading with its title in capitals below, where it has one there."""
    below = _PARAGRAPH.search(text, after, after + 2 * _HEADING)
    title = "" if below is None or len(below[0]) > _HEADING // 2 else " ".join(below[0].split())
    if title.isupper() and not (opens_chapter(title) or opens_volume(title) or _BARE.match(title)):
        return f"{heading} {title}"
    return heading


def _numbered(bare: list[Heading]) -> list[Heading]:
    """Return the bare numbers that count up from one, from one again where they begin anew."""
    counted: list[Heading] = []
    last = 0
    for heading in bare:
        number = number_in(heading.title.rstrip("."))
        if number is not None and number in {1, last + 1}:
            counted.append(heading)
            last = number
    return counted if last > 1 else []


def _without_contents(headings: list[Heading], length: int) -> list[Heading]:
    """Leave out three or more headings in a row with nothing between them: a list of contents."""
    if not headings:
        return []
    ends = [*(heading.start for heading in headings[1:]), length]
    bare = [
        end - heading.start - len(heading.title) < _BODY and heading.level > 1
        for heading, end in zip(headings, ends, strict=True)
    ]
    kept: list[Heading] = []
    index = 0
    while index < len(headings):
        run = index
        listed = index
        while run < len(headings) and (bare[run] or headings[run].level == 1):
            run += 1
            # A volume's heading right above the next chapter's belongs to it, not to the list.
            listed = run if headings[run - 1].level > 1 else listed
        if listed == index < run:
            kept += headings[index:run]
            index = run
            continue
        run = listed
        if run - index >= _LISTED:
            index = run + (run < len(headings) and _goes_on(headings[index:run], headings[run]))
        else:
            kept += headings[index : run + 1]
            index = run + 1
    return kept


def _goes_on(listed: list[Heading], following: Heading) -> bool:
    """Tell whether a heading is the last of a list of contents, or the first of the book."""
    titles = {heading.title for heading in listed}
    return following.level > 1 and following.title not in titles
