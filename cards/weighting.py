"""Which weights of the memory model foresee which kind of item.

The published default weights come from other people and other material; a reader whose own
answers say better has weights of their own (`cards.fitting`), and for a kind that is
forgotten otherwise than the rest, weights for that kind.
"""

from dataclasses import dataclass

from cards.kinds.base import KindName
from cards.schedule import DEFAULT_WEIGHTS, Schedule

Weights = tuple[float, ...]
"""The 21 weights of FSRS-6, in the published order."""


@dataclass(frozen=True, slots=True)
class Weighting:
    """The weights in force for one reader.

    Attributes:
        general: of every kind without weights of its own.
        by_kind: of single kinds, each at most once.
    """

    general: Weights = DEFAULT_WEIGHTS
    by_kind: tuple[tuple[KindName, Weights], ...] = ()

    def of(self, kind: KindName) -> Weights:
        """Return the weights that foresee items of a kind."""
        return next((weights for each, weights in self.by_kind if each is kind), self.general)

    def schedule(self, kind: KindName, target: float) -> Schedule:
        """Return the schedule of items of a kind, aiming for a retention."""
        return Schedule(target, self.of(kind))


PUBLISHED = Weighting()
"""The published default weights for every kind: where every reader begins."""
