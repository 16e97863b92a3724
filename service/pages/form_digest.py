"""The digest a form describes, and what is wrong with a form that describes none."""

from collections.abc import Mapping
from dataclasses import replace

from cards.digest import MAX_PAGES, Commitment, Digest, Point, Quotation
from cards.errors import InvalidDigest
from cards.intake.isbn import compact, is_isbn
from service.pages import fields
from service.pages.digest_form import FACTS, LISTS, DigestForm, Row
from service.pages.fields import Fault, Faults


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
    facts, isbn = form.facts, None
    pages = fields.taken(
        faults, lambda: fields.whole(facts, "pages", "The number of pages", 1, MAX_PAGES)
    )
    finished_on = fields.taken(faults, lambda: fields.day(facts, "finished_on"))
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
        edition=fields.optional(facts, "edition"),
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
    return name if name in FACTS else "form"


def as_far_as_it_goes(form: DigestForm) -> Digest | None:
    """Return what of a form can be measured and advised on already, or None while nothing can.

    A title still to come is stood in for, and a fact that cannot be taken is left out.
    """
    try:
        return digest_from(form)
    except FormFaults as wrong:
        facts = {name: "" if name in wrong.faults else said for name, said in form.facts.items()}
        facts["title"] = facts["title"].strip() or _STAND_IN
    try:
        return digest_from(replace(form, facts=facts))
    except FormFaults:
        return None


def stems(form: DigestForm) -> dict[str, str]:
    """Return for each part of the digest a form describes, as `points 3`, the stem of its row."""
    found: dict[str, str] = {}
    for name in LISTS:
        for number, row in enumerate(_in_order(form, name, {}), 1):
            found[f"{name} {number}"] = f"{name}-{row.key}"
    return found
