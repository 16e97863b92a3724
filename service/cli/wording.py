"""`catchword wording TEXT`: check how a commitment is worded, store nothing."""

from datetime import date

import click
from rich.padding import Padding

from cards.commitments import Measure
from cards.commitments.telling import measure_in_words
from cards.errors import Invalid
from cards.wording import Wording
from service.cli.group import Tools
from service.cli.screen import console, faint, heading, print_json
from service.use_cases.wording import check_wording, readers_day


@click.command()
@click.argument("text")
@click.option(
    "--on", "on", metavar="DATE", help="The day it is made, as in 2026-03-01; today unless given."
)
@click.option("--json", "as_json", is_flag=True, help="Print it as JSON.")
@click.pass_obj
def wording(tools: Tools, text: str, on: str | None, *, as_json: bool) -> None:
    """Check whether a commitment is concrete, specific and measurable, and read its measure."""
    if on is None:
        with tools.desk() as desk:
            day = readers_day(desk)
    else:
        day = _day(on)
    checked = check_wording(text, day)
    if as_json:
        print_json(wording_fields(checked))
    else:
        _print(text, checked)


def wording_fields(checked: Wording) -> dict[str, object]:
    """Return a checked wording in the shape `catchword wording --json` prints."""
    return {
        "concrete": checked.concrete,
        "specific": checked.specific,
        "measurable": checked.measurable,
        "measure": None if checked.measure is None else _measure_fields(checked.measure),
        "cue": checked.cue,
        "advice": list(checked.advice),
    }


def _measure_fields(measure: Measure) -> dict[str, object]:
    return {
        "times": measure.times,
        "period": measure.period.value,
        "every": measure.every,
        "on": list(measure.on),
        "periods": measure.periods,
        "deadline": None if measure.deadline is None else measure.deadline.isoformat(),
        "minutes": measure.minutes,
    }


def _day(written: str) -> date:
    """Return a date written as RFC 3339 writes it.

    Raises:
        Invalid: it is none.
    """
    try:
        day = date.fromisoformat(written)
    except ValueError:
        day = None
    if day is None or len(written) != len("2026-03-01"):
        raise Invalid(f"“{written[:40]}” is not a date. Give one as 2026-03-01.", where="on")
    return day


def _print(text: str, checked: Wording) -> None:
    screen = console()
    screen.print(heading(" ".join(text.split())))
    if checked.concrete is not None:
        screen.print()
        for name, holds in (
            ("concrete", checked.concrete),
            ("specific", checked.specific),
            ("measurable", checked.measurable),
        ):
            screen.print(f"  {name}: {'yes' if holds else 'not yet'}")
        if checked.measure is not None:
            screen.print(f"  measure: {measure_in_words(checked.measure)}")
        if checked.cue is not None:
            screen.print(f"  cue: {checked.cue}")
    for sentence in checked.advice:
        screen.print()
        screen.print(Padding(sentence, (0, 0, 0, 2)))
    if not checked.advice:
        screen.print()
        screen.print(faint("There is nothing to mend in its wording."))
