"""What a button of a draft's form asks for: `up points-3`, `take left-2 points`, `keep`."""

import re
from collections.abc import Mapping
from dataclasses import dataclass

from service.pages import reshaping
from service.pages.digest_form import LISTS, DigestForm
from service.pages.reshaping import CannotReshape
from service.pages.taking_in import rows_of

_ROW = re.compile(
    rf"(?P<what>up|down|join|split|out|turn) (?P<list>{'|'.join(LISTS)})-(?P<key>\d{{1,4}})"
    rf"(?: (?P<into>{'|'.join(LISTS)}))?",
    re.ASCII,
)
_TAKE = re.compile(
    rf"take (?P<source>(?:left|theme|judgement|{'|'.join(LISTS)})(?:-\d{{1,5}})?)"
    rf" (?P<into>theme|judgement|{'|'.join(LISTS)})",
    re.ASCII,
)


@dataclass(frozen=True, slots=True)
class Reshaped:
    """A form reshaped, and the field the reader goes on in."""

    form: DigestForm
    at: str


def carried_out(
    form: DigestForm, order: str, words: Mapping[str, str], cursor: int | None
) -> Reshaped | None:
    """Return a form reshaped as a button asks, or None when the button asks for nothing such.

    Args:
        form: as it was sent.
        order: the button's value.
        words: the words of the document that are left, by their source.
        cursor: the character of the part before which it is to be split, or None.

    Raises:
        CannotReshape: it cannot be done with this form.
    """
    name = order.removeprefix("more ")
    if order.startswith("more ") and name in LISTS:
        more = form.with_more(name)
        return Reshaped(more, f"{name}-{more.rows[name][-1].key}-text")
    if take := _TAKE.fullmatch(order):
        return _taken(form, take["source"].replace("-", " "), take["into"], words)
    if asked := _ROW.fullmatch(order):
        return _reshaped(form, asked, cursor)
    return None


def _reshaped(form: DigestForm, asked: re.Match[str], cursor: int | None) -> Reshaped | None:
    what, name, key, into = asked["what"], asked["list"], int(asked["key"]), asked["into"]
    form = reshaping.counted(form)
    at = next((int(row.number or 1) for row in form.rows[name] if row.key == key), 1)
    match what:
        case "up" | "down":
            by = -1 if what == "up" else 1
            changed = reshaping.moved(form, name, key, by)
            at = min(max(1, at + by), _held(changed, name))
        case "join":
            changed = reshaping.joined(form, name, key)
        case "split":
            changed = reshaping.split(form, name, key, cursor)
            at += 1
        case "out":
            changed = reshaping.taken_out(form, name, key)
            at = min(at, _held(changed, name))
        case "turn" if into and into != name:
            changed = reshaping.turned(form, name, key, into)
            before = {row.source + row.text for row in form.rows[into]}
            fresh = (row for row in changed.rows[into] if row.source + row.text not in before)
            row = next(fresh, changed.rows[into][0])
            return Reshaped(changed, f"{into}-{row.key}-text")
        case _:
            return None
    return Reshaped(changed, f"{name}-{at}-text" if at else f"more-{name}")


def _taken(form: DigestForm, source: str, into: str, words: Mapping[str, str]) -> Reshaped | None:
    if source not in words:
        raise CannotReshape("form", "These words were taken in already.")
    if into not in LISTS:
        return Reshaped(reshaping.taken_in_words(form, into, words[source], source), into)
    changed = reshaping.taken_in(form, into, rows_of(words[source], into, source))
    return Reshaped(changed, f"{into}-{_held(changed, into)}-text")


def _held(form: DigestForm, name: str) -> int:
    """Return how many rows of a list hold something; they are its first."""
    return sum(row.holds for row in form.rows[name])
