"""A cue in the terminal: what is shown before an attempt."""

from rich.console import Console
from rich.text import Text

from cards.kinds.base import Asked, Cue
from cards.parts import KeptDigest
from service.cli.plot import show_plot
from service.cli.screen import drawn, faint, heading, prose
from service.use_cases.items import ItemView

GAP = "____"
"""A word left out: always as long, so that it tells nothing."""


def show_cue(screen: Console, cue: Cue, item: ItemView, kept: KeptDigest) -> None:
    """Print what an item shows first, and what is asked."""
    screen.print(heading(cue.heading))
    screen.print()
    if cue.words:
        prose(screen, cue.words)
    if Asked.BLANKS in cue.asked:
        prose(screen, with_blanks(cue))
    if {Asked.GAP, Asked.PAGE, Asked.CHAPTER, Asked.ORDER} & set(cue.asked):
        by = f", {item.author}" if item.author else ""
        prose(screen, faint(f"{item.title}{by}"))
    if cue.caution:
        prose(screen, Text(cue.caution, style="italic"))
    screen.print()
    if Asked.GAP in cue.asked:
        _show_gaps(screen, cue)
    elif Asked.ORDER in cue.asked:
        for mark in cue.landmarks:
            prose(screen, f"{mark.number}. {mark.text}")
    for number, book in enumerate(cue.choices, 1):
        by = f", {book.author}" if book.author else ""
        prose(screen, f"{number}. {book.title}{by}")
    if Asked.PAGE in cue.asked:
        show_plot(screen, kept, points=bool(cue.landmarks))
    prose(screen, cue.question)


def with_blanks(cue: Cue) -> str:
    """Return a quotation with its blanks numbered."""
    first, *rest = cue.pieces
    return first + "".join(f"{GAP}({number}){piece}" for number, piece in enumerate(rest, 1))


def _show_gaps(screen: Console, cue: Cue) -> None:
    top, down, gap = drawn("┬", "+"), drawn("├", "|"), drawn("┼", "+")
    prose(screen, f"  0 {top} before all of these")
    for mark in cue.landmarks:
        prose(screen, Text(f"{down} {mark.text}"), indent=4)
        screen.print(f"{mark.number:>3} {gap} here")
