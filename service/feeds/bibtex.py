"""A book as a BibTeX entry, and the books a BibTeX file describes."""

import io
from collections.abc import Sequence

from pybtex.database import Entry, Person
from pybtex.database.input.bibtex import Parser, month_names
from pybtex.exceptions import PybtexError

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
from service.feeds.latex import from_latex, to_latex
from service.feeds.names import Name, line_of, names_in
from service.use_cases.records import BookFacts

_MAX_STRING = 200
"""Characters one `@string` may stand for: names of publishers and journals, no bombs."""
_MAX_DEPTH = 90
"""Braces within braces; more than the parser follows."""
_PAGE_FIELDS = ("pagetotal", "numpages", "totalpages", "pages")
_FIELDS = frozenset(
    "title subtitle author editor edition publisher year date isbn".split()
) | frozenset(_PAGE_FIELDS)
_MAX_FIELD = 10_000
"""Characters of one field that is read, commands and braces among them: twenty titles' worth."""
_MAX_SAID = 200
"""Characters of what the parser says that are repeated; it quotes the whole of a wrong name."""


def to_bibtex(digest: Digest) -> str:
    """Return the book of a digest as a BibTeX entry."""
    names = names_in(digest.author or "")
    edition = edition_of(digest)
    fields = {
        "title": digest.title,
        "publisher": edition.publisher,
        "year": edition.year,
        "edition": edition.words,
        "isbn": shown_isbn(digest.isbn) if digest.isbn else "",
        "pagetotal": str(digest.pages) if digest.pages else "",
    }
    lines = [f"  {key} = {{{to_latex(value)}}}" for key, value in fields.items() if value]
    if names:
        lines.insert(1, f"  author = {{{' and '.join(map(_written, names))}}}")
    key = key_of(digest, tuple(name.family for name in names), edition.year)
    return f"@book{{{key},\n" + ",\n".join(lines) + "\n}\n"


def from_bibtex(text: str) -> tuple[BookFacts, ...]:
    """Return the books a text in BibTeX describes, those with a title.

    Raises:
        InvalidBibliography: it is no BibTeX, beyond its bounds, or describes no book.
    """
    bounded(text)
    _check_depth(text)
    parser = _Parser(encoding="utf-8", macros=_Strings(month_names))
    parser.macros = _Strings(month_names)
    try:
        entries = parser.parse_stream(io.StringIO(text)).entries.values()
    except (PybtexError, RecursionError) as error:
        said = str(error).split("\n")[0].strip().rstrip(".")
        said = said if len(said) <= _MAX_SAID else f"{said[:_MAX_SAID]}…"
        raise InvalidBibliography(
            f"This is not BibTeX that can be read ({said}). Mend it there, or export it once more.",
            where="text",
        ) from error
    books = tuple(facts for entry in entries if (facts := _facts(entry)).title is not None)
    if not books:
        raise InvalidBibliography(
            "No book with a title was found in this BibTeX. Hand over an entry such as "
            "@book{key, title = {...}, author = {...}}.",
            where="text",
        )
    if len(books) > MAX_BOOKS:
        raise InvalidBibliography(
            f"This bibliography has {len(books)} books; at most {MAX_BOOKS} are read at once.",
            where="text",
        )
    return books


class _Parser(Parser):  # type: ignore[misc]
    """Reads the fields that are of a book, and refuses one too long before it is taken apart."""

    def process_entry(
        self, entry_type: str, key: str | None, fields: Sequence[tuple[str, list[str]]]
    ) -> None:
        known = [(name, parts) for name, parts in fields if name.lower() in _FIELDS]
        for name, parts in known:
            length = sum(map(len, parts))
            if length > _MAX_FIELD:
                raise InvalidBibliography(
                    f"The {name.lower()} of a book in this bibliography is {length} characters "
                    f"long; at most {_MAX_FIELD} are read. Shorten it there.",
                    where="text",
                )
        super().process_entry(entry_type, key, known)


class _Strings(dict[str, str]):
    """What `@string` defined, by names in any case, none of it long enough to breed."""

    def __init__(self, known: dict[str, str]) -> None:
        super().__init__((key.lower(), value) for key, value in known.items())

    def __getitem__(self, key: str) -> str:
        return super().__getitem__(key.lower())

    def __setitem__(self, key: str, value: str) -> None:
        if len(value) > _MAX_STRING:
            raise InvalidBibliography(
                f"The string “{key[:60]}” in this BibTeX stands for {len(value)} characters; at "
                f"most {_MAX_STRING} are read. Write the words out where they are used.",
                where="text",
            )
        super().__setitem__(key.lower(), value)


def _check_depth(text: str) -> None:
    depth = 0
    for sign in text:
        depth += {"{": 1, "}": -1}.get(sign, 0)
        if depth > _MAX_DEPTH:
            raise InvalidBibliography(
                f"This BibTeX has braces {depth} deep, which no bibliography needs. Hand over the "
                "entry alone.",
                where="text",
            )


def _facts(entry: Entry) -> BookFacts:
    fields = {key.lower(): from_latex(value) for key, value in entry.fields.items()}
    title = ": ".join(filter(None, (fields.get("title"), fields.get("subtitle"))))
    people = entry.persons.get("author") or entry.persons.get("editor") or []
    names = tuple(filter(None, map(_natural, people)))
    edition = edition_in_words(
        fields.get("edition", ""),
        fields.get("publisher", ""),
        year_in(fields.get("year") or fields.get("date") or ""),
    )
    pages = (page_count(fields[key]) for key in _PAGE_FIELDS if key in fields)
    return BookFacts(
        title=cleaned(title, "title"),
        author=cleaned(line_of(names) or "", "author"),
        edition=cleaned(edition or "", "edition"),
        isbn=checked_isbn(fields.get("isbn", "")),
        pages=next((count for count in pages if count is not None), None),
    )


def _natural(person: Person) -> str:
    family = from_latex(" ".join([*person.prelast_names, *person.last_names]))
    if family == "others" and not person.first_names:
        return ""
    given = from_latex(" ".join([*person.first_names, *person.middle_names]))
    return Name(family, given, from_latex(" ".join(person.lineage_names))).natural


def _written(name: Name) -> str:
    """Return a name as BibTeX takes it; one that is not in parts stands in braces of its own."""
    if not name.given:
        return f"{{{to_latex(name.family)}}}" if " " in name.family else to_latex(name.family)
    return ", ".join(to_latex(part) for part in (name.family, name.suffix, name.given) if part)
