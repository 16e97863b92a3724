"""A digest's form reshaped: parts moved, joined, split, turned into others, taken in.

Each function takes a form and returns another; rows are named by their list and key. A
quotation keeps the point it stands after through all of it. Rows in which nothing is typed
go to the end of their list, and all are numbered anew.
"""

from collections.abc import Sequence
from dataclasses import replace

from cards.intake.wording import unquoted
from service.pages.digest_form import LISTS, DigestForm, Row

_BLANK_LINE = "\n\n"


class CannotReshape(Exception):
    """A form that cannot be reshaped so.

    Attributes:
        field: the name of the field it is about.
        message: one sentence that says why, and what to do.
    """

    def __init__(self, field: str, message: str) -> None:
        super().__init__(message)
        self.field = field
        self.message = message


def tidied(form: DigestForm) -> DigestForm:
    """Return a form with the rows in which nothing is typed at the end, numbered from 1."""
    return _numbered(form, {name: list(form.rows[name]) for name in LISTS})


def counted(form: DigestForm) -> DigestForm:
    """Return a form whose rows keep their keys, each that holds something numbered from 1."""
    counts = {name: [row.key for row in form.rows[name] if row.holds] for name in LISTS}
    return replace(
        form,
        rows={
            name: tuple(
                replace(row, number=str(counts[name].index(row.key) + 1) if row.holds else "")
                for row in form.rows[name]
            )
            for name in LISTS
        },
    )


def moved(form: DigestForm, name: str, key: int, by: int) -> DigestForm:
    """Return a form with a part moved up (-1) or down (1) by one place; as it is at the end."""
    rows = _held(form, name)
    at = _place(rows, name, key)
    other = at + by
    if 0 <= other < len(rows):
        rows[at], rows[other] = rows[other], rows[at]
    return _numbered(form, {name: rows})


def joined(form: DigestForm, name: str, key: int) -> DigestForm:
    """Return a form with a part and the next one made one part.

    What stood after either of two points stands after the one they are now.

    Raises:
        CannotReshape: it is the last part.
    """
    rows = _held(form, name)
    at = _place(rows, name, key)
    if at + 1 >= len(rows):
        raise CannotReshape(
            f"{name}-{key}-text", "It is the last one, so there is no next one to join it with."
        )
    first, second = rows[at], rows[at + 1]
    one = replace(
        first,
        text=_together(first.text.rstrip(), second.text.lstrip(), " "),
        locator=_together(first.locator.strip(), second.locator.strip(), ", "),
        after=first.after or second.after,
        source=_sources(first, second),
    )
    rows[at : at + 2] = [one]
    return _numbered(form, {name: rows}, {second.key: str(first.key)} if name == "points" else {})


def split(form: DigestForm, name: str, key: int, at: int | None = None) -> DigestForm:
    """Return a form with a part made into several, in its place.

    What stood after a point stands after the last part of it; its locator stays with the
    first, for nothing says that it is the others' too.

    Args:
        form: the form.
        name: of the list.
        key: of the row.
        at: the character it is split before; None to split it at its blank lines.

    Raises:
        CannotReshape: there is nothing to either side of that place.
    """
    rows = _held(form, name)
    place = _place(rows, name, key)
    row = rows[place]
    cut = row.text.split(_BLANK_LINE) if at is None else [row.text[:at], row.text[at:]]
    texts = [text.strip() for text in cut if text.strip()]
    if len(texts) < 2:
        raise CannotReshape(
            f"{name}-{key}-text",
            "Type an empty line where it is to be split, then split it."
            if at is None
            else "Put the cursor where it is to be split: there are no words on one side of it.",
        )
    fresh = range(_NEW, _NEW + len(texts) - 1)
    parts = [replace(row, text=texts[0])]
    parts += [
        replace(row, key=new, text=text, locator="")
        for new, text in zip(fresh, texts[1:], strict=True)
    ]
    rows[place : place + 1] = parts
    last = {key: str(fresh[-1])} if name == "points" else {}
    return _numbered(form, {name: rows}, last)


