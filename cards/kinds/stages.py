"""A theme's ideas told by its stages: the digest's points, which say the same at more length."""

from collections import Counter
from collections.abc import Iterator, Sequence

from cards.kinds.comparing import compare
from cards.kinds.ideas import ideas
from cards.kinds.meeting import meet, read
from cards.kinds.words import HIT

_TELLS_FROM = 2
"""Words a point has in common with the idea it is a stage of, at the least."""


def told_by_stages(theme: str, points: Sequence[str], attempt: str) -> frozenset[int]:
    """Return the numbers, from 1, of the ideas of a theme that an attempt tells by its points.

    The points are the stages of the theme: who names one in the words of the point has
    recalled the idea it is a stage of. A point is a stage of the idea it has most words in
    common with, two at the least; it is told when half of its own ideas came back, and none
    turned round. An idea the points tell nothing of is left as it was found.
    """
    text = "\n".join(points)
    if not text.strip():
        return frozenset()
    told = set(_told(text, points, attempt))
    return frozenset(unit + 1 for point, unit in _stages(theme, points, text) if point in told)


def _ranges(points: Sequence[str]) -> Iterator[tuple[int, int]]:
    start = 0
    for point in points:
        yield start, start + len(point)
        start += len(point) + 1


def _told(text: str, points: Sequence[str], attempt: str) -> Iterator[int]:
    units = compare(text, attempt).ideas
    place = 0
    for number, (_, end) in enumerate(_ranges(points)):
        own = []
        while place < len(units) and units[place].span.start < end:
            own.append(units[place])
            place += 1
        came = sum(unit.span.hit for unit in own)
        if own and came >= HIT * len(own) and not any(unit.turned for unit in own):
            yield number


def _stages(theme: str, points: Sequence[str], text: str) -> Iterator[tuple[int, int]]:
    """Yield each point that is a stage of an idea, and that idea."""
    wanted = read(text, list(_ranges(points)))
    given = read(theme, ideas(theme) or [(0, len(theme))])
    meet(wanted, given)
    shared: dict[int, Counter[int]] = {}
    for word in wanted:
        counts = shared.setdefault(word.unit, Counter())
        counts.update({given[number].unit for number in word.met})
    for point, counts in shared.items():
        if counts:
            unit, words = max(counts.items(), key=lambda each: (each[1], -each[0]))
            if words >= _TELLS_FROM:
                yield point, unit
