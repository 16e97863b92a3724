"""What asking costs: the reader's own seconds for each kind of item."""

from collections.abc import Mapping, Sequence
from statistics import median

from cards.kinds.base import KindName

USUAL: dict[KindName, float] = {
    KindName.THEME: 60,
    KindName.NEXT: 25,
    KindName.RESTATE: 30,
    KindName.COMPLETE: 25,
    KindName.SOURCE: 15,
    KindName.ORDER: 40,
    KindName.PLACE: 20,
    KindName.ACROSS: 20,
}
"""Seconds an item of each kind takes until the reader's own are known: our own guess."""

LATEST = 50
"""Measured answers of a kind that tell the reader's pace: people grow quicker with use."""
_GUESSES = 5
"""Answers the guess weighs as much as: one slow evening does not tell a pace."""


def pace(measured: Mapping[KindName, Sequence[int]]) -> dict[KindName, float]:
    """Return the seconds each kind takes: the median of the reader's latest answers.

    While there are few of them the usual seconds count among them, as `_GUESSES` answers less
    one for each that was measured, so that a pace is learnt gradually.
    """
    return {
        kind: median([*seconds, *[usual] * max(0, _GUESSES - len(seconds))])
        for kind, usual in USUAL.items()
        for seconds in (measured.get(kind, ()),)
    }
