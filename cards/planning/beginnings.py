"""Where the courses of items begin: asked before, or to be let in."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

import numpy as np
from numpy.typing import NDArray

from cards.parts import Care
from cards.planning.entering import entering
from cards.planning.library import Habits, Remembered, Unasked
from cards.sitting.weights import apart
from cards.sitting.worth_memory import CLEAR, Floats, first
from cards.weighting import Weights

Places = NDArray[np.int64] | NDArray[np.bool_]


@dataclass(frozen=True, slots=True)
class Beginnings:
    """Where courses begin; each column as long as the others, days counted from the plan's first.

    Attributes:
        stability: days, above 0; of what was not asked yet, after its first answer.
        difficulty: 1 to 10.
        day: of the last answer, 0 or less; of what was not asked yet, of its first.
        asked: whether it was asked before.
        seconds: what asking takes.
    """

    stability: Floats
    difficulty: Floats
    day: Floats
    asked: NDArray[np.bool_]
    seconds: Floats

    def __len__(self) -> int:
        return len(self.stability)

    def at(self, places: Places) -> "Beginnings":
        """Return the courses at some places."""
        return Beginnings(
            self.stability[places],
            self.difficulty[places],
            self.day[places],
            self.asked[places],
            self.seconds[places],
        )

    def some(self, count: int) -> "Beginnings":
        """Return so many courses that stand for all of them alike; needs one at least.

        They are taken evenly from the order of their memory: more of them than there are
        hold each several times, fewer leave out neighbours.
        """
        order = np.lexsort(
            (self.seconds, self.day, self.stability, np.round(4 * self.difficulty), self.asked)
        )
        return self.at(order[((np.arange(count) + 0.5) * len(self) / count).astype(np.int64)])


@dataclass(frozen=True, slots=True)
class Abreast:
    """Courses under many targets, side by side.

    Attributes:
        targets: retention aimed for, row by row.
        row: of each course; they rise.
        courses: all of them.
    """

    targets: Floats
    row: NDArray[np.int64]
    courses: Beginnings

    @classmethod
    def of(cls, groups: Sequence[tuple[Beginnings, Floats]]) -> "Abreast":
        """Set each group's courses under each of its targets: a row a target, group by group."""
        courses = [its for its, targets in groups for _ in targets]
        return cls(
            np.concatenate([targets for _, targets in groups]),
            np.repeat(np.arange(len(courses)), [len(its) for its in courses]),
            Beginnings(
                np.concatenate([its.stability for its in courses]),
                np.concatenate([its.difficulty for its in courses]),
                np.concatenate([its.day for its in courses]),
                np.concatenate([its.asked for its in courses]),
                np.concatenate([its.seconds for its in courses]),
            ),
        )


def beginnings(
    items: Remembered, unasked: Sequence[Unasked], day: date, habits: Habits, days: int
) -> Iterator[tuple[Care, Weights, Beginnings]]:
    """Yield the courses of each care and each set of weights there are any of.

    Of what was not asked yet, those are among them that are let in within so many days.
    """
    entered = entering(unasked, habits.unasked_a_day, days)
    kinds = [*items.kinds, *(unasked[place].kind for place in entered)]
    cares = [*items.cares, *(unasked[place].care for place in entered)]
    last = np.array([each.toordinal() for each in items.last_days], dtype=np.float64)
    begun = np.arange(len(entered)) // max(1, habits.unasked_a_day)
    every = Beginnings(
        np.array([*items.stability, *np.zeros(len(entered))], dtype=np.float64),
        np.array([*items.difficulty, *np.zeros(len(entered))], dtype=np.float64),
        np.concatenate([np.minimum(last - day.toordinal(), 0.0), begun]),
        np.arange(len(kinds)) < len(items.kinds),
        np.array([habits.seconds[kind] for kind in kinds], dtype=np.float64),
    )
    of_care = {care: np.array([each is care for each in cares], dtype=np.bool_) for care in Care}
    for weights, places in apart(kinds, habits.weighting):
        fresh = first(weights)
        foreseen = np.zeros(len(kinds), dtype=np.bool_)
        foreseen[places] = True
        for care, its in of_care.items():
            both = foreseen & its
            if both.any():
                yield care, weights, _begun(every.at(both), *(each[CLEAR] for each in fresh))


def _begun(courses: Beginnings, stability: float, difficulty: float) -> Beginnings:
    """Return the courses, what was not asked yet with the memory of a first clear answer."""
    return Beginnings(
        np.where(courses.asked, courses.stability, stability),
        np.where(courses.asked, courses.difficulty, difficulty),
        courses.day,
        courses.asked,
        courses.seconds,
    )
