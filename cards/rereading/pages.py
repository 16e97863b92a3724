"""The pages a locator names, and those a reader says they have read."""

import re

from cards.locators import page_of

LONGEST = 30
"""Pages in one stretch at the most: an hour's reading."""

_LAST = r"(?<!\d){first}\s?[-–—]\s?(\d{{1,5}})(?!\w)"
_SEPARATORS = re.compile(r"[,;&+]|\band\b", re.IGNORECASE)
_WRITTEN = re.compile(
    r"(?:pp?\.?|pages?)?\s*(\d{1,5})(?:\s*(?:[-–—]|to)\s*(\d{1,5}))?", re.IGNORECASE
)


def pages_of(locator: str | None) -> tuple[int, int] | None:
    """Return the first and the last page a locator names, or None when it names none.

    `pp. 134-5` is cited as the trade does, from 134 to 135. Of a range longer than a stretch
    its first pages are meant.
    """
    first = page_of(locator)
    if locator is None or first is None:
        return None
    found = re.search(_LAST.format(first=first), locator)
    last = first if found is None else _end(first, found[1])
    return first, min(last, first + LONGEST - 1)


def count_of(written: str) -> int | None:
    """Return how many pages a reader says they read, `10-24, 30`, or None when it is not plain."""
    pages: set[int] = set()
    for each in _SEPARATORS.split(written):
        found = _WRITTEN.fullmatch(each.strip())
        if found is None:
            return None
        first = int(found[1])
        last = first if found[2] is None else _end(first, found[2])
        pages.update(range(first, last + 1))
    return len(pages) or None


def _end(first: int, written: str) -> int:
    """Return the last page of a range, of which often only the last figures are written."""
    whole = str(first)[: -len(written)] + written if len(written) < len(str(first)) else written
    return max(first, int(whole))
