"""`catchword retention`: what came back when asked, how well it was foreseen, and the plan."""

from collections.abc import Iterable, Sequence
from dataclasses import asdict

import click
from rich.console import Console

from cards.planning import YEARS
from service.cli.group import Tools
from service.cli.screen import console, faint, heading, print_json, prose
from service.use_cases.picture_records import Picture
from service.use_cases.retaining import Retained, show_retention
from service.use_cases.retaining_measures import measures, told
from service.use_cases.retaining_rows import show_rows
from service.use_cases.retaining_weights import considered, in_force, waiting
from service.use_cases.retention_pictures.coming import coming
from service.use_cases.retention_pictures.known import in_words
from service.use_cases.retention_pictures.promises import promises
from service.use_cases.retention_pictures.shares import (
    by_age,
    by_book,
    by_kind,
    by_month,
    headline,
)
from service.use_cases.retention_pictures.targets import proposal_in_words, within_in_words

_LONGEST = 30
"""Columns of a name: the figures stand beside it in a window of 80."""
_HEAD = ("target", *(f"min, {year}" for year in YEARS), *(f"known, {year}" for year in YEARS))
_EVERY = 3
"""Of the targets planned, hundredth by hundredth, every so many is printed."""


@click.command()
@click.option("--plan", is_flag=True, help="What each target takes and keeps over ten years.")
@click.option("--json", "as_json", is_flag=True, help="Print it as JSON.")
@click.pass_obj
def retention(tools: Tools, *, plan: bool, as_json: bool) -> None:
    """Say what came back when you were asked again, and how well it was foreseen."""
    with tools.desk() as desk:
        if as_json and not plan:
            print_json({"rows": [asdict(each) for each in show_rows(desk)]})
            return
        retained = show_retention(desk)
    if as_json:
        print_json(asdict(retained.plan))
    elif plan:
        _tell_plan(console(), retained)
    else:
        _tell(console(), retained)


def _tell(screen: Console, retained: Retained) -> None:
    prose(screen, headline(retained))
    for made in (by_kind, by_book, by_age, by_month):
        shares = made(retained)
        if not shares.empty:
            _tell_shares(screen, shares)
    ahead, kept = coming(retained), promises(retained)
    for title, sentence in (
        ("What is known", in_words(retained)),
        (ahead.title, ahead.description),
        (kept.title, kept.description),
    ):
        screen.print()
        screen.print(heading(title))
        prose(screen, sentence)
    quality = retained.figures.quality
    screen.print()
    screen.print(heading("How well it was foreseen"))
    if quality is None:
        prose(screen, "Nothing was foretold yet.")
    else:
        prose(screen, told(quality))
        _columns(screen, ((each.name, _figure(each.value)) for each in measures(quality)))
    for sentence in (in_force(retained), considered(retained)[0], waiting(retained.learnt)):
        if sentence:
            prose(screen, faint(sentence))


def _tell_shares(screen: Console, picture: Picture) -> None:
    screen.print()
    screen.print(heading(picture.title))
    prose(screen, picture.description)
    _columns(
        screen,
        (
            (label, share, f"{low} to {high}", f"{came_back} of {asked}")
            for label, asked, came_back, share, low, high, _ in picture.table.shown
        ),
    )


def _tell_plan(screen: Console, retained: Retained) -> None:
    plan = retained.plan
    prose(screen, proposal_in_words(plan.whole, retained.reader.target))
    prose(screen, within_in_words(retained))
    prose(screen, faint("Minutes a day in years 1, 5 and 10, and items known after them."))
    for each in (plan.whole, *(plan.by_care if len(plan.by_care) > 1 else ())):
        screen.print()
        screen.print(heading("The whole library" if each.care is None else f"Kept {each.care}"))
        _columns(
            screen,
            (
                _HEAD,
                *(
                    (
                        f"{target.target:.0%}",
                        *(f"{minutes:.1f}" for minutes in target.minutes),
                        *(f"{known:,.0f}" for known in target.known),
                    )
                    for target in each.targets[::_EVERY]
                ),
            ),
        )


def _figure(value: float | None) -> str:
    return "–" if value is None else f"{value:.4f}"


def _columns(screen: Console, rows: Iterable[Sequence[str]]) -> None:
    """Print rows in columns, the first to the left and the others to the right."""
    cells = [(first[:_LONGEST], *others) for first, *others in rows]
    begin, *widths = [max(map(len, column)) for column in zip(*cells, strict=True)]
    for first, *others in cells:
        right = (cell.rjust(width) for cell, width in zip(others, widths, strict=True))
        prose(screen, "  ".join((first.ljust(begin), *right)))
