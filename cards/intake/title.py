"""Title and author, from the top of a digest."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from cards.digest import MAX_TITLE
from cards.intake.blocks import Block, Shape
from cards.intake.dates import date_in
from cards.intake.imprint import is_imprint, names_makers
from cards.intake.wording import flowing, folded, unquoted

MAX_TITLE_LINE = 200
"""Characters in a paragraph that may be a title."""
TITLE_STYLES = frozenset({"title", "titel", "titre", "título", "titolo", "book title"})
"""Paragraph styles of word processors for a document's title, in lower case."""
_PROSE_WORDS = 14
_GENERIC = frozenset(
    folded(line)
    for line in (
        *(
            "digest",
            "my digest",
            "book digest",
            "a digest",
            "digest of a book",
            "notes",
            "my notes",
        ),
        *("reading notes", "book notes", "book report", "book", "the book", "about the book"),
        *("details", "book details", "lesenotizen", "notizen", "notes de lecture", "untitled"),
        *("document", "finished book", "a finished book"),
    )
)
_NO_NAMES = frozenset(
    "novel fiction essay essays poem poems verse play drama history biography memoir philosophy "
    "draft contents notes review finished read unfinished abridged english german french".split()
)
_STALE = re.compile(
    r"(?:document|dokument|untitled|unbenannt|sans titre|test)[\s\d]*$|microsoft word\b",
    re.IGNORECASE,
)
_PREFIX = re.compile(
    r"(?:a |my )?(?:book )?(?:digest|summary|notes|reading notes|book report|review)"
    r"(?: (?:of|on|from|for|about)\s+|\s*[:–—]\s*)(?=\S)",
    re.IGNORECASE,
)
_BY = re.compile(r",?\s+(?:by|von|par|di|de|por|door)\s+", re.IGNORECASE)
_LEADING_BY = re.compile(r"(?:written )?by:?\s+|von\s+|par\s+|door\s+", re.IGNORECASE)
_DASH = re.compile(r"\s+[–—-]\s+|\s*[|/·]\s+")
_PARTICLES = frozenset(
    "de von van der den la le du di da dos das del della des bin ibn al el y and e und et ter ten "
    "of the zu af av".split()
)
_ARTICLE = re.compile(
    r"(?:the|an?(?=\s\w\w)|der|die|das|ein|eine|les|une|los|las|il|gli|het)\s|l[’']", re.IGNORECASE
)
"""Articles a title may open with and a name does not, as it may with *la* or *de*."""
_BRACKETED = re.compile(r"(?P<title>[^()]{1,200})\s\((?P<inside>[^()]{3,80})\)")
_PAGE_NUMBER = re.compile(
    r"\b(?:page|seite|página|pagina|p\.|s\.)?\s*\d+(?:\s*(?:of|/|von|sur|de|di|van)\s*\d+)?\s*$"
    r"|\bpage\s*$",
    re.IGNORECASE,
)
_YEAR = re.compile(r",?\s*\b1?\d{3}\b|,?\s*\b20\d{2}\b")


@dataclass(frozen=True, slots=True)
class Named:
    """A title, and the author where the same words give one."""

    title: str
    author: str | None = None


def named_in(text: str) -> Named:
    """Return the title and the author in a title line: `Walden by Henry David Thoreau`."""
    text = _PREFIX.sub("", flowing(text).strip(" .*_#")).strip()
    text = unquoted(text) or text
    for found in reversed(list(_BY.finditer(text[:MAX_TITLE]))):
        title, author = text[: found.start()], text[found.end() :]
        english = found[0].strip(" ,").lower() == "by"
        full = len(author.split()) > 1 and author[0].isupper()
        if title and is_name(author) and (english or full):
            return Named(unquoted(title), author)
    parts = _DASH.split(text[:MAX_TITLE], maxsplit=1)
    if len(parts) == 2 and all(parts):
        return _of_pair(unquoted(parts[0].strip()), unquoted(parts[1].strip()), text)
    bracketed = _BRACKETED.fullmatch(text)
    if bracketed is not None:
        inside = _YEAR.sub("", bracketed["inside"]).strip(" ,")
        if is_name(inside) and len(inside.split()) > 1:
            return Named(unquoted(bracketed["title"]), inside)
    return _by_comma(text)


def named_in_file_name(stem: str) -> Named:
    """Return the title and the author in a file's name, where the author mostly comes first.

    `Eliot - Middlemarch` is by Eliot; so is `Middlemarch - George Eliot`, by its full name.
    """
    left, found, right = (part.strip() for part in stem.partition(" - "))
    if not found or not left or not right or _BY.search(stem):
        return named_in(stem)
    if not is_name(left) or _ARTICLE.match(left):
        return named_in(stem)
    if is_full_name(right) and not is_full_name(left) and not _ARTICLE.match(right):
        return Named(left, right)
    last, comma, first = left.partition(", ")
    return Named(right, f"{first} {last}" if comma and "," not in first else left)


