"""The two-page budget: how much of its pages a digest takes, and what to cut."""

from dataclasses import dataclass


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
class Cut:
    """Something that could be cut to bring a page back to its lines.

    Attributes:
        part: as in `cards.digest.Notice`: `theme`, `points 3`, `quotations 2`, ...
        lines: how many lines it takes.
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
        cuts: empty while both fit.
    """

    pages: tuple[PageUse, ...]
    cuts: tuple[Cut, ...] = ()
