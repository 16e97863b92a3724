"""After which point a quotation stands, where pages or chapters settle it. Never a guess."""

from collections.abc import Sequence
from itertools import pairwise

from cards.locators import Unit, chapter_of, page_of, place_of

_RESTARTING = (Unit.BOOK, Unit.PART)
"""Units inside which chapters are often counted from one again."""


class Places:
    """The places of a digest's points, read once, and asked for each quotation."""

    def __init__(self, points: Sequence[str | None]) -> None:
        self._pages = [page_of(point) for point in points]
        self._chapters = [_chapter(point) for point in points]
        self._restarting = any(_restarts(point) for point in points)

    def point_before(self, locator: str | None) -> int | None:
        """Return the number of the point a locator stands after, or None when nothing says so.

        Pages settle it before chapters. A chapter that holds both the point and the
        quotation settles nothing, nor does one of several books or parts.
        """
        after = point_before(page_of(locator), self._pages)
        if after is not None or self._restarting or _restarts(locator):
            return after
        chapter = _chapter(locator)
        return None if chapter in self._chapters else point_before(chapter, self._chapters)


def point_before(place: int | None, places: Sequence[int | None]) -> int | None:
    """Return the number of the last point at a place or an earlier one, or None.

    The next point has to be known to stand later, unless there is none. A place
    before the first point's gives 0.

    Args:
        place: page or chapter of the quotation.
        places: pages or chapters of the points, in order; None where not known.
    """
    known = [at for at in places if at is not None]
    if place is None or not known or any(one > other for one, other in pairwise(known)):
        return None
    number = max((n for n, at in enumerate(places, 1) if at is not None and at <= place), default=0)
    if number == len(places):
        return number
    following = places[number]
    return number if following is not None and following > place else None


def _chapter(locator: str | None) -> int | None:
    """Return the one chapter a locator names; a span of chapters is none."""
    return None if locator is not None and "-" in locator else chapter_of(locator)


def _restarts(locator: str | None) -> bool:
    return any(place_of(locator, unit) for unit in _RESTARTING)
