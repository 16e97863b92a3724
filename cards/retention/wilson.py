"""How far a share seen so far may be from the share there is."""

from math import sqrt

Z = 1.959964
"""The 97.5 % point of the normal distribution: bounds of 95 % on both sides."""


def wilson(recalled: int, asked: int) -> tuple[float, float]:
    """Return the lower and the upper 95 % bound of a share, each 0 to 1.

    Wilson 1927; Newcombe 1998, Stat. Med. 17, 857–872. Of nothing asked nothing is known:
    0 and 1.
    """
    if not asked:
        return 0.0, 1.0
    share, square = recalled / asked, Z * Z
    middle = share + square / (2 * asked)
    reach = Z * sqrt(share * (1 - share) / asked + square / (4 * asked * asked))
    whole = 1 + square / asked
    return max(0.0, (middle - reach) / whole), min(1.0, (middle + reach) / whole)
