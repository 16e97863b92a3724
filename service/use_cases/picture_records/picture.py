"""A picture, and what draws it."""

import re
from dataclasses import dataclass
from typing import Protocol

from service.use_cases.picture_records.counts import Days, Grid, Months
from service.use_cases.picture_records.curves import Curves, Steps
from service.use_cases.picture_records.shares import Calibration, Shares
from service.use_cases.picture_records.table import Table

_SLUG = re.compile(r"[a-z][a-z0-9]*(?:-[a-z0-9]+)*")
_LONGEST_SLUG = 60

Drawing = Shares | Calibration | Curves | Steps | Days | Grid | Months


@dataclass(frozen=True, slots=True)
class Picture:
    """One picture.

    Attributes:
        name: a slug, its own on a page and in an address.
        title: what it shows, in a few words.
        description: what there is to see, in a sentence or two made from the figures; it stands
            in the picture's place when there is nothing to draw.
        table: its figures.
        drawing: what is drawn.
    """

    name: str
    title: str
    description: str
    table: Table
    drawing: Drawing

    def __post_init__(self) -> None:
        """Check the name, which becomes part of ids and file names."""
        if len(self.name) > _LONGEST_SLUG or not _SLUG.fullmatch(self.name):
            raise ValueError("a picture’s name is a slug")

    @property
    def empty(self) -> bool:
        """Whether there is nothing to draw."""
        match self.drawing:
            case Shares(rows=marks) | Calibration(points=marks):
                return not marks
            case Curves(lines=lines, dots=dots):
                return not dots and not any(line.points for line in lines)
            case Steps(lines=lines):
                return not lines
            case Days(days=days):
                return not any(bar.within or bar.over for bar in days)
            case Grid(counts=counts):
                return not any(count for row in counts for count in row)
            case Months(months=months):
                return not any(m.kept or m.partly or m.missed or m.silent for m in months)


class Drawer(Protocol):
    """What draws pictures."""

    def inline(self, picture: Picture) -> str:
        """Return a picture as markup for a page: a wide and a narrow SVG, of which one shows."""
        ...

    def svg(self, picture: Picture) -> bytes:
        """Return a picture as an SVG file that stands alone, light or dark as the system asks."""
        ...

    def png(self, picture: Picture, *, dark: bool = False) -> bytes:
        """Return a picture as a PNG, two dots to a unit.

        Raises:
            CannotWrite: it could not be set.
        """
        ...

    def data(self, picture: Picture) -> bytes:
        """Return the figures of a picture as CSV (RFC 4180) in UTF-8."""
        ...