def turned(form: DigestForm, name: str, key: int, into: str) -> DigestForm:
    """Return a form with a part of one list made a part of another.

    A point that becomes a quotation stands after the point before it, and so does what
    stood after the point: both are between the same two points as they were.
    """
    rows = _held(form, name)
    at = _place(rows, name, key)
    row = rows.pop(at)
    before = str(rows[at - 1].key) if at else "0"
    changed = replace(row, key=_NEW, after="")
    target = _held(form, into)
    place = len(target)
    if into == "quotations":
        changed = replace(changed, text=unquoted(row.text))
        if name == "points":
            changed = replace(changed, after=before)
            place = _place_after(target, [str(each.key) for each in form.rows["points"]], before)
    elif into == "commitments" and row.locator.strip():
        changed = replace(changed, text=f"{row.text.rstrip()} ({row.locator.strip()})", locator="")
    target.insert(place, changed)
    moved_to = {key: before} if name == "points" else {}
    return _numbered(form, {name: rows, into: target}, moved_to)


def taken_out(form: DigestForm, name: str, key: int) -> DigestForm:
    """Return a form without a part; what stood after a point stands after the one before it."""
    rows = _held(form, name)
    at = _place(rows, name, key)
    del rows[at]
    before = str(rows[at - 1].key) if at else "0"
    return _numbered(form, {name: rows}, {key: before} if name == "points" else {})


def taken_in(form: DigestForm, into: str, parts: Sequence[Row]) -> DigestForm:
    """Return a form with rows of words added at the end of a list."""
    fresh = [replace(part, key=_NEW + number) for number, part in enumerate(parts)]
    return _numbered(form, {into: [*_held(form, into), *fresh]})


def taken_in_words(form: DigestForm, name: str, words: str, source: str) -> DigestForm:
    """Return a form with words added to the theme or the judgement, on a line of their own."""
    facts = form.facts
    added = {
        name: _together(facts[name].rstrip(), words.strip(), "\n"),
        f"{name}-source": _together(facts[f"{name}-source"], source, ","),
    }
    return tidied(replace(form, facts={**facts, **added}))


_NEW = 1_000_000
"""Keys from here on are of rows just made: no form has so many."""


def _held(form: DigestForm, name: str) -> list[Row]:
    return [row for row in form.rows[name] if row.holds]


def _place(rows: Sequence[Row], name: str, key: int) -> int:
    for at, row in enumerate(rows):
        if row.key == key:
            return at
    raise CannotReshape("form", f"There is nothing in this place among the {name}.")


def _place_after(quotations: Sequence[Row], points: Sequence[str], before: str) -> int:
    """Return where among the quotations one belongs that stands after a point."""
    order = {"0": 0} | {key: place for place, key in enumerate(points, 1)}
    stands = [at for at, row in enumerate(quotations) if row.after in order]
    earlier = [at for at in stands if order[quotations[at].after] <= order[before]]
    if earlier:
        return earlier[-1] + 1
    return stands[0] if stands else len(quotations)


def _numbered(
    form: DigestForm, changed: dict[str, list[Row]], stands: dict[int, str] | None = None
) -> DigestForm:
    """Return a form with some lists replaced, rows numbered anew, quotations with their points.

    Args:
        form: as it was.
        changed: the lists replaced, by name.
        stands: for points that are gone, or split, the key of the one to stand after.
    """
    rows = {
        name: [
            *(row for row in changed.get(name, form.rows[name]) if row.holds),
            *(row for row in form.rows[name] if not row.holds),
        ]
        for name in LISTS
    }
    places = {str(row.key): str(place) for place, row in enumerate(rows["points"], 1)}
    places["0"] = "0"
    instead = {str(key): places[point] for key, point in (stands or {}).items()}
    places |= instead
    return replace(
        form,
        rows={
            name: tuple(
                replace(row, key=place, number="", after=places.get(row.after, ""))
                for place, row in enumerate(rows[name], 1)
            )
            for name in LISTS
        },
    )


def _together(first: str, second: str, between: str) -> str:
    return between.join(filter(None, (first, second)))


def _sources(*rows: Row) -> str:
    said = [each for row in rows for each in row.source.split(",") if each]
    return ",".join(dict.fromkeys(said))
