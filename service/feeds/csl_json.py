"""A book as CSL-JSON, and the books a CSL-JSON file describes.

The shape is that of `csl-data.json` in citation-style-language/schema.
"""

import json
from collections.abc import Iterator, Mapping
from typing import Any

from cards.digest import Digest
from cards.errors import InvalidBibliography
from service.feeds.book_facts import (
    MAX_BOOKS,
    bounded,
    checked_isbn,
    cleaned,
    edition_in_words,
    edition_of,
    key_of,
    page_count,
    shown_isbn,
    year_in,
)
from service.feeds.names import Name, line_of, names_in
from service.use_cases.records import BookFacts


def to_csl_json(digest: Digest) -> str:
    """Return the book of a digest as CSL-JSON, an array of one item."""
    names = names_in(digest.author or "")
    edition = edition_of(digest)
    item: dict[str, Any] = {
        "id": key_of(digest, tuple(name.family for name in names), edition.year),
        "type": "book",
        "title": " ".join(digest.title.split()),
        "author": [_written(name) for name in names],
        "publisher": edition.publisher,
        "issued": {"date-parts": [[int(edition.year)]]} if edition.year else None,
        "edition": edition.words,
        "ISBN": shown_isbn(digest.isbn) if digest.isbn else "",
        "number-of-pages": digest.pages,
    }
    kept = {key: value for key, value in item.items() if value}
    return json.dumps([kept], ensure_ascii=False, indent=2) + "\n"


def from_csl_json(text: str) -> tuple[BookFacts, ...]:
    """Return the books a text in CSL-JSON describes, those with a title.

    Raises:
        InvalidBibliography: it is no CSL-JSON, beyond its bounds, or describes no book.
    """
    bounded(text)
    try:
        found = json.loads(text)
    except json.JSONDecodeError as error:
        raise _refused(f"it is no JSON from line {error.lineno} on") from error
    except (ValueError, RecursionError) as error:
        raise _refused("it is no JSON that a bibliography can be written in") from error
    items = found if isinstance(found, list) else [found]
    if not all(isinstance(item, dict) for item in items):
        raise _refused("it is not a list of items")
    if len(items) > MAX_BOOKS:
        raise _refused(f"it has {len(items)} items, and at most {MAX_BOOKS} are read at once")
    books = tuple(facts for item in items if (facts := _facts(item)).title is not None)
    if not books:
        raise _refused("no item in it has a title")
    return books


def _refused(why: str) -> InvalidBibliography:
    return InvalidBibliography(
        f"This is not CSL-JSON that can be read: {why}. Mend it there, or export it once more.",
        where="text",
    )


def _facts(item: Mapping[str, Any]) -> BookFacts:
    people = item.get("author") or item.get("editor")
    names = tuple(_names(people if isinstance(people, list) else []))
    edition = edition_in_words(
        _words(item.get("edition")), _words(item.get("publisher")), _year(item.get("issued"))
    )
    return BookFacts(
        title=cleaned(_words(item.get("title")), "title"),
        author=cleaned(line_of(names) or "", "author"),
        edition=cleaned(edition or "", "edition"),
        isbn=checked_isbn(_words(item.get("ISBN"))),
        pages=page_count(_words(item.get("number-of-pages"))),
    )


def _words(value: object) -> str:
    if isinstance(value, str):
        return " ".join(value.split())
    return str(value) if isinstance(value, int) and not isinstance(value, bool) else ""


def _names(people: list[Any]) -> Iterator[str]:
    for person in people:
        if not isinstance(person, dict):
            continue
        parts = ("non-dropping-particle", "dropping-particle", "family")
        family = " ".join(filter(None, (_words(person.get(part)) for part in parts)))
        said = _words(person.get("literal"))
        name = Name(family, _words(person.get("given")), _words(person.get("suffix"))).natural
        if said or name:
            yield said or name


def _year(issued: object) -> str:
    if isinstance(issued, dict):
        parts = issued.get("date-parts")
        if isinstance(parts, list) and parts and isinstance(parts[0], list) and parts[0]:
            return year_in(_words(parts[0][0]))
        said = (_words(issued.get(key)) for key in ("raw", "literal", "edtf"))
        return next(filter(None, map(year_in, said)), "")
    return year_in(_words(issued))


def _written(name: Name) -> dict[str, str]:
    if not name.given:
        return {"literal": name.family}
    parts = {"family": name.family, "given": name.given, "suffix": name.suffix}
    return {key: value for key, value in parts.items() if value}
