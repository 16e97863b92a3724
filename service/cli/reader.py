"""`catchword reader`: the reader's settings."""

import click

from service.cli.group import Tools
from service.cli.screen import print_json
from service.use_cases.preferences import Preferences, set_preferences, show_reader


@click.command()
@click.option("--time-zone", metavar="NAME", help="An IANA name such as Europe/London.")
@click.option("--turns-at", type=int, metavar="HOUR", help="Hour at which your day turns over.")
@click.option("--target", type=float, metavar="SHARE", help="Retention aimed for, 0.7 to 0.97.")
@click.option("--unasked-a-day", type=int, metavar="N", help="Unasked items let in a day, at most.")
@click.option("--minutes", type=int, metavar="N", help="Minutes of a day's sitting, at most.")
@click.pass_obj
def reader(
    tools: Tools,
    time_zone: str | None,
    turns_at: int | None,
    target: float | None,
    unasked_a_day: int | None,
    minutes: int | None,
) -> None:
    """Show your settings, after changing those that are given."""
    wanted = Preferences(time_zone, turns_at, target, unasked_a_day, minutes)
    with tools.desk() as desk:
        if wanted != Preferences():
            set_preferences(desk, wanted)
        now = show_reader(desk)
    print_json(
        {
            "time_zone": now.time_zone,
            "turns_at": now.turns_at,
            "target": now.target,
            "unasked_a_day": now.unasked_a_day,
            "minutes": now.minutes,
        }
    )
