"""The seven numbers of a tally in one integer, while they grow: one addition for seven."""

from math import log
from struct import Struct

from cards.retention.tally import BILLION, Tally

LEAST = 1e-6
"""Predictions are held from this to 1 - this before their loss is reckoned.

One that was certain and wrong would else make the mean of all infinite; so it costs 13.8, where
a plain even guess costs 0.69."""

_WIDTH = 64
"""Bits of each number. None is ever below 0, and a billion answers, each of the greatest loss,
stay below 2^64."""
_NUMBERS = Struct("<7Q")

ONE = 1
"""One answer that came back blank, or one of whatever else is counted."""
CAME = ONE | 1 << _WIDTH
"""One answer that came back."""
_FORESEEN = 1 << 2 * _WIDTH
_FORESEEN_CAME = _FORESEEN | 1 << 3 * _WIDTH


def foreseen(came: bool, predicted: float) -> int:
    """Return what one answer adds whose recall was predicted, from 0 to 1."""
    if came:
        miss, given, whole = 1 - predicted, predicted, CAME | _FORESEEN_CAME
    else:
        miss, given, whole = predicted, 1 - predicted, ONE | _FORESEEN
    loss = -log(min(max(given, LEAST), 1 - LEAST))
    return (
        whole
        | round(predicted * BILLION) << 4 * _WIDTH
        | round(miss * miss * BILLION) << 5 * _WIDTH
        | round(loss * BILLION) << 6 * _WIDTH
    )


def unpacked(numbers: int) -> Tally:
    """Return the tally an integer holds."""
    return Tally(*_NUMBERS.unpack(numbers.to_bytes(_NUMBERS.size, "little")))
