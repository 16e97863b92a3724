"""After which point a quotation stands, where pages or chapters settle it. Never a guess."""

from collections.abc import Sequence
from itertools import pairwise

from cards.locators import Unit, chapter_of, page_of, place_of

_RESTARTING = (Unit.BOOK, Unit.PART)
"""Units inside which chapters are often counted from one again."""


def place_among(locator: str | None, points: Sequence[str | None]) -> int | None:
    """Return the number of the point a locator stands after, or None when nothing says so.

    Pages settle it before chapters. A chapter that holds both the point and the
    quotation settles nothing, nor does one of several books or parts.

    Args:
        locator: of the quotation.
        points: the locators of the points, in order.
    """
    after = point_before(page_of(locator), [page_of(point) for point in points])
    if after is not None:
        return after
    if any(place_of(where, unit) for where in (locator, *points) for unit in _RESTARTING):
        return None
    chapter = _chapter(locator)
    chapters = [_chapter(point) for point in points]
    return None if chapter in chapters else point_before(chapter, chapters)


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
