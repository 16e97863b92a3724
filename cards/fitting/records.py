"""What considering a reader's own weights comes to."""

from dataclasses import dataclass

from cards.kinds.base import KindName
from cards.weighting import Weighting


@dataclass(frozen=True, slots=True)
class Comparison:
    """How weights in force and weights proposed foresaw the same held-out answers.

    Attributes:
        from_day: ordinal of the reader's day the held-out answers begin on.
        in_force, proposed: mean log loss over them, in nats.
        error: standard error of the difference of the two (`cards.fitting.judging`).
    """

    from_day: int
    in_force: float
    proposed: float
    error: float

    @property
    def gain(self) -> float:
        """By how much the proposed foresaw them better, in nats an answer; below 0: worse."""
        return self.in_force - self.proposed


@dataclass(frozen=True, slots=True)
class Verdict:
    """Whether weights fitted to earlier answers foresee later ones better than those in force.

    Attributes:
        kind: whose answers were judged; None for all kinds together.
        answers: all that tell of forgetting, a day or more after the item's one before.
        held_out: the later ones of them, which the fit did not see.
        comparison: how the two foresaw the held-out answers; None where they are too few.
        adopted: whether the proposed are put in force.
        sentence: all of this in one plain sentence to the reader.
    """

    kind: KindName | None
    answers: int
    held_out: int
    comparison: Comparison | None
    adopted: bool
    sentence: str


@dataclass(frozen=True, slots=True)
class Considered:
    """What considering a reader's own weights came to.

    Attributes:
        verdict: on the weights for every kind.
        by_kind: on weights of their own for single kinds, in the order of `KINDS`.
        weighting: what is in force from now on: as before, where nothing was adopted.
    """

    verdict: Verdict
    by_kind: tuple[Verdict, ...]
    weighting: Weighting

    @property
    def adopted(self) -> bool:
        """Whether anything changes."""
        return self.verdict.adopted or any(each.adopted for each in self.by_kind)

    @property
    def sentence(self) -> str:
        """What to tell the reader of the weights for every kind."""
        return self.verdict.sentence
