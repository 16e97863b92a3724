"""The plot line in the terminal: a book from its first page to its last."""

from collections.abc import Mapping

from rich.console import Console

from cards.parts import KeptDigest, PartKind
from service.cli.screen import MEASURE, drawn, faint

_NARROWEST = 12
"""Columns below which a strip tells nothing."""


def show_plot(
    screen: Console,
    kept: KeptDigest,
    *,
    points: bool,
    here: int | None = None,
    guess: int | None = None,
) -> None:
    """Print a book's strip: its points, where something stands, and where it was placed.

    Only what has a known page is drawn; nothing is where no page is known, or the window is
    too narrow.
    """
    ticks = [part.page for part in kept.held(PartKind.POINT) if part.page] if points else []
    named = [page for page in (*ticks, here) if page]
    last = max([kept.pages or 0, *named, guess or 0])
    width = min(screen.width, MEASURE) - 2
    if last < 2 or not named or width < _NARROWEST:
        return
    point, stands, placed = drawn("┴", "'"), drawn("▲", "^"), drawn("△", "?")
    line, under = drawn("─", "-"), {}
    strip = [line] * width
    for page in ticks:
        strip[_at(page, last, width)] = point
    if guess is not None:
        under[_at(guess, last, width)] = placed
    if here is not None:
        under[_at(here, last, width)] = stands
    screen.print(f" {''.join(strip)} ", soft_wrap=True)
    if under:
        screen.print(f" {_row(under, width)} ", soft_wrap=True)
    ends = f"p. 1{f'p. {last}':>{max(1, width - 4)}}"
    screen.print(faint(f" {ends}"), soft_wrap=True)
    said = [f"{point} a point"] if ticks else []
    if here is not None:
        said.append(f"{stands} where it stands, page {here}")
    if guess is not None:
        said.append(f"{placed} where you placed it, page {guess}")
    screen.print(faint(" " + "   ".join(said)))


def _at(page: int, last: int, width: int) -> int:
    return round((min(max(page, 1), last) - 1) / (last - 1) * (width - 1))


def _row(marks: Mapping[int, str], width: int) -> str:
    return "".join(marks.get(column, " ") for column in range(width)).rstrip()
