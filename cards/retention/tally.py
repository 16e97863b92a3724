"""What answers add up to: whole numbers only, so that adding and taking away are exact."""

from collections.abc import Iterable, Mapping
from enum import StrEnum
from typing import NamedTuple

BILLION = 1_000_000_000
"""Sums of probabilities and of losses are kept in billionths."""


class Of(StrEnum):
    """What a tally is of; how its key is written.

    What is by kind, by age of the memory or of everything is the sum of those by kind and age.
    """

    ALL = "all"
    """Every answer to items of a kind, also those retention leaves out: `theme`."""
    BOOK = "book"
    """The digest's id, 32 hexadecimal digits."""
    KIND_AGE = "kind_age"
    """The kind and the days since the answer before, binned (`cards.retention.ages`): `next|34`."""
    MONTH = "month"
    """The month of the answer's day: `2026-03`."""
    PREDICTED = "predicted"
    """The recall predicted, in thousandths from 0 to 1000: `913`."""
    BIN = "bin"
    """Age, length and blanks of the history (`cards.retention.history_bins`): `2.1.0`."""
    MARK = "mark"
    """The suggested grade, the reader's, and whether that came first: `hazy>clear>seen`."""
    SURVIVAL = "survival"
    """Kind, days from the first answer, and what ended them: `theme|34|blank`, `theme|34|none`."""


class TallyKey(NamedTuple):
    """What a tally counts.

    Attributes:
        of: which sort of thing.
        key: which one, written as `Of` says; at most 32 characters.
    """

    of: Of
    key: str


class Tally(NamedTuple):
    """What answers add up to.

    Of `Of.ALL`, `Of.MARK` and `Of.SURVIVAL` only the first one or two are counted.

    Attributes:
        n: answers; of `Of.SURVIVAL`, items.
        recalled: of those, how many came back.
        foreseen: answers with a recall predicted before they were given.
        came: of those, how many came back.
        predicted: the sum of the recalls predicted, in billionths.
        squares: the sum of (p - y)², in billionths; y is 1 for what came back, else 0.
        logs: the sum of -ln of the probability given to what happened, in billionths.
    """

    n: int = 0
    recalled: int = 0
    foreseen: int = 0
    came: int = 0
    predicted: int = 0
    squares: int = 0
    logs: int = 0


Tallies = Mapping[TallyKey, Tally]

NOTHING = Tally()


def total(tallies: Iterable[Tally]) -> Tally:
    """Return the sum of tallies; of none, nothing."""
    return Tally(*map(sum, zip(NOTHING, *tallies, strict=True)))


def merged(*many: Tallies) -> dict[TallyKey, Tally]:
    """Return the sums of tallies by key; what adds up to nothing is left out."""
    sums: dict[TallyKey, Tally] = {}
    for tallies in many:
        for key, tally in tallies.items():
            sums[key] = total((sums[key], tally)) if key in sums else tally
    return {key: tally for key, tally in sums.items() if any(tally)}


def difference(before: Tallies, after: Tallies) -> dict[TallyKey, Tally]:
    """Return what must be added to tallies, by key, when one part of them changes.

    Numbers may be below 0; keys of which nothing changes are left out.
    """
    changed = {}
    for key in {**before, **after}:
        old, new = before.get(key, NOTHING), after.get(key, NOTHING)
        if old != new:
            changed[key] = Tally(*(b - a for a, b in zip(old, new, strict=True)))
    return changed
