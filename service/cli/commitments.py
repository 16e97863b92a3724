"""`catchword commitments`: what the books ask, and how it stands."""

from datetime import date, datetime

import click
from rich.console import Console

from cards.commitments import Pace, Stand
from cards.commitments.telling import measure_in_words, progress, told
from service.cli.group import Tools
from service.cli.screen import console, faint, heading, print_json, prose
from service.use_cases.commitments import AllCommitments, HeldCommitment, all_commitments

_IN_ORDER = (
    Pace.STALLED,
    Pace.SLIPPING,
    Pace.UNJUDGED,
    Pace.ON_COURSE,
    Pace.PAUSED,
    Pace.ENDED,
    Pace.DONE,
    Pace.RELEASED,
)
"""What wants a word stands first, and what is over last, as on the page."""


@click.command()
@click.option(
    "--on",
    type=click.DateTime(["%Y-%m-%d"]),
    help="The day asked about, at most a year ahead; today unless given.",
)
@click.option("--json", "as_json", is_flag=True, help="Print it as JSON.")
@click.pass_obj
def commitments(tools: Tools, on: datetime | None, *, as_json: bool) -> None:
    """List what your books ask by how it stands, with the rule and the figures."""
    with tools.desk() as desk:
        found = all_commitments(desk, None if on is None else on.date())
    if as_json:
        print_json(_as_json(found))
    else:
        _list(console(), found)


def _list(screen: Console, found: AllCommitments) -> None:
    for pace in _IN_ORDER:
        those = found.by_pace.get(pace, ())
        if those:
            screen.print(heading(pace.value.capitalize()))
        for each in those:
            show_commitment(screen, each, indent=2)
            screen.print()
    if not found.by_pace:
        prose(screen, faint(f"On {found.day} the library asks nothing."))


def show_commitment(screen: Console, held: HeldCommitment, *, indent: int = 0) -> None:
    """Print a commitment with its book, how it stands, how far it is and its caution."""
    by = f", {held.kept.author}" if held.kept.author else ""
    prose(screen, held.kept.text, indent=indent)
    prose(screen, faint(f"{held.kept.title}{by}"), indent=indent)
    if held.stand is not None:
        prose(
            screen, f"{_measure(held.stand)}{told(held.stand)}{_so_far(held.stand)}", indent=indent
        )
    if held.caution:
        prose(screen, faint(held.caution), indent=indent)


def _measure(stand: Stand) -> str:
    measure = stand.life.term.measure
    if measure is None:
        return ""
    said = measure_in_words(measure)
    return f"{said[:1].upper()}{said[1:]}. "


def _so_far(stand: Stand) -> str:
    done = progress(stand)
    return "" if done is None or done in told(stand) else f" {done[:1].upper()}{done[1:]}."


def _as_json(found: AllCommitments) -> dict[str, object]:
    return {
        "day": found.day.isoformat(),
        "commitments": [_fields(each) for those in found.by_pace.values() for each in those],
    }


def _fields(held: HeldCommitment) -> dict[str, object]:
    stand, offer = held.stand, held.offer
    return {
        "id": str(held.id),
        "digest": str(held.kept.digest_id),
        "title": held.kept.title,
        "text": held.kept.text,
        "pace": None if stand is None else stand.pace.value,
        "rule": None if stand is None else stand.rule.value,
        "said": None if stand is None else told(stand),
        "progress": None if stand is None else progress(stand),
        "ends_on": _written(None if stand is None else stand.ends_on),
        "acts": [] if offer is None else [each.value for each in offer.acts],
    }


def _written(day: date | None) -> str | None:
    return None if day is None else day.isoformat()
