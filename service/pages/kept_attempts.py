"""From the text of a kept attempt back to what was given, where that can be shown now."""

import re
from uuid import UUID

from cards.kinds.base import Asked, Attempt, Cue

_PLACE = re.compile(
    r"after (?P<gap>\d{1,9})|chapter (?P<chapter>\d{1,9})"
    r"|page (?P<page>\d{1,9})(?P<unseen>, points out of sight)?",
    re.ASCII,
)
"""A place as `Attempt.as_text` writes it."""
_ORDER = re.compile(r"order (?P<numbers>\d{1,9}(?:, \d{1,9})*)", re.ASCII)
_BETWEEN_BLANKS = " / "
_NO_WORD = "…"


def attempt_kept(text: str, cue: Cue, ticked: frozenset[int] | None) -> Attempt | None:
    """Return the attempt a text stands for, or None when its cue does not show it any more."""
    if not text.strip():
        return Attempt(ticked=ticked)
    if Asked.WORDS in cue.asked:
        return Attempt(words=text, ticked=ticked)
    if Asked.BLANKS in cue.asked:
        return _blanks(text, cue)
    if Asked.BOOK in cue.asked:
        return _book(text, cue)
    return _order(text) if Asked.ORDER in cue.asked else _place(text, cue)


def _place(text: str, cue: Cue) -> Attempt | None:
    said = _PLACE.fullmatch(text)
    if said is None:
        return None
    if said["gap"]:
        return Attempt(gap=int(said["gap"])) if cue.landmarks else None
    if said["chapter"]:
        return Attempt(chapter=int(said["chapter"]))
    return Attempt(page=int(said["page"]), landmarks_seen=not said["unseen"])


def _order(text: str) -> Attempt | None:
    said = _ORDER.fullmatch(text)
    return None if said is None else Attempt(order=tuple(map(int, said["numbers"].split(", "))))


def _blanks(text: str, cue: Cue) -> Attempt | None:
    words = text.split(_BETWEEN_BLANKS)
    if len(words) != len(cue.pieces) - 1:
        return None
    return Attempt(blanks=tuple("" if word == _NO_WORD else word for word in words))


def _book(text: str, cue: Cue) -> Attempt | None:
    chosen: UUID | None = next((each.id for each in cue.choices if each.title == text), None)
    return None if chosen is None else Attempt(book=chosen)
