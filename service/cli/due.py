"""`catchword due`: what is asked today."""

import click

from service.cli.cues import with_blanks
from service.cli.group import Tools
from service.cli.screen import console, faint, heading, print_json, prose
from service.use_cases.sit import todays_sitting


@click.command()
@click.option("--json", "as_json", is_flag=True, help="Print it as JSON.")
@click.pass_obj
def due(tools: Tools, *, as_json: bool) -> None:
    """List what today's sitting asks, in its order."""
    with tools.desk() as desk:
        sitting = todays_sitting(desk)
    items = [
        {
            "id": str(item.kept.item.id),
            "kind": item.kept.item.kind.value,
            "title": None if item.asks_its_book else item.title,
            "cue": item.cue.words if item.cue else "",
            "due_on": item.due_on.isoformat() if item.due_on else None,
        }
        for item in sitting.items
    ]
    if as_json:
        print_json({"items": items, "minutes": sitting.minutes, "seconds": sitting.seconds})
        return
    screen = console()
    for shown in sitting.items:
        if shown.cue is not None:
            name = shown.kept.item.kind.value
            screen.print(heading(name if shown.asks_its_book else f"{name} · {shown.title}"))
            prose(screen, with_blanks(shown.cue) if shown.cue.pieces else shown.cue.words)
            if shown.cue.caution:
                prose(screen, faint(shown.cue.caution))
    if not sitting.items:
        later = f" Something is asked again on {sitting.next_on}." if sitting.next_on else ""
        screen.print(faint(f"Nothing is due on {sitting.day}.{later}"))
