"""The inks, and the manners words are written in."""

from dataclasses import dataclass
from typing import Final, Literal

Ink = Literal["ink", "faint", "rule", "line", "rubric", "ground", "none"]
"""`ground` is what the picture lies on."""


@dataclass(frozen=True, slots=True)
class Manner:
    """How words are written; a halo keeps them apart from what lies below them."""

    ink: Ink = "ink"
    slanted: bool = False
    halo: bool = False


PLAIN: Final = Manner()
FAINT: Final = Manner("faint")
RUBRIC: Final = Manner("rubric")
TITLE: Final = Manner("faint", slanted=True)
"""Of an axis."""
NAME: Final = Manner(halo=True)
OVER: Final = Manner("faint", halo=True)
"""A name and a number, among the marks of a drawing."""
