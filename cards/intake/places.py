"""After which point a quotation stands, where the pages settle it. Never a guess."""

from collections.abc import Sequence
from itertools import pairwise


def point_before(page: int | None, pages: Sequence[int | None]) -> int | None:
    """Return the number of the point a page stands after, or None when nothing says so.

    It is the last point on that page or an earlier one, provided that the next
    point is known to stand on a later page or that there is none. A page before
    the first point's gives 0.

    Args:
        page: of the quotation.
        pages: of the points, in order; None where a point's page is not known.
    """
    known = [at for at in pages if at is not None]
    if page is None or not known or any(one > other for one, other in pairwise(known)):
        return None
    number = max((n for n, at in enumerate(pages, 1) if at is not None and at <= page), default=0)
    if number == len(pages):
        return number
    following = pages[number]
    return number if following is not None and following > page else None
