"""The seven numbers of a tally in one integer, while they grow: one addition for seven."""

from struct import Struct

from cards.retention.losses import loss
from cards.retention.tally import BILLION, Tally

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
    miss = 1 - predicted if came else predicted
    whole = CAME | _FORESEEN_CAME if came else ONE | _FORESEEN
    return (
        whole
        | round(predicted * BILLION) << 4 * _WIDTH
        | round(miss * miss * BILLION) << 5 * _WIDTH
        | round(loss(predicted, came) * BILLION) << 6 * _WIDTH
    )


def unpacked(numbers: int) -> Tally:
    """Return the tally an integer holds."""
    return Tally(*_NUMBERS.unpack(numbers.to_bytes(_NUMBERS.size, "little")))
