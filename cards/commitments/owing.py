"""How much a commitment wants a word of its reader today."""

from enum import IntEnum

from cards.commitments.stand import Pace, Stand


class Pressing(IntEnum):
    """How much a word is wanted, the more the higher: our own order, no published source."""

    NOT_AT_ALL = 0
    OPEN = 1
    SLIPPING = 2
    STALLED = 3


def pressing(stand: Stand) -> Pressing:
    """Return how much a commitment wants to be checked in on.

    Not at all while it is paused or over, nor while all that the running period asks is done.
    """
    if stand.pace is Pace.STALLED:
        return Pressing.STALLED
    if stand.pace is Pace.SLIPPING:
        return Pressing.SLIPPING
    now = stand.now
    if stand.pace is not Pace.ON_COURSE or (now is not None and now.done >= now.due):
        return Pressing.NOT_AT_ALL
    return Pressing.OPEN
