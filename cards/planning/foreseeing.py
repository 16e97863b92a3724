"""What the items of each care come to under each target."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from cards.parts import Care
from cards.planning.beginnings import Abreast, Beginnings
from cards.planning.courses import A_YEAR, QUARTER, followed
from cards.planning.forgetting import recalled_days
from cards.planning.lasting import gained
from cards.planning.records import YEARS
from cards.planning.rising import rising
from cards.schedule import HIGHEST_TARGET, LOWEST_TARGET, aimed
from cards.sitting.worth_memory import Floats, recall
from cards.weighting import Weights

TARGETS = tuple(
    each / 100 for each in range(round(100 * LOWEST_TARGET), round(100 * HIGHEST_TARGET) + 1)
)
_COURSES, _FEWEST = 4096, 1024
"""Courses followed for the whole library, and for the items of one care and the same weights.
With so many the minutes of ten years are within 2 in a hundred of what thirty times as many
tell, and those of a single late year, of which a few bad lapses make a part, within some 6."""

Group = tuple[Care, Weights, Beginnings]


@dataclass(frozen=True, slots=True)
class Foreseen:
    """What some items come to; a row a target of `TARGETS`.

    Attributes:
        now: how many are known on the day itself.
        left_alone: how many in the last quarter of each of `YEARS`, without any sitting.
        seconds: of asking, in each of the ten years.
        known: how many are known in the last quarter of each of `YEARS`.
        until_lasting: seconds of asking what does not last yet until it does.
        lasting: how many do then.
    """

    now: float
    left_alone: Floats
    seconds: Floats
    known: Floats
    until_lasting: Floats
    lasting: Floats

    @classmethod
    def nothing(cls) -> "Foreseen":
        """Return what no items come to."""
        rows, years = len(TARGETS), len(YEARS)
        none = np.zeros(rows)
        return cls(
            0.0, np.zeros(years), np.zeros((rows, YEARS[-1])), np.zeros((rows, years)), none, none
        )

    def with_all(self, other: "Foreseen") -> "Foreseen":
        """Return what these and other items come to together."""
        return Foreseen(
            self.now + other.now,
            self.left_alone + other.left_alone,
            self.seconds + other.seconds,
            self.known + other.known,
            self.until_lasting + other.until_lasting,
            self.lasting + other.lasting,
        )


def foreseen(groups: Sequence[Group]) -> Iterator[tuple[Care, Foreseen]]:
    """Yield what items come to, those of each care and each set of weights apart.

    Of two targets the higher one takes no less time and keeps no less: items met together come
    round together for years, so that in a given year a lower target can chance to be the one
    under which more of them come round, and what is foreseen is drawn level there
    (`cards.planning.rising`).
    """
    courses = sum(len(its) for _, _, its in groups)
    for weights in dict.fromkeys(each for _, each, _ in groups):
        same = [(care, its) for care, each, its in groups if each == weights]
        few = [max(_FEWEST, _COURSES * len(its) // courses) for _, its in same]
        aims = [_aims(care) for care, _ in same]
        abreast = Abreast.of(
            [(its.some(n), aim) for (_, its), n, (aim, _) in zip(same, few, aims, strict=True)]
        )
        kept, made = followed(abreast, weights), gained(abreast, weights)
        begin = 0
        for (care, its), n, (aim, of_target) in zip(same, few, aims, strict=True):
            rows, times = slice(begin, begin + len(aim)), len(its) / n
            begin += len(aim)
            before = its.at(its.asked)
            # At rest a book's target is the lowest whatever the reader's, so none is chosen by it.
            lasts = 0.0 if care is Care.RESTING else times
            yield (
                care,
                Foreseen(
                    float(recall(before.stability, -before.day, weights).sum()),
                    np.array([_left_alone(before, year, weights) for year in YEARS]),
                    rising(kept.seconds[rows])[of_target] * times,
                    rising(kept.known[rows])[of_target] * times,
                    made.seconds[rows][of_target] * lasts,
                    made.lasting[rows][of_target] * lasts,
                ),
            )


def _aims(care: Care) -> tuple[Floats, NDArray[np.int64]]:
    """Return what a care makes of the targets, each once, and which of these is each target's."""
    aims, of_target = np.unique([aimed(each, care) for each in TARGETS], return_inverse=True)
    return aims, of_target


def _left_alone(before: Beginnings, year: int, weights: Weights) -> float:
    until = year * A_YEAR - before.day
    return float(recalled_days(before.stability, until - QUARTER, until, weights).sum() / QUARTER)
