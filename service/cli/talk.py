"""`catchword talk DIGEST`: telling another person about a book, and that it took place."""

from datetime import date, datetime
from pathlib import Path
from uuid import UUID

import click

from cards.talk import Length, length_of
from cards.talk.facts import MOST_MINUTES
from service.cli.files import write_bytes
from service.cli.group import Tools
from service.cli.screen import console, faint, prose
from service.use_cases.library import named
from service.use_cases.ports import Desk
from service.use_cases.talking import HeldTalk, record_talk, talk_sheet, talks_of
from service.use_cases.writing_out import file_stem

_LENGTHS = [str(int(each)) for each in Length]


@click.command()
@click.argument("digest")
@click.option(
    "--minutes",
    type=click.Choice(_LENGTHS),
    default=_LENGTHS[0],
    show_default=True,
    help="80 with someone who read the book, 15 with someone who did not.",
)
@click.option(
    "--to",
    "target",
    type=click.Path(path_type=Path, allow_dash=True),
    help="The file to write; named after the book unless given, - for standard output.",
)
@click.option("--held-with", "listener", help="Record that you talked, and with whom.")
@click.option(
    "--on",
    type=click.DateTime(["%Y-%m-%d"]),
    help="The day you talked; today unless given.",
)
@click.option("--took", type=click.IntRange(1, MOST_MINUTES), help="How many minutes you talked.")
@click.option("--note", default="", help="What came of it.")
@click.option(
    "--resolved", multiple=True, help="A new commitment, added to the digest; may be repeated."
)
@click.option("--judgement", help="What you hold of the book now.")
@click.option("--list", "listing", is_flag=True, help="List the talks about it.")
@click.pass_obj
def talk(  # noqa: PLR0913 - a flag each
    tools: Tools,
    digest: str,
    *,
    minutes: str,
    target: Path | None,
    listener: str | None,
    on: datetime | None,
    took: int | None,
    note: str,
    resolved: tuple[str, ...],
    judgement: str | None,
    listing: bool,
) -> None:
    """Print the sheet of a talk about DIGEST's book; or record that one took place.

    One page to talk by, one to check by; the minutes are a proposal.
    """
    told = (on, took, judgement) != (None, None, None) or note or resolved
    if listener is None and told:
        raise click.UsageError("Say with whom you talked, with --held-with.")
    with tools.desk() as desk:
        kept = named(desk, digest)
        if listing:
            _list(desk, kept.id)
        elif listener is None:
            _print(desk, kept.id, length_of(int(minutes)), target)
        else:
            day: date | None = None if on is None else on.date()
            held = HeldTalk(desk.new_id(), kept.id, day, listener, took, note, resolved, judgement)
            _record(desk, held, kept.title)


def _print(desk: Desk, digest_id: UUID, length: Length, target: Path | None) -> None:
    agenda = talk_sheet(desk, digest_id, length)
    name = f"talk-{file_stem(agenda.title)}.pdf"
    path = write_bytes(target, name, desk.press.talk(agenda))
    screen = console(stderr=True)
    if path is not None:
        prose(screen, f"{agenda.title}, {agenda.length} minutes: {path}")
    prose(screen, faint("catchword talk --held-with NAME keeps that you talked."))


def _record(desk: Desk, held: HeldTalk, title: str) -> None:
    recorded = record_talk(desk, held)
    screen = console()
    prose(screen, f"{title}: the talk of {recorded.talk.day} is kept.")
    if recorded.added:
        more = "commitment is" if recorded.added == 1 else "commitments are"
        prose(screen, f"{recorded.added} new {more} in the digest.")


def _list(desk: Desk, digest_id: UUID) -> None:
    screen = console()
    talks = talks_of(desk, digest_id)
    if not talks:
        screen.print(faint("Nobody was told about it yet."))
    for each in talks:
        said = [f"with {each.listener}" if each.listener else ""]
        said.append(f"{each.minutes} min" if each.minutes else "")
        prose(screen, ", ".join(filter(None, (str(each.day), *said))))
        if each.note:
            prose(screen, faint(each.note), indent=2)
