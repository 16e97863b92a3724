"""The facts of a book between a digest, which has an edition in words, and a bibliography."""

import re
import unicodedata
from dataclasses import dataclass

from stdnum import isbn as stdnum_isbn

from cards.digest import MAX_EDITION, MAX_PAGES, MAX_TITLE, Digest, folded
from cards.errors import InvalidBibliography

MAX_TEXT = 1024 * 1024
"""Characters of one bibliography: some three thousand books."""
MAX_BOOKS = 1_000
"""Books taken from one bibliography."""
_YEAR = re.compile(r"(?<!\d)(1[4-9]\d\d|20\d\d)(?!\d)")
_PUBLISHED = re.compile(r"(?P<publisher>[^,;]+?),? (?P<year>1[4-9]\d\d|20\d\d)")
_ORDINAL = re.compile(r"(\d{1,3})(?:st|nd|rd|th|\.)?", re.IGNORECASE)
_ISBN = re.compile(r"97[89][\d -]{10,14}|\d[\d -]{8,12}[\dXx]")
_PAGES = re.compile(r"\D{0,12}?(\d{1,5})(?:\s?(?:pp?\.?|pages|S\.|Seiten))?\.?", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Edition:
    """An edition in the fields of a bibliography; "" where it says nothing.

    Attributes:
        words: what fits no other field.
    """

    publisher: str = ""
    year: str = ""
    words: str = ""


def edition_of(digest: Digest) -> Edition:
    """Return the edition of a digest in fields: `Penguin, 1985` is a publisher and a year."""
    written = " ".join((digest.edition or "").split())
    if (found := _PUBLISHED.fullmatch(written)) is not None:
        return Edition(found["publisher"], found["year"])
    years = _YEAR.findall(written)
    if written in years:
        return Edition(year=written)
    return Edition(year=years[0] if len(years) == 1 else "", words=written)


def edition_in_words(number: str, publisher: str, year: str) -> str | None:
    """Return an edition in words from the fields of a bibliography."""
    said = [_numbered(number)] if number else []
    said += [part for part in (publisher, year) if part and part not in number]
    return ", ".join(said) or None


def checked_isbn(written: str) -> str | None:
    """Return the first ISBN in a field whose check digit holds, without its hyphens."""
    for found in _ISBN.finditer(written):
        number = str(stdnum_isbn.compact(found[0]))
        if stdnum_isbn.is_valid(number):
            return number
    return None


def shown_isbn(written: str) -> str:
    """Return an ISBN with its hyphens where its agency is known; a wrong one as written."""
    return str(stdnum_isbn.format(written)) if stdnum_isbn.is_valid(written) else written


def page_count(written: str) -> int | None:
    """Return a number of pages from a field, or None where it gives a span or nothing."""
    found = _PAGES.fullmatch(written.strip())
    number = int(found[1]) if found is not None else 0
    return number if 1 <= number <= MAX_PAGES else None


def year_in(written: str) -> str:
    """Return the first year in a field, or ""."""
    found = _YEAR.search(written)
    return "" if found is None else found[0]


def cleaned(text: str, where: str) -> str | None:
    """Return words of a bibliography fit for a digest, None where there are none.

    Raises:
        InvalidBibliography: they are longer than a digest keeps.
    """
    kept = "".join(
        " " if unicodedata.category(letter) in {"Cc", "Cs"} else letter for letter in text
    )
    words = " ".join(kept.replace("\ufffe", "").replace("\uffff", "").split())
    limit = MAX_EDITION if where == "edition" else MAX_TITLE
    if len(words) > limit:
        raise InvalidBibliography(
            f"The {where} of a book in this bibliography is {len(words)} characters long; at most "
            f"{limit} are kept. Shorten it there.",
            where="text",
        )
    return words or None


def key_of(digest: Digest, families: tuple[str, ...], year: str) -> str:
    """Return a key to cite a book by, of plain letters: `austen-persuasion-1817`."""
    title = [word for word in folded(digest.title).split() if word not in {"the", "a", "an"}]
    words = [*folded(families[0] if families else "").split()[-1:], *title[:1], year]
    return re.sub(r"[^a-z0-9-]", "", "-".join(filter(None, words))).strip("-") or "book"


def bounded(text: str) -> None:
    """Refuse a bibliography too large to be one reader's.

    Raises:
        InvalidBibliography: it is longer than `MAX_TEXT`.
    """
    if len(text) > MAX_TEXT:
        raise InvalidBibliography(
            f"This bibliography is {len(text)} characters long; at most {MAX_TEXT} are read. "
            "Hand over the books you mean in a smaller one.",
            where="text",
        )


def _numbered(number: str) -> str:
    found = _ORDINAL.fullmatch(number)
    if found is not None:
        count = int(found[1])
        ending = {1: "st", 2: "nd", 3: "rd"}.get(count % 10, "th")
        ending = "th" if count % 100 in {11, 12, 13} else ending
        return f"{count}{ending} edition"
    plain = number.isalpha() and number.isascii() and number.lower() not in _WHOLE
    return f"{number} edition" if plain and number.lower() in _SPELT else number


_SPELT = frozenset(
    "first second third fourth fifth sixth seventh eighth ninth tenth revised enlarged".split()
)
_WHOLE = frozenset({"edition", "paperback", "hardback"})
