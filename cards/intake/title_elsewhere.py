"""Title and author where no title page gives them: a file's name, the top of the pages, a title."""

import re

from cards.digest import MAX_TITLE
from cards.intake.dates import date_in
from cards.intake.generic_titles import is_generic
from cards.intake.imprint import is_publisher
from cards.intake.known_authors import is_known_author, is_known_surname
from cards.intake.title import (
    BRACKETED,
    COLON,
    NO_NAMES,
    YEAR,
    Named,
    author_line,
    is_full_name,
    is_name,
    may_open_title,
    named_in,
    says_by,
    without_by,
)
from cards.intake.wording import folded, unquoted

_ENGLISH_BY = re.compile(r"\sby\s", re.IGNORECASE)
_PAGE_NUMBER = re.compile(
    r"\b(?:page|seite|página|pagina|p\.|s\.)?\s*\d+(?:\s*(?:of|/|von|sur|de|di|van)\s*\d+)?\s*$"
    r"|\bpage\s*$",
    re.IGNORECASE,
)


def named_in_file_name(stem: str) -> Named:
    """Return the title and the author in a file's name, where the author mostly comes first.

    `Eliot - Middlemarch` is by Eliot; so is `Middlemarch - George Eliot`, by its full name.
    """
    left, found, right = (part.strip() for part in stem.partition(" - "))
    surname, _, rest = stem.partition(" ")
    if not found and stem.islower() and is_known_surname(surname) and _may_be_title(rest):
        return Named(rest, surname)
    if not found and BRACKETED.fullmatch(stem) and (named := named_nowhere_else(stem)) is not None:
        return named
    if not found or not left or not right or _ENGLISH_BY.search(stem):
        return named_in(stem)
    if not is_name(left) or may_open_title(left):
        return named_in(stem)
    plainly = is_full_name(right) and not is_full_name(left) and not may_open_title(right)
    behind = is_known_author(right) and not is_known_surname(left)
    if (plainly and not is_known_surname(left)) or behind:
        return Named(left, right)
    last, comma, first = left.partition(", ")
    return Named(right, f"{first} {last}" if comma and "," not in first else left)


def _may_be_title(words: str) -> bool:
    """Tell whether words behind a surname do not go on from it: `mill on the floss` is a title."""
    return bool(words) and words.split(maxsplit=1)[0] not in {"on", "of", "and", "in", "at", "or"}


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
        if (is_full_name(lines[0]) or says_by(lines[0])) and not is_full_name(lines[1]):
            return Named(named_in(lines[1]).title, without_by(lines[0])), said
    return named, lines[0]


def named_nowhere_else(title: str) -> Named | None:
    """Return the author whose name stands before a colon or in brackets, and the title, or None.

    `Silas Marner: The Weaver of Raveloe` looks the same, so this is for titles over which
    nothing else gives an author.
    """
    bracketed = BRACKETED.fullmatch(title)
    if bracketed is not None:
        inside = YEAR.sub("", bracketed["inside"]).strip(" ,")
        if is_name(inside) and folded(inside) not in NO_NAMES and not is_publisher(inside):
            return Named(unquoted(bracketed["title"]), inside)
    found = COLON.search(title[:MAX_TITLE])
    if found is None:
        return None
    left, right = title[: found.start()].strip(), unquoted(title[found.end() :].strip())
    if not right[:1].isupper() or not is_full_name(left) or may_open_title(left):
        return None
    return Named(right, left)
