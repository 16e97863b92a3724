"""A library column by column, what is worth most to ask first."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from uuid import UUID

import numpy as np
from numpy.typing import NDArray

from cards.kinds.base import KindName
from cards.parts import Care
from cards.planning.entering import entering
from cards.planning.library import Habits, Remembered, Unasked
from cards.schedule import aimed
from cards.sitting.ranking import unasked_worth, worth_after
from cards.sitting.weights import apart, at, weights_of
from cards.sitting.worth_memory import CLEAR, Floats, first
from cards.weighting import Weighting

NEVER = 1e9
"""Days; later than any day looked at. Due then is what was not asked yet."""
_KINDS, _CARES = list(KindName), list(Care)


@dataclass(frozen=True, slots=True)
class Ranked:
    """Items asked before and items let in within some days, what is worth most first.

    Days are counted from the first one looked at.

    Attributes:
        books: of each item, the id of its digest.
        stability: days, above 0; of what was not asked yet, after its first answer.
        difficulty: 1 to 10.
        last: the day of the last answer, 0 or less.
        due: the day each is due, `NEVER` for what was not asked yet.
        seconds: what asking takes.
        targets: retention aimed for.
        queue: places of what was not asked yet, in the order it is let in.
        weights: the weights of each item (`cards.sitting.weights`).
    """

    books: tuple[UUID, ...]
    stability: Floats
    difficulty: Floats
    last: Floats
    due: Floats
    seconds: Floats
    targets: Floats
    queue: NDArray[np.int64]
    weights: Floats

    @classmethod
    def of(
        cls,
        items: Remembered,
        unasked: Sequence[Unasked],
        day: date,
        habits: Habits,
        days: int,
    ) -> "Ranked":
        """Rank the items of a library, whichever order they are handed over in."""
        entered = [unasked[place] for place in entering(unasked, habits.unasked_a_day, days)]
        fresh = [each.kind for each in entered]
        kinds = [*items.kinds, *fresh]
        cares = [*items.cares, *(each.care for each in entered)]
        books = [*items.books, *(each.book for each in entered)]
        begun = _begun(fresh, habits.weighting)
        memory = _Memories(
            items.kinds,
            items.stability,
            items.difficulty,
            [care is Care.CLOSE for care in items.cares],
        )
        last = np.minimum(_days(items.last_days, day), 0.0)
        due = _days(items.due_on, day)
        worth = np.concatenate(
            [
                worth_after(np.maximum(due, 0.0) - last, memory, habits.seconds, habits.weighting),
                _worth_of_fresh(fresh, habits),
            ]
        )
        stability = np.concatenate([np.asarray(items.stability, dtype=np.float64), begun[0]])
        difficulty = np.concatenate([np.asarray(items.difficulty, dtype=np.float64), begun[1]])
        last = np.concatenate([last, np.zeros(len(entered))])
        due = np.concatenate([due, np.full(len(entered), NEVER)])
        place = np.concatenate([np.full(len(items.kinds), -1), np.arange(len(entered))])
        number = {book: number for number, book in enumerate(sorted(set(books)))}
        # After its worth by all there is to it, so that the order they came in does not matter.
        order = np.lexsort(
            (
                np.array([number[book] for book in books], dtype=np.int64),
                np.array([_CARES.index(care) for care in cares], dtype=np.int64),
                place,
                last,
                due,
                difficulty,
                stability,
                np.array([_KINDS.index(kind) for kind in kinds], dtype=np.int64),
                -worth,
            )
        )
        aims = {care: aimed(habits.target, care) for care in Care}
        queue = np.flatnonzero(place[order] >= 0)
        return cls(
            books=tuple(books[each] for each in order),
            stability=stability[order],
            difficulty=difficulty[order],
            last=last[order],
            due=due[order],
            seconds=np.array([habits.seconds[kind] for kind in kinds], dtype=np.float64)[order],
            targets=np.array([aims[care] for care in cares], dtype=np.float64)[order],
            queue=queue[np.argsort(place[order][queue])],
            weights=at(weights_of(kinds, habits.weighting), order),
        )


@dataclass(frozen=True, slots=True)
class _Memories:
    kinds: Sequence[KindName]
    stability: Sequence[float]
    difficulty: Sequence[float]
    close: Sequence[bool]


def _days(days: Sequence[date], first_day: date) -> Floats:
    """Return days as numbers, counted from the first one looked at."""
    return np.array([each.toordinal() for each in days], dtype=np.float64) - first_day.toordinal()


def _begun(kinds: Sequence[KindName], weighting: Weighting) -> tuple[Floats, Floats]:
    """Return stability and difficulty of each item after a first clear answer."""
    stability, difficulty = np.zeros(len(kinds)), np.zeros(len(kinds))
    for weights, places in apart(kinds, weighting):
        after = first(weights)
        stability[places], difficulty[places] = after[0][CLEAR], after[1][CLEAR]
    return stability, difficulty


def _worth_of_fresh(kinds: Sequence[KindName], habits: Habits) -> Floats:
    worth = {
        kind: unasked_worth(kind, habits.seconds, habits.weighting) for kind in dict.fromkeys(kinds)
    }
    return np.array([worth[kind] for kind in kinds], dtype=np.float64)
