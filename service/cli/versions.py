"""`catchword versions DIGEST`: what a digest said before, and back to it."""

from zoneinfo import ZoneInfo

import click

from service.cli.group import Tools
from service.cli.screen import console, faint, heading, print_json
from service.use_cases.library import named
from service.use_cases.preferences import show_reader
from service.use_cases.versions import list_versions, open_version, restore_version


@click.command()
@click.argument("digest")
@click.option("--show", type=int, metavar="N", help="What the edit that made version N did.")
@click.option("--restore", type=int, metavar="N", help="Bring version N back, history and all.")
@click.option("--json", "as_json", is_flag=True, help="Print the list as JSON.")
@click.pass_obj
def versions(
    tools: Tools, digest: str, show: int | None, restore: int | None, *, as_json: bool
) -> None:
    """List the versions of DIGEST, newest first."""
    screen = console()
    with tools.desk() as desk:
        kept = named(desk, digest)
        if restore is not None:
            now = restore_version(desk, kept.id, restore, kept.revision)
            if now.revision == kept.revision:
                screen.print(f"{now.title} says already what version {restore} says.")
            else:
                screen.print(f"{now.title}: version {restore} is back, as version {now.revision}.")
            return
        if show is not None:
            opened = open_version(desk, kept.id, show)
            screen.print(heading(f"{kept.title}, version {show}: {opened.version.cause}"))
            for change in opened.changes:
                screen.print(f"{change.part.kind} {change.part.number} {change.became}")
                if change.before is not None:
                    screen.print(faint(f"  was: {change.before.text}"))
                screen.print(f"  now: {change.part.text}")
            return
        listed = list_versions(desk, kept.id)
        zone = ZoneInfo(show_reader(desk).time_zone)
    rows = [
        {"version": each.revision, "kept_at": each.kept_at.isoformat(), "cause": each.cause.value}
        for each in listed.entries
    ]
    if as_json:
        print_json(rows)
        return
    for each in listed.entries:
        screen.print(
            f"{each.revision}  {each.kept_at.astimezone(zone):%Y-%m-%d %H:%M}  {each.cause}"
        )
