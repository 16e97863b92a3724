"""Answers: the facts of what came back, and how well."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum
from hashlib import blake2b
from itertools import pairwise
from operator import attrgetter
from uuid import UUID

from cards.errors import InvalidAnswer

MAX_ATTEMPT = 20_000
"""Characters of an attempt that are kept: as long as the longest part of a digest."""


class Grade(StrEnum):
    """How well an item came back, from nothing to everything."""

    BLANK = "blank"
    HAZY = "hazy"
    CLEAR = "clear"
    VIVID = "vivid"


GRADES = tuple(Grade)
"""The four grades in order, the weakest first."""


@dataclass(frozen=True, slots=True)
class Answer:
    """One answer to one item: a fact, never changed once kept.

    Attributes:
        id: made by whoever recorded it.
        item_id: the item it answers.
        grade: the reader's own, which decides.
        answered_at: the instant it happened, aware, in UTC.
        day: the reader's day it happened on, fixed when it was recorded.
        attempt: what the reader wrote or chose, as text; may be empty.
        suggested: the grade the mark suggested, or None when none was shown.
        predicted: the probability of recall the model gave just before it, or
            None for the first answer to an item.
        seconds: from the cue to the grade, or None where nobody measured it.
        graded_first: whether it was graded before the mark was shown, so that the mark
            could not pull it.
        ticked: the numbers, from 1, of the ideas that came back by the reader's own word;
            None where they did not correct what was found.
    """

    id: UUID
    item_id: UUID
    grade: Grade
    answered_at: datetime
    day: date
    attempt: str = ""
    suggested: Grade | None = None
    predicted: float | None = None
    seconds: int | None = None
    graded_first: bool = False
    ticked: frozenset[int] | None = None

    def __post_init__(self) -> None:
        if self.answered_at.tzinfo is None:
            raise InvalidAnswer(
                "The time of an answer needs its time zone, as in 2026-03-01T21:40:00+01:00.",
                where="answered_at",
            )
        if len(self.attempt) > MAX_ATTEMPT:
            raise InvalidAnswer(
                f"What was answered is {len(self.attempt)} characters long; at most {MAX_ATTEMPT} "
                "are kept.",
                where="attempt",
            )


LONGEST = 600
"""Seconds from the cue to the grade that count as answering; beyond, the reader was elsewhere."""


def seconds_taken(begun: datetime, ended: datetime) -> int | None:
    """Return the whole seconds an answer took, or None when they cannot be right."""
    taken = round((ended - begun).total_seconds())
    return taken if 1 <= taken <= LONGEST else None


_ONE_IN = 10
"""One answer in so many is graded before its mark is shown."""


def graded_first(item_id: UUID, answers: int) -> bool:
    """Tell whether the next answer to an item is graded before its mark is shown.

    One in ten, by a hash of the item's id and the number of its answers, so that every
    device comes to the same and nobody can foresee it: how far reader and mark agree
    is measured where the mark had no pull. Self-grades run 11 to 20 points high (Rawson,
    Dunlosky & Sciartelli 2013, Educ. Psych. Review 25, 523–548).
    """
    seed = blake2b(
        item_id.bytes + answers.to_bytes(8, "big"), digest_size=8, person=b"graded first"
    ).digest()
    return int.from_bytes(seed, "big") % _ONE_IN == 0


_WHEN = attrgetter("answered_at")


def in_order(answers: Iterable[Answer]) -> list[Answer]:
    """Return answers in the order they happened, whatever order they arrived in.

    An answer that is there twice is returned once.
    """
    ordered = sorted(answers, key=_WHEN)
    if all(one.answered_at != other.answered_at for one, other in pairwise(ordered)):
        return ordered
    ordered.sort(key=lambda answer: (answer.answered_at, answer.id.bytes))
    return ordered[:1] + [
        answer
        for before, answer in pairwise(ordered)
        if answer.answered_at != before.answered_at or answer.id != before.id
    ]
