"""A digest as the fields of a form, and the fields as a digest again.

Points, commitments and quotations are rows. A row is known by its key, its place in the
form as it was laid out; the number in it says where it is to stand. So a quotation keeps
the point it stands after while points change places.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from cards.digest import (
    MAX_PAGES,
    MAX_PARTS,
    Commitment,
    Digest,
    Point,
    Quotation,
)
from cards.errors import InvalidDigest
from cards.intake.isbn import compact, is_isbn
from service.pages import fields
from service.pages.fields import Fault, Faults

SPARE = 2
"""Empty rows offered beyond those a digest has."""
LISTS = ("points", "commitments", "quotations")
"""The parts that come in rows, in the digest's order."""
_FACTS = ("title", "author", "isbn", "pages", "finished_on", "theme", "judgement")


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
    """

    key: int
    number: str
    text: str = ""
    locator: str = ""
    after: str = ""


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


def form_of(digest: Digest) -> DigestForm:
    """Lay a digest out as a form."""
    facts = {
        "title": digest.title,
        "author": digest.author or "",
        "isbn": digest.isbn or "",
        "pages": str(digest.pages or ""),
        "finished_on": digest.finished_on.isoformat() if digest.finished_on else "",
        "theme": digest.theme or "",
        "judgement": digest.judgement or "",
    }
    points = [(point.text, point.locator or "", "") for point in digest.points]
    commitments = [(each.text, "", "") for each in digest.commitments]
    quotations = [
        (each.text, each.locator or "", "" if each.after is None else str(each.after))
        for each in digest.quotations
    ]
    return DigestForm(
        facts,
        {
            "points": _laid(points),
            "commitments": _laid(commitments),
            "quotations": _laid(quotations),
        },
    )


def _laid(parts: list[tuple[str, str, str]]) -> tuple[Row, ...]:
    parts = [*parts, *[("", "", "")] * SPARE]
    return tuple(Row(key, str(key), *part) for key, part in enumerate(parts, 1))


def form_from(sent: Mapping[str, str]) -> DigestForm:
    """Return the form as it was sent."""
    return DigestForm(
        {name: fields.text(sent, name) for name in _FACTS},
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
            )
        )
    return rows


class FormFaults(Exception):
    """What is wrong with a form, by field; "form" for what is about no single one."""

    def __init__(self, faults: Faults) -> None:
        super().__init__("the form has faults")
        self.faults = faults


def digest_from(form: DigestForm) -> Digest:
    """Return the digest a form describes.

    Raises:
        FormFaults: a field cannot be taken, or the digest breaks a rule of digests.
    """
    faults: Faults = {}
    held = {name: _in_order(form, name, faults) for name in LISTS}
    numbers = {str(row.key): number for number, row in enumerate(held["points"], 1)}
    numbers["0"] = 0
    try:
        facts = _facts(form, faults)
        if faults:
            raise FormFaults(faults)
        return replace(
            facts,
            points=tuple(Point(row.text.strip(), _locator(row)) for row in held["points"]),
            commitments=tuple(Commitment(row.text.strip()) for row in held["commitments"]),
            quotations=tuple(
                Quotation(row.text.strip(), _locator(row), numbers.get(row.after))
                for row in held["quotations"]
            ),
            theme=form.facts["theme"].strip() or None,
            judgement=form.facts["judgement"].strip() or None,
        )
    except InvalidDigest as refusal:
        raise FormFaults({_field(refusal.where, held): refusal.message}) from refusal


def _in_order(form: DigestForm, name: str, faults: Faults) -> list[Row]:
    """Return the rows that hold words, by the numbers typed; ties in the order they were laid."""
    placed: list[tuple[int, int, Row]] = []
    for row in form.rows[name]:
        if not row.text.strip():
            continue
        number = f"{name}-{row.key}-number"
        try:
            stands = fields.whole({number: row.number}, number, "A place", 0, 9999)
        except Fault as fault:
            faults[number] = fault.message
            continue
        placed.append((row.key if stands is None else stands, row.key, row))
    return [row for *_, row in sorted(placed, key=lambda each: each[:2])]


_STAND_IN = "."
"""A theme for a digest whose parts are still to come: it must hold at least one."""


def _facts(form: DigestForm, faults: Faults) -> Digest:
    """Return a digest with its facts alone, its theme a stand-in."""
    facts, pages, finished_on, isbn = form.facts, None, None, None
    try:
        pages = fields.whole(facts, "pages", "The number of pages", 1, MAX_PAGES)
    except Fault as fault:
        faults[fault.field] = fault.message
    try:
        finished_on = fields.day(facts, "finished_on")
    except Fault as fault:
        faults[fault.field] = fault.message
    written = fields.optional(facts, "isbn")
    if written is not None:
        isbn = compact(written)
        if not is_isbn(written):
            faults["isbn"] = "This is no ISBN: its digits do not agree with its check digit."
    title = facts["title"].strip()
    if not title:
        faults["title"] = "A digest needs the title of its book."
    return Digest(
        title=title or _STAND_IN,
        author=fields.optional(facts, "author"),
        isbn=isbn,
        pages=pages,
        finished_on=finished_on,
        theme=_STAND_IN,
    )


def _locator(row: Row) -> str | None:
    return row.locator.strip() or None


def _field(where: str | None, held: Mapping[str, list[Row]]) -> str:
    """Return the field a refusal is about: `points 3` is the third point's row."""
    name, _, number = (where or "").partition(" ")
    if name in held and number.isdecimal():
        return f"{name}-{held[name][int(number) - 1].key}-text"
    return name if name in _FACTS else "form"
