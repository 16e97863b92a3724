"""Whose weights foresee what is recalled, in words."""

from dataclasses import dataclass
from datetime import date
from itertools import pairwise

from cards.commitments.day_words import day_in_words
from cards.fitting import Verdict
from cards.kinds.base import KindName
from cards.weighting import PUBLISHED, Weighting, Weights
from service.use_cases.learning import LEAST_NEW, MOST_MOVED
from service.use_cases.retaining import MOST_FORMER, Learnt, Retained
from service.use_cases.retention_pictures.words import listed


@dataclass(frozen=True, slots=True)
class Former:
    """Weights that were in force.

    Attributes:
        since: the day they were put in force; None for the published ones, from the first day.
        until: the day others took their place.
        weighting: the weights.
    """

    since: date | None
    until: date
    weighting: Weighting


def in_force(retained: Retained) -> str:
    """Return whose weights are in force, and since when, in a sentence or two."""
    own = retained.learnt.adopted
    if not own:
        return (
            "In force are the published default weights: they come from other people and other "
            "material, and are where every reader begins."
        )
    since = day_in_words(own[0].fitted_on)
    kinds = [kind.value for kind, _ in retained.reader.weighting.by_kind]
    told = f"In force since {since} are weights fitted to your own answers."
    if kinds:
        told += (
            f" The kind {kinds[0]} has weights of its own."
            if len(kinds) == 1
            else f" The kinds {listed(kinds)} have weights of their own."
        )
    return told


def considered(retained: Retained) -> tuple[str, tuple[Verdict, ...]]:
    """Return when the reader's own weights were last considered, in words, and the verdicts."""
    latest = retained.learnt.latest
    if latest is None:
        answers = retained.figures.whole.asked
        needed = max(0, LEAST_NEW - answers)
        return (
            "Weights of your own were not considered yet. "
            + (
                f"They are when {LEAST_NEW} answers tell of forgetting; {needed} are still to come."
                if needed
                else "They are the next time the library is tidied."
            ),
            (),
        )
    told = (
        f"Weights of your own were last considered on {day_in_words(latest.fitted_on)}, from "
        f"{latest.answers:,} answers."
    )
    return told, latest.verdicts


def waiting(learnt: Learnt) -> str:
    """Return how many due days wait to be moved, in a sentence; "" for none."""
    if not learnt.waiting:
        return ""
    many = "due day waits" if learnt.waiting == 1 else "due days wait"
    return (
        f"{learnt.waiting:,} {many} to be moved to what the weights in force say: at most "
        f"{MOST_MOVED} a day, so that no wave of them comes."
    )


def former(learnt: Learnt) -> tuple[Former, ...]:
    """Return the weights that were in force before, the last first."""
    own = learnt.adopted
    if not own:
        return ()
    told = [
        Former(before.fitted_on, after.fitted_on, before.weighting)
        for after, before in pairwise(own)
    ]
    if len(own) == MOST_FORMER:  # there may be others before them that were not read
        return tuple(told)
    return (*told, Former(None, own[-1].fitted_on, PUBLISHED))


def columns(retained: Retained) -> tuple[tuple[str, Weights], ...]:
    """Return the published weights and those in force, each set with its name."""
    weighting = retained.reader.weighting
    sets: list[tuple[str, Weights]] = [("Published", PUBLISHED.general)]
    if weighting != PUBLISHED:
        sets.append(("In force", weighting.general))
        sets += [(f"In force, {_kind(kind)}", weights) for kind, weights in weighting.by_kind]
    return tuple(sets)


def _kind(kind: KindName) -> str:
    return kind.value
