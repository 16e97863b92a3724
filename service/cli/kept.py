"""Was it kept? One key in the terminal, with a note or a count where the reader gives one."""

import click
from rich.console import Console

from cards.commitments import MAX_NOTE, CheckIn
from cards.commitments.check_ins import MOST_DEEDS
from cards.errors import CommitmentMissing, Invalid
from service.cli.attempts import Stopped
from service.cli.offers import OUTCOMES
from service.cli.screen import faint, prose
from service.use_cases.check_in import Report, check_in
from service.use_cases.commitments import HeldCommitment
from service.use_cases.ports import Desk

_HOW = "Was it kept? k(ept), p(artly), m(issed), n(ote), c(ount), Enter = not now, s(top)"


def ask_kept(desk: Desk, screen: Console, held: HeldCommitment) -> CheckIn | None:
    """Ask whether a commitment was kept, and keep what is said at once; None where nothing is.

    Raises:
        Stopped: the reader stops.
    """
    note, count = "", None
    while True:
        given = str(click.prompt(_HOW, default="", show_default=False)).strip().casefold()[:1]
        if given in OUTCOMES:
            report = Report(desk.new_id(), held.id, OUTCOMES[given], note=note, count=count)
            try:
                fact = check_in(desk, report)
            except (Invalid, CommitmentMissing) as refused:
                prose(screen, refused.message)
                return None
            prose(screen, faint(f"Kept. catchword checkin --take-back {fact.id} takes it back."))
            return fact
        match given:
            case "":
                return None
            case "s":
                raise Stopped
            case "n":
                note = str(click.prompt("Note", default="", show_default=False))[:MAX_NOTE]
            case "c":
                count = click.prompt("How many", type=click.IntRange(0, MOST_DEEDS))
            case _:
                prose(screen, "Choose k, p or m, or Enter for not now.")
