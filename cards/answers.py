"""Answers: the facts of what came back, and how well."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum
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
    """

    id: UUID
    item_id: UUID
    grade: Grade
    answered_at: datetime
    day: date
    attempt: str = ""
    suggested: Grade | None = None
    predicted: float | None = None

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
