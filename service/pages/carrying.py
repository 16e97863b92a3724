"""What the forms of a sitting carry on: when a cue was shown, and what its numbers stood for."""

from collections.abc import Mapping
from datetime import datetime
from hashlib import blake2b

from cards.answers import seconds_taken
from cards.kinds.base import Asked, Cue

_LONGEST_INSTANT = 40
"""Characters of an instant as `datetime.isoformat` writes it, and some to spare."""
_BY_NUMBER = {Asked.GAP, Asked.ORDER, Asked.BLANKS}
"""Ways of which an attempt says nothing without what was shown."""


def begun_at(form: Mapping[str, str]) -> datetime | None:
    """Return the instant the cue was shown, or None when the form does not say it."""
    written = form.get("begun", "")
    if len(written) > _LONGEST_INSTANT:
        return None
    try:
        begun = datetime.fromisoformat(written)
    except ValueError:
        return None
    return None if begun.tzinfo is None else begun


def taken_since(form: Mapping[str, str], now: datetime) -> int | None:
    """Return the seconds from the cue to now; None when they cannot be right."""
    begun = begun_at(form)
    return None if begun is None else seconds_taken(begun, now)


def sign_of(cue: Cue) -> str:
    """Return a sign of what the numbers of an attempt stand for; "" where they stand for nothing.

    An edit of the digest, or an answer given elsewhere, changes what is shown and so the sign.
    """
    if not _BY_NUMBER & set(cue.asked):
        return ""
    shown = "\x00".join([*(each.text for each in cue.landmarks), "\x01", *cue.pieces])
    return blake2b(shown.encode("utf-8", "replace"), digest_size=6).hexdigest()


def same_cue(form: Mapping[str, str], cue: Cue) -> bool:
    """Tell whether a cue is still what the reader was shown."""
    return form.get("shown", sign_of(cue)) == sign_of(cue)
