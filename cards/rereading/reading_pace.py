"""How many minutes a page takes the reader."""

from collections.abc import Iterable
from math import ceil
from statistics import median

from cards.rereading.facts import Rereading
from cards.rereading.pages import count_of

MINUTES_A_PAGE = 2.0
"""Minutes a page until the reader's own are known, our own convention: a page of about 500 words
(reference, part 5, an assumption) at 238 words a minute (Brysbaert 2019, J. Mem. Lang. 109,
104047: silent reading of prose in English; from memory)."""
FASTEST, SLOWEST = 0.2, 30.0
"""Minutes a page between which a re-reading counts: outside, pages or minutes are mistaken."""


def minutes_a_page(rereadings: Iterable[Rereading]) -> float:
    """Return the median of the reader's own re-readings that say both pages and minutes."""
    own = []
    for each in rereadings:
        pages = None if each.withdrawn_on is not None else count_of(each.pages)
        if pages is not None and each.minutes is not None:
            taken = each.minutes / pages
            if FASTEST <= taken <= SLOWEST:
                own.append(taken)
    return median(own) if own else MINUTES_A_PAGE


def minutes_for(pages: int, a_page: float) -> int:
    """Return the whole minutes some pages take, at least one."""
    return max(1, ceil(pages * a_page))
