"""A digest as the fields of a form, and the fields as a digest again.

Points, commitments and quotations are rows. A row is known by its key, its place in the
form as it was laid out; the number in it says where it is to stand. So a quotation keeps
the point it stands after while points change places.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from cards.digest import MAX_PARTS, Digest
from service.pages import fields

SPARE = 2
"""Empty rows offered beyond those a digest has."""
BLANK = {"points": 3, "commitments": 2, "quotations": 3}
"""Empty rows a digest is begun on."""
LISTS = ("points", "commitments", "quotations")
"""The parts that come in rows, in the digest's order."""
FACTS = ("title", "author", "edition", "isbn", "pages", "finished_on", "theme", "judgement")
"""The fields there is one of."""
ORIGINS = ("theme-source", "judgement-source")
"""The fields that say which words of a document the theme and the judgement came from."""


@dataclass(frozen=True, slots=True)
class Row:
    """One point, commitment or quotation as its fields hold it.

    Attributes:
        key: its place in the form as it was laid out, from 1.
        number: where it is to stand, as typed.
        text: its words; empty to leave it out.
        locator: where it stands in the book.
        after: of a quotation: "" when not known, "0" for before all points, else the
            key of the point's row.
        source: which words of a document it came from: `points 3`, or several of
            these parted by commas; "" when it was typed here.
    """

    key: int
    number: str
    text: str = ""
    locator: str = ""
    after: str = ""
    source: str = ""

    @property
    def holds(self) -> bool:
        """Whether anything is typed in it."""
        return bool(self.text.strip() or self.locator.strip())


@dataclass(frozen=True, slots=True)
class DigestForm:
    """All fields of the form, as typed."""

    facts: dict[str, str]
    rows: dict[str, tuple[Row, ...]] = field(default_factory=dict)

    def with_more(self, name: str) -> "DigestForm":
        """Return the form with one more empty row in a list, up to what a digest keeps."""
        rows = self.rows[name]
        if len(rows) >= MAX_PARTS + SPARE:
            return self
        key = len(rows) + 1
        return replace(self, rows={**self.rows, name: (*rows, Row(key, str(key)))})


def form_of(digest: Digest, spare: int = SPARE) -> DigestForm:
    """Lay a digest out as a form, each part saying which it was, with so many empty rows a list."""
    facts = {
        "title": digest.title,
        "author": digest.author or "",
        "edition": digest.edition or "",
        "isbn": digest.isbn or "",
        "pages": str(digest.pages or ""),
        "finished_on": digest.finished_on.isoformat() if digest.finished_on else "",
        "theme": digest.theme or "",
        "judgement": digest.judgement or "",
        "theme-source": "theme" if digest.theme else "",
        "judgement-source": "judgement" if digest.judgement else "",
    }
    points = [(point.text, point.locator or "", "") for point in digest.points]
    commitments = [(each.text, "", "") for each in digest.commitments]
    quotations = [
        (each.text, each.locator or "", "" if each.after is None else str(each.after))
        for each in digest.quotations
    ]
    laid = {"points": points, "commitments": commitments, "quotations": quotations}
    return DigestForm(facts, {name: _laid(name, parts, spare) for name, parts in laid.items()})


def _laid(name: str, parts: list[tuple[str, str, str]], spare: int) -> tuple[Row, ...]:
    rows = [Row(key, str(key), *part, source=f"{name} {key}") for key, part in enumerate(parts, 1)]
    keys = range(len(rows) + 1, len(rows) + 1 + spare)
    return (*rows, *(Row(key, str(key)) for key in keys))


def blank_form() -> DigestForm:
    """Return a form to begin a digest on."""
    return DigestForm(
        dict.fromkeys((*FACTS, *ORIGINS), ""),
        {name: tuple(Row(key, "") for key in range(1, BLANK[name] + 1)) for name in LISTS},
    )


def form_from(sent: Mapping[str, str]) -> DigestForm:
    """Return the form as it was sent."""
    return DigestForm(
        {name: fields.text(sent, name) for name in (*FACTS, *ORIGINS)},
        {name: tuple(_sent_rows(sent, name)) for name in LISTS},
    )


def _sent_rows(sent: Mapping[str, str], name: str) -> list[Row]:
    rows: list[Row] = []
    while len(rows) < MAX_PARTS + SPARE and f"{name}-{len(rows) + 1}-text" in sent:
        key = len(rows) + 1
        stem = f"{name}-{key}"
        rows.append(
            Row(
                key,
                fields.text(sent, f"{stem}-number").strip(),
                fields.text(sent, f"{stem}-text"),
                fields.text(sent, f"{stem}-locator"),
                fields.text(sent, f"{stem}-after").strip(),
                fields.text(sent, f"{stem}-source").strip(),
            )
        )
    return rows


def typed(form: DigestForm) -> dict[str, str]:
    """Return the fields of a form by their names, as `form_from` takes them; empty ones left out.

    The words of a row are there even when they are empty, for they say that there is a row.
    """
    found = {name: words for name, words in form.facts.items() if words}
    for name, rows in form.rows.items():
        for row in rows:
            stem = f"{name}-{row.key}"
            found[f"{stem}-text"] = row.text
            rest = {"locator": row.locator, "after": row.after, "source": row.source}
            if row.number != str(row.key):
                rest["number"] = row.number
            found |= {f"{stem}-{field}": words for field, words in rest.items() if words}
    return found


def lay(digest: Digest) -> dict[str, str]:
    """Return the fields of the form a digest is laid out as to be looked over."""
    return typed(form_of(digest, spare=0))
