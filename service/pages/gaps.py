"""The plot after an answer: the stretches around the right gap and the reader's, the rest counted.

All of it would push the grades off the page; two landmarks around a gap tell it.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from cards.kinds.base import Landmark


@dataclass(frozen=True, slots=True)
class Step:
    """One line of the plot: a landmark, a gap, or a number of landmarks passed over.

    Attributes:
        landmark: its words, or "".
        gap: for a gap, what is to be said of it, or "".
        right: whether it is the right gap.
        passed: how many landmarks are passed over here, else 0.
    """

    landmark: str = ""
    gap: str = ""
    right: bool = False
    passed: int = 0


def told(landmarks: Sequence[Landmark], right: int, given: int | None) -> list[Step]:
    """Return the plot around the right gap and the one given."""
    shown = {number for gap in {right, given} - {None} for number in _around(gap)}
    steps: list[Step] = []
    for gap in range(len(landmarks) + 1):
        if gap:
            _add(steps, landmarks[gap - 1], seen=gap in shown)
        if gap == right:
            as_said = ", as you said" if gap == given else ""
            steps.append(Step(gap=f"here it stands{as_said}", right=True))
        elif gap == given:
            steps.append(Step(gap="you said here"))
    return steps


def _around(gap: int | None) -> tuple[int, ...]:
    return () if gap is None else (gap, gap + 1)


def _add(steps: list[Step], landmark: Landmark, *, seen: bool) -> None:
    if seen:
        steps.append(Step(landmark=landmark.text))
    elif steps and steps[-1].passed:
        steps[-1] = Step(passed=steps[-1].passed + 1)
    else:
        steps.append(Step(passed=1))
