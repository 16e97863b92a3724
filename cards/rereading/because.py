"""A reason to open a book again: what it is about, in a sentence with its figures."""

from dataclasses import dataclass
from enum import StrEnum
from uuid import UUID


class Reason(StrEnum):
    """Why a book is worth opening again, what weighs most first."""

    STALLED = "stalled"
    THEME = "theme"
    PLACES = "places"
    RETENTION = "retention"
    YEAR = "year"


WORTH = {
    Reason.STALLED: 5,
    Reason.THEME: 3,
    Reason.PLACES: 1,
    Reason.RETENTION: 1,
    Reason.YEAR: 2,
}
"""What each counts for, our own convention: a place or an item that came back blank counts 1
each; the theme carries the whole book; what a book asks of a life is what it is kept for."""


@dataclass(frozen=True, slots=True)
class Because:
    """One reason a book is on the list.

    Attributes:
        reason: which.
        sentence: why, with the figures, as said to the reader.
        parts: ids of the parts concerned, in the digest's order.
        items: ids of the items concerned, asked afresh once the book was read again.
        around: ids of the points and quotations whose pages are to be read.
        threads: ids of points that did not come back from the one before.
        named: pages the words of a commitment name themselves.
        worth: what it counts for.
        caution: to be shown with it where a commitment touches health, money or the law.
    """

    reason: Reason
    sentence: str
    parts: tuple[UUID, ...] = ()
    items: tuple[UUID, ...] = ()
    around: tuple[UUID, ...] = ()
    threads: tuple[UUID, ...] = ()
    named: tuple[tuple[int, int], ...] = ()
    worth: float = 0.0
    caution: str | None = None
