"""The colours of the inks: the page's own tokens, and their values for a file that stands alone.

A page's stylesheet gives them by class. A file carries them as attributes, which any program
reads, and a stylesheet of its own for those that can show it dark.
"""

from typing import Final

from lxml import etree

LIGHT: Final = {
    "ink": "#221d17",
    "faint": "#6a6055",
    "rule": "#d9d0c1",
    "line": "#8b8072",
    "rubric": "#8a2b33",
    "ground": "#fffdf8",
}
DARK: Final = {
    "ink": "#ece4d6",
    "faint": "#a99e8e",
    "rule": "#3b352d",
    "line": "#857a6b",
    "rubric": "#e59a8c",
    "ground": "#1e1b17",
}
"""The tokens of the pages; `ground` is the leaf a picture lies on."""


def dressed(drawing: etree._Element, colours: dict[str, str]) -> None:
    """Give every mark its colours as attributes."""
    for mark in drawing.iter():
        for each in mark.get("class", "").split():
            use, _, ink = each.partition("-")
            mark.set({"f": "fill", "s": "stroke"}[use], colours[ink])


def stylesheet() -> str:
    """Return the stylesheet of a file: its colours where the system asks for dark."""
    rules = "".join(
        f".f-{ink}{{fill:{colour}}}.s-{ink}{{stroke:{colour}}}" for ink, colour in DARK.items()
    )
    return f"@media (prefers-color-scheme:dark){{{rules}}}"
