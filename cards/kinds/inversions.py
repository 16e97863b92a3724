"""How far an order is from the right one, and how often chance alone comes as near."""

from collections.abc import Sequence
from fractions import Fraction
from functools import lru_cache
from itertools import accumulate, combinations


def inversions(order: Sequence[int]) -> int:
    """Return how many pairs stand the wrong way round: of n, at most n(n - 1)/2."""
    return sum(before > after for before, after in combinations(order, 2))


def chance(wrong: int, among: int) -> Fraction:
    """Return the probability that a random order of `among` has at most `wrong` inversions."""
    if wrong < 0:
        return Fraction(0)
    up_to = tuple(accumulate(mahonian(among)))
    return Fraction(up_to[min(wrong, len(up_to) - 1)], up_to[-1])


@lru_cache(maxsize=64)
def mahonian(among: int) -> tuple[int, ...]:
    """Return how many orders of `among` have 0, 1, 2, … inversions: the Mahonian numbers.

    A further one, put in before any number of those there, adds as many inversions:
    M(n, k) = M(n-1, k) + M(n-1, k-1) + … + M(n-1, k-n+1) (MacMahon 1916, from memory).
    """
    if among < 2:
        return (1,)
    fewer = mahonian(among - 1)
    most = len(fewer) + among - 1
    return tuple(
        sum(fewer[max(0, wrong - among + 1) : min(wrong, len(fewer) - 1) + 1])
        for wrong in range(most)
    )


def in_order(order: Sequence[int]) -> frozenset[int]:
    """Return the longest run of an order that needs no moving, not necessarily of neighbours."""
    runs: list[tuple[int, ...]] = [()]
    for number in order:
        longest = max((run for run in runs if not run or run[-1] < number), key=len)
        runs.append((*longest, number))
    best = max(runs, key=len)
    return frozenset(best)
