"""After which point a quotation stands, where the book's own count settles it. Never a guess."""

from collections.abc import Sequence
from itertools import pairwise

from cards.locators import Place, page_of, steps_of


class Places:
    """The places of a digest's points, read once, and asked for each quotation."""

    def __init__(self, points: Sequence[str | None]) -> None:
        self._pages = [page_of(point) for point in points]
        self._steps = [steps_of(point) for point in points]
        known = [steps for steps in self._steps if steps]
        self._in_order = all(_order(one, other) != 1 for one, other in pairwise(known))
        self._outer = {steps[0].unit for steps in known}
        self._inner = {step.unit for steps in known for step in steps[1:]}

    def point_before(self, locator: str | None) -> int | None:
        """Return the number of the point a locator stands after, or None when nothing says so.

        Pages settle it before chapters, books, acts, lines and the like. Of these, one
        place is before another only where both count in the same units, from the
        outermost in; a chapter that holds both settles nothing, nor does a unit that is
        counted from one again inside another.
        """
        after = point_before(page_of(locator), self._pages)
        steps = steps_of(locator)
        if after is not None or not steps or not self._in_order or self._restarts(steps):
            return after
        return point_before(0, [_order(point, steps) for point in self._steps])

    def _restarts(self, steps: Sequence[Place]) -> bool:
        inner = {step.unit for step in steps[1:]}
        return steps[0].unit in self._inner or not inner.isdisjoint(self._outer)


def point_before(place: int | None, places: Sequence[int | None]) -> int | None:
    """Return the number of the last point at a place or an earlier one, or None.

    The next point has to be known to stand later, unless there is none. A place
    before the first point's gives 0.

    Args:
        place: of the quotation, as a page.
        places: of the points, in order; None where not known.
    """
    known = [at for at in places if at is not None]
    if place is None or not known or any(one > other for one, other in pairwise(known)):
        return None
    number = max((n for n, at in enumerate(places, 1) if at is not None and at <= place), default=0)
    if number == len(places):
        return number
    following = places[number]
    return number if following is not None and following > place else None


def _order(one: Sequence[Place], other: Sequence[Place]) -> int | None:
    """Return -1 where one place comes before the other, 1 where after, None where unknown."""
    for step, against in zip(one, other, strict=False):
        if step.unit is not against.unit:
            return None
        if step.end < against.number or against.end < step.number:
            return -1 if step.number < against.number else 1
        if step.last is not None or against.last is not None:
            return None
    return None
