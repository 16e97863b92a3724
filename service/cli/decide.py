"""`catchword decide`: pause, renew, reword, release, or correct a commitment."""

from datetime import date, datetime
from uuid import UUID

import click

from cards.commitments import Act, Outcome
from service.cli.group import Tools
from service.cli.measures import measure_read
from service.cli.screen import console, faint, prose
from service.use_cases.commitments import commitment_called
from service.use_cases.decide import Ruling, withdraw_decision
from service.use_cases.decide import decide as take
from service.use_cases.wording import readers_day

_DATE = click.DateTime(["%Y-%m-%d"])


@click.command()
@click.argument("commitment", required=False)
@click.argument("act", type=click.Choice([each.value for each in Act]), required=False)
@click.option("--day", type=_DATE, help="The day it holds from; today unless given.")
@click.option("--until", type=_DATE, help="The last day of a pause; the day it is moved to.")
@click.option("--words", default="", help="The reason, or the new wording.")
@click.option(
    "--outcome",
    type=click.Choice([each.value for each in Outcome]),
    help="What came of it, where it is closed.",
)
@click.option("--measure", "written", help="In words, as “three times a week”, or as JSON.")
@click.option("--take-back", type=click.UUID, help="Take back the decision of this id.")
@click.pass_obj
def decide(  # noqa: PLR0913 - a flag each
    tools: Tools,
    commitment: str | None,
    act: str | None,
    *,
    day: datetime | None,
    until: datetime | None,
    words: str,
    outcome: str | None,
    written: str | None,
    take_back: UUID | None,
) -> None:
    """Decide about COMMITMENT, named by its words, those of its book, or its id.

    Start it on another day, give it another measure, move its last day, pause or resume it, renew,
    halve or reword it, release it with a reason, or close it.
    """
    screen = console()
    with tools.desk() as desk:
        if take_back is not None:
            withdrawn = withdraw_decision(desk, take_back)
            prose(screen, f"Taken back: {withdrawn.act} of {withdrawn.day}.")
            return
        if commitment is None or act is None:
            raise click.UsageError("Say which commitment, and what is decided.")
        held = commitment_called(desk, commitment)
        on = _day(day) or readers_day(desk)
        ruling = Ruling(
            id=desk.new_id(),
            commitment_id=held.id,
            act=Act(act),
            day=_day(day),
            measure=None if written is None else measure_read(written, on),
            until=_day(until),
            outcome=None if outcome is None else Outcome(outcome),
            words=words,
        )
        decision = take(desk, ruling)
        prose(screen, f"{held.kept.title}: {decision.act} from {decision.day} on.")
        prose(screen, faint(f"catchword decide --take-back {decision.id} takes it back."))


def _day(given: datetime | None) -> date | None:
    return None if given is None else given.date()
