"""The reader's own grade against the suggested mark."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from cards.answers import GRADES
from cards.retention.reading import MarkKey


@dataclass(frozen=True, slots=True)
class Agreement:
    """How far reader and mark agree.

    Attributes:
        counts: answers; a row for each mark, in it a number for each grade of the reader,
            both from blank to vivid.
    """

    counts: tuple[tuple[int, ...], ...]

    @property
    def n(self) -> int:
        """Answers with a mark."""
        return sum(map(sum, self.counts))

    @property
    def same(self) -> int:
        """Those in which reader and mark agree."""
        return sum(row[place] for place, row in enumerate(self.counts))

    @property
    def higher(self) -> int:
        """Those the reader graded above the mark."""
        return sum(sum(row[place + 1 :]) for place, row in enumerate(self.counts))

    @property
    def kappa(self) -> float | None:
        """Cohen's kappa (1960): agreement beyond chance; None where chance alone explains all."""
        return self._kappa(lambda one, other: one != other)

    @property
    def weighted(self) -> float | None:
        """Cohen's kappa (1968) where two grades apart count four times as one."""
        return self._kappa(lambda one, other: (one - other) ** 2)

    def _kappa(self, apart: Callable[[int, int], int]) -> float | None:
        rows = [sum(row) for row in self.counts]
        columns = [sum(column) for column in zip(*self.counts, strict=True)]
        found = by_chance = 0
        for one, row in enumerate(self.counts):
            for other, count in enumerate(row):
                found += apart(one, other) * count
                by_chance += apart(one, other) * rows[one] * columns[other]
        return 1 - found * self.n / by_chance if by_chance else None


@dataclass(frozen=True, slots=True)
class Agreements:
    """Agreement of all answers, and apart by what the reader saw first.

    Attributes:
        all: every answer with a mark.
        seen: those graded with the mark before the reader's eyes, which pulls.
        first: those graded before it was shown.
    """

    all: Agreement
    seen: Agreement
    first: Agreement


def agreements_of(marks: Mapping[MarkKey, int]) -> Agreements:
    """Return how far reader and mark agree."""
    return Agreements(
        _agreement(marks, (False, True)), _agreement(marks, (False,)), _agreement(marks, (True,))
    )


def _agreement(marks: Mapping[MarkKey, int], when: Iterable[bool]) -> Agreement:
    return Agreement(
        tuple(
            tuple(sum(marks.get((mark, grade, first), 0) for first in when) for grade in GRADES)
            for mark in GRADES
        )
    )
