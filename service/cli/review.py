"""`catchword review [YEAR]`: a year of what the books asked, looked back on."""

from pathlib import Path

import click
from rich.console import Console

from cards.yearly import Promise, Review, figures, standing
from service.cli.files import write_bytes
from service.cli.group import Tools
from service.cli.screen import console, faint, heading, prose
from service.use_cases.yearly_review import yearly_review


@click.command()
@click.argument("year", type=int, required=False)
@click.option(
    "--to",
    "target",
    type=click.Path(path_type=Path, allow_dash=True),
    help="A file to write it to as PDF, - for standard output.",
)
@click.pass_obj
def review(tools: Tools, year: int | None, target: Path | None) -> None:
    """Look back on YEAR: what was promised, what was kept, what changed, what next.

    Without YEAR on the one that runs, in January on the one before.
    """
    with tools.desk() as desk:
        looked_at = yearly_review(desk, year)
        if target is None:
            _tell(looked_at)
            return
        path = write_bytes(target, "review.pdf", desk.press.review(looked_at))
    if path is not None:
        prose(console(stderr=True), f"{looked_at.year}: {path}")


def _tell(looked_at: Review) -> None:
    screen = console()
    screen.print(heading(f"What the books asked in {looked_at.year}"))
    prose(screen, f"As it stood on {looked_at.last}: {figures(looked_at)}.")
    for book in looked_at.books:
        screen.print()
        prose(screen, heading(", ".join(filter(None, (book.title, book.author)))))
        for one in book.promises:
            _tell_one(screen, one)
    for pair in looked_at.pairs:
        screen.print()
        prose(screen, pair.rule)
        for one in (pair.one, pair.other):
            prose(screen, f"{one.title}: {one.text}", indent=2)
    if looked_at.timed:
        screen.print()
        prose(screen, f"Together these ask {looked_at.minutes} minutes of every day:")
        for one in looked_at.timed:
            prose(screen, f"{one.title}: {one.text}", indent=2)
    if looked_at.to_renew:
        screen.print()
        screen.print(heading("What next?"))
        for one in looked_at.to_renew:
            if one.renewing is not None:
                prose(screen, f"{one.text} {one.renewing.question}", indent=2)


def _tell_one(screen: Console, one: Promise) -> None:
    prose(screen, one.text, indent=2)
    prose(screen, faint(standing(one)), indent=4)
    for change in one.changes:
        prose(screen, faint(f"{change.day}: {change.told}"), indent=4)
    if one.caution:
        prose(screen, faint(one.caution), indent=4)
