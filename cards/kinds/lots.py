"""Drawing lots without chance: the same item, asked the same time, draws the same."""

from collections.abc import Hashable, Sequence
from hashlib import blake2b
from typing import TypeVar

from cards.kinds.base import Occasion

_T = TypeVar("_T")


def lot(occasion: Occasion, what: Hashable) -> int:
    """Return the lot that `what` draws on an occasion: a number up to 2**64.

    A hash of the part, of how often it was asked and of `what`, so that it differs from
    one asking to the next and every device comes to the same.
    """
    seed = f"{occasion.part.id} {occasion.asked} {what}".encode()
    return int.from_bytes(blake2b(seed, digest_size=8, person=b"lots of a cue").digest(), "big")


def one_from_each(occasion: Occasion, among: Sequence[_T], count: int) -> tuple[_T, ...]:
    """Return `count` of a sequence, in its order, one drawn from each of as many stretches."""
    size = len(among)
    if size <= count:
        return tuple(among)
    bounds = [(part * size // count, (part + 1) * size // count) for part in range(count)]
    return tuple(among[a + lot(occasion, a) % (b - a)] for a, b in bounds)
