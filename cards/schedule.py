"""From the answers to an item to its memory, and the day it is due next.

The memory model is FSRS-6 (Ye, Su & Cao 2022, doi 10.1145/3534678.3539081) as the
`fsrs` package computes it. Its minute-scale steps and its fuzzing are off. It counts
whole spans of 24 hours between UTC instants; the instants handed to it are midnights
that stand for the reader's days, so that it counts those instead.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from functools import cached_property, lru_cache
from hashlib import blake2b
from uuid import UUID

from fsrs import Card, Rating, Scheduler, State
from fsrs.scheduler import DEFAULT_PARAMETERS

from cards.answers import Answer, Grade, in_order
from cards.errors import InvalidPreference
from cards.parts import Care

DEFAULT_WEIGHTS: tuple[float, ...] = tuple(DEFAULT_PARAMETERS)
"""The 21 published default weights of FSRS-6: other people's memories, a starting point."""

MAX_INTERVAL = 36_500
"""Days; the published ceiling, a hundred years."""

TARGET = 0.9
"""Retention aimed for unless the reader says otherwise."""
LOWEST_TARGET, HIGHEST_TARGET = 0.7, 0.97
"""Below, more is forgotten than kept up; above, the minutes a day grow without bound."""


def aimed(target: float, care: Care) -> float:
    """Return the retention aimed for in a book, from the reader's own target and its care.

    Our own convention: a book kept close is forgotten half as often as the reader bears,
    up to the highest target; one that rests is sampled now and then, at the lowest, which
    under the published weights is nine times as rarely as at 0.9.
    """
    match care:
        case Care.CLOSE:
            return max(target, min(HIGHEST_TARGET, 1 - (1 - target) / 2))
        case Care.STEADY:
            return target
        case Care.RESTING:
            return LOWEST_TARGET


_EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
_RATING = {
    Grade.BLANK: Rating.Again,
    Grade.HAZY: Rating.Hard,
    Grade.CLEAR: Rating.Good,
    Grade.VIVID: Rating.Easy,
}


@dataclass(frozen=True, slots=True)
class Memory:
    """What the answers to one item come to.

    Attributes:
        stability: days after which recall has fallen to 0.9; above 0.
        difficulty: 1 (easiest) to 10.
        first_day, last_day: the reader's days of the first and the last answer.
        last_grade: the grade of the last answer.
        answers: how many answers it is the fold of.
        due_on: the reader's day on which it is due next, already spread.
    """

    stability: float
    difficulty: float
    first_day: date
    last_day: date
    last_grade: Grade
    answers: int
    due_on: date

    @property
    def call_on(self) -> date:
        """The first day on which a sitting asks it: at once when it came back blank."""
        return self.last_day if self.last_grade is Grade.BLANK else self.due_on


@dataclass(frozen=True)
class Schedule:
    """The memory model with its weights, aiming for a retention.

    Attributes:
        target: retention aimed for, from 0.7 to 0.97.
        weights: the 21 weights of FSRS-6.

    Raises:
        InvalidPreference: the target is outside its range.
    """

    target: float = TARGET
    weights: tuple[float, ...] = DEFAULT_WEIGHTS

    def __post_init__(self) -> None:
        if not LOWEST_TARGET <= self.target <= HIGHEST_TARGET:
            raise InvalidPreference(
                f"Retention can be aimed at from {LOWEST_TARGET} to {HIGHEST_TARGET}, "
                f"not {self.target}.",
                where="target",
            )

    @cached_property
    def _model(self) -> Scheduler:
        return _model(self.target, self.weights)

    def fold(self, item_id: UUID, answers: Iterable[Answer]) -> Memory | None:
        """Fold the answers to one item, in the order they happened, to its memory.

        None without answers. Where the reader travelled and a later answer bears an
        earlier date, it counts as given on the day of the one before it.
        """
        ordered = in_order(answers)
        if not ordered:
            return None
        day = first = ordered[0].day
        # Without an id of its own the card would sleep, without a due day read the clock.
        card = Card(card_id=0, due=_EPOCH)
        review = self._model.review_card
        for answer in ordered:
            day = max(day, answer.day)
            card, _ = review(card, _RATING[answer.grade], _instant(day))
        return self._memory(item_id, card, first, day, ordered)

    def _memory(
        self, item_id: UUID, card: Card, first: date, last: date, ordered: Sequence[Answer]
    ) -> Memory:
        if card.stability is None or card.difficulty is None or card.last_review is None:
            raise AssertionError("an answered card has a memory and a day")
        interval = (card.due - card.last_review).days
        return Memory(
            stability=card.stability,
            difficulty=card.difficulty,
            first_day=first,
            last_day=last,
            last_grade=ordered[-1].grade,
            answers=len(ordered),
            due_on=last + timedelta(days=spread(interval, item_id, len(ordered))),
        )

    def recall(self, memory: Memory, day: date) -> float:
        """Return the probability, 0 to 1, that an item is recalled on a day of the reader's."""
        card = Card(
            card_id=0,
            state=State.Review,
            stability=memory.stability,
            difficulty=memory.difficulty,
            due=_instant(memory.due_on),
            last_review=_instant(memory.last_day),
        )
        return self._model.get_card_retrievability(card, _instant(day))

    def predict(self, answer: Answer, others: Iterable[Answer]) -> float | None:
        """Return the recall predicted just before an answer, from those that happened earlier.

        None when there is none. `others` are answers to the same item, later ones too.
        """
        ordered = in_order([*others, answer])
        memory = self.fold(answer.item_id, ordered[: ordered.index(answer)])
        return None if memory is None else self.recall(memory, max(answer.day, memory.last_day))


def spread(interval: int, item_id: UUID, answers: int) -> int:
    """Lay an interval, in days, at its own place in the published range around it.

    Items met together would otherwise come due together for years. One fraction is
    hashed from the item's id and the number of its answers, the same for all four
    grades; so a better grade never earns an earlier day, and undo, import and
    another device come to the same day.

    Below 2.5 days nothing moves. Source of the range: the FSRS packages' published
    fuzz ranges, delta = 1 + 0.15 of the days from 2.5 to 7, 0.10 of those to 20 and
    0.05 of those beyond; from max(2, round(I - delta)) to round(I + delta).
    """
    low, high = spread_range(interval)
    if low == high:
        return low
    digest = blake2b(item_id.bytes + answers.to_bytes(8, "big"), digest_size=8).digest()
    return low + int.from_bytes(digest, "big") * (high - low + 1) // 2**64


@lru_cache(maxsize=MAX_INTERVAL)
def spread_range(interval: int) -> tuple[int, int]:
    """Return the least and the greatest number of days an interval may be spread to."""
    if interval < 2.5:
        return interval, interval
    delta = (
        1
        + 0.15 * (min(interval, 7) - 2.5)
        + 0.10 * max(0, min(interval, 20) - 7)
        + 0.05 * max(0, interval - 20)
    )
    return max(2, round(interval - delta)), min(MAX_INTERVAL, round(interval + delta))


@lru_cache(maxsize=64)
def _model(target: float, weights: tuple[float, ...]) -> Scheduler:
    """Return the model of a target and weights, built once: every request makes a Schedule."""
    return Scheduler(
        parameters=weights,
        desired_retention=target,
        learning_steps=(),
        relearning_steps=(),
        maximum_interval=MAX_INTERVAL,
        enable_fuzzing=False,
    )


def _instant(day: date) -> datetime:
    return datetime.combine(day, time(), UTC)
