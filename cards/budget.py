"""The two-page budget: how much of its pages a digest takes, and what to cut."""

from collections.abc import Sequence
from dataclasses import dataclass

_FAIR = {"theme": 12, "judgement": 5, "points": 3, "commitments": 3, "quotations": 6}
"""Lines a part may well have before it is the first to be shortened; common practice, no
published source: a theme is a paragraph, a quarter of its page, a point or a commitment a
sentence, and a dozen quotations of some forty words fill a page."""
_NAMES = {1: "Page one", 2: "Page two"}
_SEVERAL = {"points": "points", "commitments": "commitments", "quotations": "quotations"}


@dataclass(frozen=True, slots=True)
class PageUse:
    """How much of one page is used.

    Attributes:
        page: 1, the theme, points and commitments; 2, the quotations.
        lines_used: lines of type its parts take, as set for printing.
        lines_allowed: lines the page has.
    """

    page: int
    lines_used: int
    lines_allowed: int

    @property
    def over(self) -> int:
        """Lines beyond the page, 0 when it fits."""
        return max(0, self.lines_used - self.lines_allowed)


@dataclass(frozen=True, slots=True)
class PartUse:
    """How many lines of type one part takes, as set for printing.

    Attributes:
        part: as in `cards.digest.Notice`: `theme`, `points 3`, ...
        lines: of type, its locator included, the space around it not.
    """

    part: str
    lines: int


@dataclass(frozen=True, slots=True)
class Cut:
    """Something that could be cut to bring a page back to its lines.

    Attributes:
        part: as in `cards.digest.Notice`: `theme`, `points 3`, `quotations 2`, ...; `points`,
            `commitments` or `quotations` alone where it is for the reader to say which of
            them go.
        lines: how many lines to take out there.
        message: one sentence that says what to cut and by how many lines.
    """

    part: str
    lines: int
    message: str


@dataclass(frozen=True, slots=True)
class Budget:
    """How much of its two pages a digest takes, and what to cut where it is over.

    Attributes:
        pages: the use of page one and of page two.
        cuts: empty while both fit; else what brings each back to its lines when all of
            it is done, the most to be gained first.
    """

    pages: tuple[PageUse, ...]
    cuts: tuple[Cut, ...] = ()


def budget_of(pages: Sequence[tuple[PageUse, Sequence[PartUse]]]) -> Budget:
    """Return the budget of pages, each given with the parts that stand on it."""
    cuts = [cut for page, parts in pages for cut in _cuts(page, parts)]
    return Budget(tuple(page for page, _ in pages), tuple(cuts))


def _cuts(page: PageUse, parts: Sequence[PartUse]) -> list[Cut]:
    """Return cuts that come to the lines a page is over.

    What is longer than its kind should be is shortened first, the longest most; when
    that is not enough, whole points, commitments or quotations have to go, of what
    takes most of the page.
    """
    left = page.over
    cuts: list[Cut] = []
    said = f"{_NAMES[page.page]} is {_counted(left, 'line')} over: "
    for part in sorted(parts, key=_excess, reverse=True):
        lines = min(left, _excess(part))
        if lines <= 0:
            break
        name = _named(part.part)
        cuts.append(
            Cut(
                part.part,
                lines,
                f"{said}take {_counted(lines, 'line')} out of {name}, which has {part.lines}.",
            )
        )
        left -= lines
    if left > 0:
        cuts.append(_removal(said, left, parts, {cut.part: cut.lines for cut in cuts}))
    return cuts


def _removal(said: str, left: int, parts: Sequence[PartUse], cut: dict[str, int]) -> Cut:
    """Return what has to go besides: some of the kind that still takes most of the page."""
    lines: dict[str, list[int]] = {}
    for part in parts:
        kind = part.part.split(" ")[0]
        lines.setdefault(kind, []).append(part.lines - cut.get(part.part, 0))
    kind = max(lines, key=lambda kind: (kind in _SEVERAL, sum(lines[kind])), default="theme")
    counts = lines.get(kind, [])
    if kind not in _SEVERAL or len(counts) == 1:
        only = f"{kind} 1" if kind in _SEVERAL else kind
        taken = f"take {_counted(left, 'line')} out of {_named(only)}"
        return Cut(only, left, f"{said}{taken}{', besides' if cut else ''}.")
    going, gone = 0, 0
    for count in sorted(counts, reverse=True):
        if gone >= left or going == len(counts) - 1:
            break
        going, gone = going + 1, gone + count
    besides = "leave out" if not cut else "besides, leave out"
    return Cut(
        kind,
        left,
        f"{said}{besides} {going} of the {len(counts)} {_SEVERAL[kind]}, {_counted(left, 'line')} "
        "in all.",
    )


def _excess(part: PartUse) -> int:
    return part.lines - _FAIR[part.part.split(" ")[0]]


def _named(part: str) -> str:
    kind, _, number = part.partition(" ")
    return f"{kind.removesuffix('s')} {number}" if number else f"the {kind}"


def _counted(count: int, noun: str) -> str:
    return f"{count} {noun}" if count == 1 else f"{count} {noun}s"
