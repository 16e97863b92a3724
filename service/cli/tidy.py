"""`catchword tidy`: what is done by itself, for cron or a systemd timer."""

from collections.abc import Iterator
from importlib import resources

import click

from service.cli.group import Tools
from service.cli.screen import print_json
from service.use_cases.learning import Learned
from service.use_cases.tidy import Mailed
from service.use_cases.tidy import tidy as tidy_up

_SAID = {
    Mailed.SENT: "Today’s mail is sent.",
    Mailed.OFF: "No mail is wanted.",
    Mailed.NO_SERVER: "A mail is wanted, but no mail server is known: set CATCHWORD_SMTP_HOST.",
    Mailed.NOT_YET: "It is not time for today’s mail yet.",
    Mailed.NOTHING_TO_SAY: "There is nothing to say today, so no mail goes out.",
    Mailed.BEFORE: "Today’s mail was sent before.",
}


@click.command()
@click.option("--json", "as_json", is_flag=True, help="Print what was done as JSON.")
@click.option("--units", is_flag=True, help="Print units for systemd that run it every hour.")
@click.pass_obj
def tidy(tools: Tools, *, as_json: bool, units: bool) -> None:
    """Do what is due, once: learn from the answers, send today's mail.

    Run it every hour; again it changes nothing.
    """
    if units:
        folder = resources.files("service.post") / "units"
        for name in ("catchword-tidy.service", "catchword-tidy.timer"):
            click.echo(f"# {name}\n{(folder / name).read_text(encoding='utf-8')}")
        return
    with tools.desk() as desk:
        done = tidy_up(desk)
    if as_json:
        print_json({"mail": done.mail.value, "weights": _as_json(done.learned)})
        return
    for line in (*_learned(done.learned), _SAID[done.mail]):
        click.echo(line)


def _learned(learned: Learned) -> Iterator[str]:
    """Say what learning from the answers came to, where it came to anything."""
    if learned.fitting is not None:
        for verdict in learned.fitting.verdicts:
            if verdict.kind is None or verdict.adopted:
                yield verdict.sentence
    if learned.moved:
        more = f"; {learned.waiting} more wait for the days to come" if learned.waiting else ""
        days = "due day was" if learned.moved == 1 else "due days were"
        yield f"{learned.moved} {days} moved to what your own weights foresee{more}."


def _as_json(learned: Learned) -> dict[str, object]:
    fitting = learned.fitting
    return {
        "considered": fitting is not None,
        "adopted": fitting is not None and fitting.adopted,
        "sentences": [] if fitting is None else [each.sentence for each in fitting.verdicts],
        "moved": learned.moved,
        "waiting": learned.waiting,
    }