def named_in_header(header: str) -> tuple[Named | None, str]:
    """Return the title and the author at the top of a document's pages, and the words they are.

    Page numbers, dates and words that say only that a digest follows give neither.
    """
    lines = []
    for line in re.split(r"[\n\t]|\s[|·]\s", header):
        words = _PAGE_NUMBER.sub("", line).strip(" -–—|·,")
        if any(map(str.isalpha, words)) and not is_generic(words) and date_in(words) is None:
            lines.append(words)
    if not lines:
        return None, ""
    said = "\n".join(lines[:2])
    named = named_in(lines[0])
    if named.author is None and len(lines) > 1:
        author = author_line(lines[1], right_under=True)
        if author is not None:
            return Named(named.title, author), said
        if (is_full_name(lines[0]) or _LEADING_BY.match(lines[0])) and not is_full_name(lines[1]):
            return Named(named_in(lines[1]).title, _LEADING_BY.sub("", lines[0])), said
    return named, lines[0]


def is_full_name(text: str) -> bool:
    """Tell whether a text looks like one person's name of two words or more."""
    joints = {"and", "the", "of", "und", "et", "y", "e", "en"}
    words = text.lower().split()
    return is_name(text) and len(words) > 1 and joints.isdisjoint(words)


def is_name(text: str) -> bool:
    """Tell whether a text looks like the name of one or several people."""
    words = text.replace(",", " ").replace("&", " ").replace(".", ". ").split()
    if not 1 <= len(words) <= 12 or len(text) > 120 or any(letter.isdigit() for letter in text):
        return False
    proper = [word for word in words if word.lower() not in _PARTICLES]
    return bool(proper) and all(word[0].isalpha() and not word[0].islower() for word in proper)


def author_line(text: str, *, right_under: bool = False) -> str | None:
    """Return the author a line under the title gives: `by X`, or a name alone.

    A name of one word (Plato) counts only `right_under` the title.
    """
    text = flowing(text).strip(" .,*_–—-()")
    found = _LEADING_BY.match(text)
    if found is not None and is_name(text[found.end() :]):
        return text[found.end() :]
    if is_imprint(text):
        return None
    least = 1 if right_under and folded(text) not in _NO_NAMES else 2
    return (
        text if is_name(text) and least <= len(text.split()) <= 6 and not text.isupper() else None
    )


def says_by(text: str) -> bool:
    """Tell whether a line gives an author in so many words: `by Jane Austen`."""
    text = flowing(text[:MAX_TITLE_LINE]).strip(" .,*_–—-()")
    found = _LEADING_BY.match(text)
    return found is not None and is_name(text[found.end() :])


def is_generic(text: str) -> bool:
    """Tell whether a heading says only that a digest follows."""
    return folded(text) in _GENERIC


def is_prose(text: str) -> bool:
    """Tell whether a paragraph is prose and no line of a title page."""
    return sum(any(map(str.isalnum, word)) for word in text.split()) >= _PROSE_WORDS


def worth_trusting(title: str | None) -> bool:
    """Tell whether a document's own title property was set by someone."""
    return title is not None and bool(title.strip()) and _STALE.match(title.strip()) is None


def title_block(front: Sequence[Block]) -> int | None:
    """Return the index of the block that is the title, or None.

    A paragraph in the style for titles comes first, then the first heading, then
    the first line short enough to be one.
    """
    for wanted in (_styled_title, _is_heading, _is_line):
        for index, block in enumerate(front):
            if wanted(block) and not is_generic(block.text):
                return index
    return None


def _styled_title(block: Block) -> bool:
    return block.style.lower() in TITLE_STYLES


def _is_heading(block: Block) -> bool:
    return block.shape is Shape.HEADING


def _is_line(block: Block) -> bool:
    return (
        block.shape is Shape.PARAGRAPH
        and len(block.text) <= MAX_TITLE_LINE
        and (block.strong or not is_prose(block.text))
        and _LEADING_BY.match(block.text) is None
        and not names_makers(block.text)
    )


def _of_pair(left: str, right: str, whole: str) -> Named:
    """Tell title and author apart on the two sides of a dash.

    The author is the side that looks like one person's full name; where both or
    neither do, the right one, if it can be a name at all.
    """
    if is_full_name(left) and not is_full_name(right):
        return Named(right, left)
    return Named(left, right) if is_name(right) and not _ARTICLE.match(right) else Named(whole)


def _by_comma(text: str) -> Named:
    title, found, author = text.rpartition(", ")
    if found and title and is_name(author) and 2 <= len(author.split()) <= 4:
        proper = [word for word in author.split() if word[0].isupper()]
        if len(proper) >= 2 and author.split()[0].lower() not in _PARTICLES:
            return Named(unquoted(title), author)
    return Named(unquoted(text))
