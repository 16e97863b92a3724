"""Words beside what they name: kept apart from each other, and inside the sheet."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

GAP = 3.0
"""Units kept free between two labels."""
_COLUMN = 16.0
"""Units of the columns in which areas are looked for."""


def spread(
    wanted: Sequence[float], heights: Sequence[float], top: float, bottom: float
) -> list[float]:
    """Return the middles of blocks one under another, each as near as may be to where it should.

    Blocks that would overlap stand together, in the middle of where they should be.

    Args:
        wanted: the middles they should have.
        heights: theirs.
        top: none reaches above it.
        bottom: none reaches below it, as far as there is room for all of them.
    """
    order = sorted(range(len(wanted)), key=lambda n: (wanted[n], n))
    piles: list[list[int]] = []
    heads: list[float] = []
    for n in order:
        piles.append([n])
        heads.append(wanted[n] - heights[n] / 2)
        while len(piles) > 1 and heads[-2] + _high(piles[-2], heights) > heads[-1]:
            last, _ = piles.pop(), heads.pop()
            piles[-1] += last
            heads[-1] = _head(piles[-1], wanted, heights)
    floor = max(bottom, top + sum(heights))
    for n in reversed(range(len(piles))):
        heads[n] = min(heads[n], floor - _high(piles[n], heights))
        floor = heads[n]
    ceiling, middles = top, [0.0] * len(wanted)
    for pile, head in zip(piles, heads, strict=True):
        ceiling = max(ceiling, head)
        for n in pile:
            middles[n] = ceiling + heights[n] / 2
            ceiling += heights[n]
    return middles


def _high(pile: list[int], heights: Sequence[float]) -> float:
    return sum(heights[n] for n in pile)


def _head(pile: list[int], wanted: Sequence[float], heights: Sequence[float]) -> float:
    """Return where a pile begins when its blocks miss their middles by nothing on the mean."""
    above, missed = 0.0, 0.0
    for n in pile:
        missed += wanted[n] - heights[n] / 2 - above
        above += heights[n]
    return missed / len(pile)


@dataclass(frozen=True, slots=True)
class Area:
    """A rectangle on the sheet, from its upper left corner to its lower right one."""

    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: "Area") -> bool:
        """Whether two areas are nearer than the gap."""
        apart = (
            self.right + GAP <= other.left
            or other.right + GAP <= self.left
            or self.bottom <= other.top
            or other.bottom <= self.top
        )
        return not apart

    def within(self, other: "Area") -> bool:
        """Whether it lies in another."""
        return (
            other.left <= self.left
            and other.top <= self.top
            and self.right <= other.right
            and self.bottom <= other.bottom
        )


class Taken:
    """The areas of a sheet on which something stands already."""

    def __init__(self, sheet: Area) -> None:
        self._sheet = sheet
        self._columns: dict[int, list[Area]] = {}

    def take(self, area: Area) -> None:
        """Take an area."""
        for column in _columns(area):
            self._columns.setdefault(column, []).append(area)

    def first_free(self, offered: Iterable[Area]) -> Area | None:
        """Take the first free one of the areas offered, or return None when none is."""
        for area in offered:
            if area.within(self._sheet) and not any(map(area.meets, self._near(area))):
                self.take(area)
                return area
        return None

    def _near(self, area: Area) -> Iterator[Area]:
        for column in _columns(area):
            yield from self._columns.get(column, ())


def _columns(area: Area) -> range:
    """Return the columns of the sheet an area comes near to: few areas are in each."""
    left, right = area.left - GAP, area.right + GAP
    return range(int(left // _COLUMN), int(right // _COLUMN) + 1)
