"""`catchword checkin`: what came of what the books ask."""

from datetime import datetime
from uuid import UUID

import click
from rich.console import Console

from cards.commitments import Outcome, Pace, Pressing, pressing
from cards.commitments.check_ins import MOST_DEEDS
from service.cli.attempts import Stopped
from service.cli.commitments import show_commitment
from service.cli.group import Tools
from service.cli.kept import ask_kept
from service.cli.offers import ask_offer
from service.cli.screen import console, faint, prose
from service.use_cases.bringing_up import brought_up
from service.use_cases.check_in import Report, check_in, withdraw_check_in
from service.use_cases.commitments import (
    HeldCommitment,
    all_commitments,
    commitment_called,
    open_commitment,
)
from service.use_cases.ports import Desk


@click.command()
@click.argument("commitment", required=False)
@click.argument("outcome", type=click.Choice([each.value for each in Outcome]), required=False)
@click.option(
    "--day", type=click.DateTime(["%Y-%m-%d"]), help="The day it is about; today unless given."
)
@click.option("--count", type=click.IntRange(0, MOST_DEEDS), help="How many deeds it reports.")
@click.option("--note", default="", help="What you say about it.")
@click.option("--witness", default="", help="Who saw it.")
@click.option("--take-back", type=click.UUID, help="Take back the check-in of this id.")
@click.pass_obj
def checkin(  # noqa: PLR0913 - a flag each
    tools: Tools,
    commitment: str | None,
    outcome: str | None,
    *,
    day: datetime | None,
    count: int | None,
    note: str,
    witness: str,
    take_back: UUID | None,
) -> None:
    """Say what came of what your books ask; each is kept at once, stop when you like.

    With COMMITMENT, words of it or of its book or its id, and OUTCOME, it reports on that one.
    """
    if commitment is not None and outcome is None:
        raise click.UsageError("Say what came of it: kept, partly or missed.")
    if commitment is None and (day, count, note, witness) != (None, None, "", ""):
        raise click.UsageError("Say which commitment it is about, and what came of it.")
    screen = console()
    with tools.desk() as desk:
        if take_back is not None:
            withdrawn = withdraw_check_in(desk, take_back)
            prose(screen, f"Taken back: {withdrawn.outcome} on {withdrawn.day}.")
        elif commitment is not None and outcome is not None:
            held = commitment_called(desk, commitment)
            on = None if day is None else day.date()
            report = Report(desk.new_id(), held.id, Outcome(outcome), on, note, count, witness)
            fact = check_in(desk, report)
            prose(screen, f"{held.kept.title}: {fact.outcome} on {fact.day}.")
            prose(screen, faint(f"catchword checkin --take-back {fact.id} takes it back."))
        else:
            _go_through(desk, screen)


def _go_through(desk: Desk, screen: Console) -> None:
    wanting = _wanting(desk)
    if not wanting:
        prose(screen, faint("Nothing wants a word today."))
    try:
        for place, held in enumerate(wanting):
            screen.rule(f"{len(wanting) - place} left", align="right", style="dim")
            show_commitment(screen, held)
            _ask(desk, screen, held)
    except (click.Abort, KeyboardInterrupt, Stopped):
        screen.print()
        screen.print(faint("Stopped. What you said is kept."))


def _wanting(desk: Desk) -> list[HeldCommitment]:
    """Return what wants a word, stalled first, then slipping, then open; last what is over."""
    every = [each for those in all_commitments(desk).by_pace.values() for each in those]
    pressed = sorted(((_pressing(each), each) for each in every), key=lambda one: -one[0])
    wanting = [each for how, each in pressed if how is not Pressing.NOT_AT_ALL]
    last = brought_up(desk)
    if last is not None and last.id not in {each.id for each in wanting}:
        wanting.append(last)
    return wanting


def _pressing(held: HeldCommitment) -> Pressing:
    return Pressing.NOT_AT_ALL if held.stand is None else pressing(held.stand)


def _ask(desk: Desk, screen: Console, held: HeldCommitment) -> None:
    asked = held.stand is not None and held.stand.asked
    if asked and ask_kept(desk, screen, held) is not None:
        held = open_commitment(desk, held.id).held
    offer = held.offer
    if offer is not None and held.stand is not None and held.stand.pace is not Pace.SLIPPING:
        ask_offer(desk, screen, held, offer)
