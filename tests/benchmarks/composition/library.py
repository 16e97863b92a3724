"""The library that is kept, the days on which there is time for it, and what asking takes."""

import numpy as np
from numpy.typing import NDArray

from cards.kinds.base import KindName
from cards.sitting.pace import USUAL

YEARS = 6
BOOKS_A_YEAR = 30
A_YEAR = 365
AWAY = range(200, 230)
"""Days of each year without a sitting: a month in the summer. Books are read meanwhile too."""

A_BOOK: dict[KindName, int] = {
    KindName.THEME: 1,
    KindName.RESTATE: 4,
    KindName.PLACE: 4,
    KindName.NEXT: 7,
    KindName.ORDER: 1,
    KindName.COMPLETE: 4,
    KindName.SOURCE: 3,
    KindName.ACROSS: 1,
}
"""25 items of 25.6 seconds on the average: eight points, four commitments, four quotations."""

SIZE = sum(A_BOOK.values())
ITEMS = YEARS * BOOKS_A_YEAR * SIZE
DAYS = YEARS * A_YEAR

ADDED: NDArray[np.int64] = np.repeat(np.arange(YEARS * BOOKS_A_YEAR) * A_YEAR // BOOKS_A_YEAR, SIZE)
"""The day on which each item is added, books evenly over the years."""


def seconds(seed: int) -> NDArray[np.float64]:
    """Return what asking each item takes; the kinds of a book in an order of its own."""
    chance = np.random.default_rng(seed)
    of_a_book = [USUAL[kind] for kind, count in A_BOOK.items() for _ in range(count)]
    return np.concatenate([chance.permutation(of_a_book) for _ in range(ITEMS // SIZE)])
