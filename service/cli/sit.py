"""`catchword sit`: today's sitting in the terminal."""

from datetime import date

import click
from rich.console import Console
from rich.padding import Padding
from rich.text import Text

from cards.answers import GRADES, Grade
from cards.kinds.base import Asked, Cue
from service.cli.attempts import ask_attempt
from service.cli.comparison import show_comparison
from service.cli.group import Tools
from service.cli.screen import console, faint, heading
from service.use_cases.answer import Compared, GivenAnswer, compare, record_answer, take_back
from service.use_cases.items import ItemView
from service.use_cases.ports import Desk
from service.use_cases.sit import todays_sitting


@click.command()
@click.pass_obj
def sit(tools: Tools) -> None:
    """Be asked what is due today. Every answer is kept at once; stop whenever you like."""
    screen = console()
    with tools.desk() as desk:
        try:
            _sit(desk, screen)
        except (click.Abort, KeyboardInterrupt):
            screen.print()
            screen.print(faint(_STOPPED))


_STOPPED = "Stopped. What you answered is kept."


def _sit(desk: Desk, screen: Console) -> None:
    while (sitting := todays_sitting(desk)).items:
        screen.rule(f"{len(sitting.items)} left", align="right", style="dim")
        if not _ask(desk, screen, sitting.items[0]):
            screen.print(faint(_STOPPED))
            return
    later = f" Something is asked again on {_long(sitting.next_on)}." if sitting.next_on else ""
    screen.print(f"That is all for today.{later}")


def _ask(desk: Desk, screen: Console, item: ItemView) -> bool:
    """Ask one item; False when the reader stops."""
    if item.cue is None:
        return True
    _show_cue(screen, item.cue, item)
    attempt = ask_attempt(screen, item.cue)
    compared = compare(desk, item.kept.item.id, attempt)
    show_comparison(screen, attempt, compared)
    grade = _grade(compared)
    given = GivenAnswer(desk.new_id(), item.kept.item.id, grade, None, attempt)
    recorded = record_answer(desk, given)
    memory = recorded.item.memory
    if memory is not None:
        days = (memory.due_on - compared.today).days
        once_more = " Once more before you stop today." if grade is Grade.BLANK else ""
        screen.print(f"Asked again on {_long(memory.due_on)}, in {_days(days)}.{once_more}")
    choice = click.prompt(
        "Enter goes on, t takes it back, s stops",
        default="",
        show_default=False,
        prompt_suffix=": ",
        type=click.Choice(["", "t", "s"]),
        show_choices=False,
    )
    if choice == "t":
        take_back(desk, recorded.answer.answer.id, desk.new_id())
        screen.print(faint("Taken back; it is asked as before."))
    return bool(choice != "s")


def _show_cue(screen: Console, cue: Cue, item: ItemView) -> None:
    screen.print(heading(cue.heading))
    screen.print(Padding(Text(cue.words), (1, 0)))
    if Asked.WORDS not in cue.asked:
        by = f", {item.author}" if item.author else ""
        screen.print(faint(f"{item.title}{by}"))
    if cue.caution:
        screen.print(Text(cue.caution, style="italic"))
    if cue.landmarks:
        screen.print("  0 ┬ before all of these")
        for mark in cue.landmarks:
            screen.print(Padding(Text(f"├ {mark.text}"), (0, 0, 0, 4)))
            screen.print(f"{mark.number:>3} ┼ here")
    screen.print(cue.question)


def _grade(compared: Compared) -> Grade:
    initials = {grade.value[0]: grade for grade in GRADES}
    chosen = click.prompt(
        "How did it come back? b(lank), h(azy), c(lear), v(ivid)",
        default=compared.mark.grade.value[0],
        type=click.Choice([*initials, *(grade.value for grade in GRADES)]),
        show_choices=False,
    )
    return initials[str(chosen)[0]]


def _days(count: int) -> str:
    return "1 day" if count == 1 else f"{count} days"


def _long(day: date) -> str:
    return f"{day.day} {day:%B %Y}"
