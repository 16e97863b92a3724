"""The two forms a picture is drawn in: for a page and a file, and for a phone."""

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, slots=True)
class Form:
    """One form a picture is drawn in.

    Attributes:
        name: becomes part of ids and the class that shows it.
        width: of the sheet, in its own units.
        size: of the type.
    """

    name: str
    width: float
    size: float

    @property
    def line(self) -> float:
        """The distance from line to line."""
        return round(1.35 * self.size, 2)

    @property
    def narrow(self) -> bool:
        """Whether it is for a phone."""
        return self.width < 480


WIDE: Final = Form("wide", 640, 14)
"""Shown from 520 to 768 pixels wide: type of 11.4 to 16.8 pixels."""
NARROW: Final = Form("narrow", 300, 13.5)
"""Shown from 245 to 360 pixels wide: type of 11 to 16.2 pixels."""
