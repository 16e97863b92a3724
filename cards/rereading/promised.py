"""A stalled commitment as a reason to open its book, and where in the book it comes from."""

import re
from collections.abc import Iterator
from datetime import date, timedelta

from cards.cautions import caution
from cards.commitments import Pace
from cards.commitments.telling import told
from cards.items import item_id
from cards.kinds.base import KindName
from cards.kinds.words import stems
from cards.parts import Part, PartKind
from cards.rereading.because import WORTH, Because, Reason
from cards.rereading.pages import pages_of
from cards.rereading.record import BookRecord

QUIET = timedelta(days=28)
"""So long after a re-reading a commitment still stalled does not call for another: the longest
window a commitment is judged by that says nothing of its measure (design)."""
_FEWEST_SHARED = 2
"""Content words a commitment shares with what it is taken to come from."""
_LONGEST = 500
"""Characters of a text that are compared."""
_SHOWN = 90
"""Characters of a commitment that are said again."""
_IN_BRACKETS = re.compile(r"\(([^()]{1,60})\)")


def stalled(record: BookRecord, day: date) -> Iterator[Because]:
    """Yield a reason for each commitment of the book that is stalled."""
    read = record.last_reread
    if read is not None and day - read.day < QUIET:
        return
    asked = {each.item.id for each in record.asked}
    for part in record.digest.held(PartKind.COMMITMENT):
        stand = record.stands.get(part.id)
        if stand is None or stand.pace is not Pace.STALLED:
            continue
        restated = item_id(part.id, KindName.RESTATE)
        named = _named(part)
        yield Because(
            Reason.STALLED,
            f"“{_short(part.text)}” is stalled. {told(stand)}",
            parts=(part.id,),
            items=(restated,) if restated in asked else (),
            around=() if named else tuple(each.id for each in _comes_from(record, part)),
            named=named,
            worth=WORTH[Reason.STALLED],
            caution=caution(part.text),
        )


def _short(text: str) -> str:
    text = " ".join(text.split()).rstrip(".")
    return text if len(text) <= _SHOWN else text[: _SHOWN - 1].rstrip() + "…"


def _named(part: Part) -> tuple[tuple[int, int], ...]:
    """Return the pages the commitment's own words name in brackets: `(p. 54)`."""
    found = (pages_of(each) for each in _IN_BRACKETS.findall(part.text[:_LONGEST]))
    return tuple(pages for pages in found if pages is not None)


def _comes_from(record: BookRecord, part: Part) -> list[Part]:
    """Return the points and quotations a commitment shares most words with.

    Where nothing says what it comes from, all the quotations, which the reader kept for being
    worth it; without any, the points.
    """
    points, quotations = (record.digest.held(kind) for kind in (PartKind.POINT, PartKind.QUOTATION))
    words = stems(part.text[:_LONGEST])
    shared = {each: len(words & stems(each.text[:_LONGEST])) for each in (*points, *quotations)}
    most = max(shared.values(), default=0)
    if most >= _FEWEST_SHARED:
        return [each for each, count in shared.items() if count == most]
    return list(quotations or points)
