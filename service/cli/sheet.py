"""`catchword sheet`: today's sitting on paper, and what came back entered afterwards."""

from datetime import date
from pathlib import Path
from uuid import UUID

import click

from cards.answers import GRADES
from cards.errors import Missing
from service.cli.files import write_bytes
from service.cli.group import Tools
from service.cli.screen import console, faint, prose
from service.use_cases.ports import Desk
from service.use_cases.records import FEWEST_MINUTES, MOST_MINUTES
from service.use_cases.sheets import (
    Entered,
    compose_sheet,
    enter_sheet,
    keep_sheet,
    open_sheet,
    open_sheets,
)

_INITIALS = {grade.value[0]: grade for grade in GRADES}


@click.command()
@click.option(
    "--minutes",
    type=click.IntRange(FEWEST_MINUTES, MOST_MINUTES),
    help="How long the sitting takes at the most.",
)
@click.option(
    "--to",
    "target",
    type=click.Path(path_type=Path, allow_dash=True),
    help="The file to write; named after the day unless given, - for standard output.",
)
@click.option("--enter", is_flag=True, help="Enter what came back of the latest sheet.")
@click.option("--id", "sheet_id", type=click.UUID, help="Which sheet to enter.")
@click.option(
    "--on",
    type=click.DateTime(["%Y-%m-%d"]),
    help="The day you sat with it; today unless given.",
)
@click.pass_obj
def sheet(
    tools: Tools,
    minutes: int | None,
    target: Path | None,
    sheet_id: UUID | None,
    on: object,
    *,
    enter: bool,
) -> None:
    """Print today's sitting: cues on one side, answers on the other; enter the grades later."""
    with tools.desk() as desk:
        if enter or sheet_id is not None:
            _enter(desk, sheet_id, getattr(on, "date", lambda: None)())
        else:
            _print(desk, minutes, target)


def _print(desk: Desk, minutes: int | None, target: Path | None) -> None:
    printed = compose_sheet(desk, minutes)
    path = write_bytes(target, f"sitting-{printed.day}.pdf", desk.press.sheet(printed))
    # Kept only now: a sheet nobody has on paper would wait for answers that cannot come.
    keep_sheet(desk, printed)
    screen = console(stderr=True)
    if path is not None:
        screen.print(f"{len(printed.lines)} items: {path}")
    prose(screen, faint("catchword sheet --enter takes what came back."))


def _enter(desk: Desk, sheet_id: UUID | None, on: date | None) -> None:
    if sheet_id is None:
        waiting = open_sheets(desk)
        if not waiting:
            raise Missing("No printed sitting waits for its answers.", where="sheet")
        sheet_id = waiting[0].id
    printed, screen = open_sheet(desk, sheet_id), console()
    prose(screen, "How did each come back? b(lank), h(azy), c(lear), v(ivid); Enter leaves it.")
    entered = {}
    for line in printed.lines:
        prose(screen, f"{line.number}. {line.cue.heading}: {line.cue.words or line.title}")
        if line.answered_since:
            screen.print(faint("Answered since it was printed."))
        given = click.prompt(
            "",
            default="",
            show_default=False,
            prompt_suffix="> ",
            type=click.Choice(["", *_INITIALS]),
            show_choices=False,
        )
        if given:
            entered[line.item_id] = Entered(_INITIALS[str(given)])
    fresh = enter_sheet(desk, sheet_id, entered, on)
    if not printed.lines:
        prose(screen, "Nothing on this sheet is in the library any more; it is closed.")
    elif not entered:
        prose(screen, "Nothing was entered: the sheet still waits for its answers.")
    else:
        screen.print(f"{fresh} {'answer is' if fresh == 1 else 'answers are'} kept.")
