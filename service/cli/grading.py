"""The grade in the terminal: ticks corrected, the mark told, the reader's own grade."""

import re
from dataclasses import replace

import click
from rich.console import Console

from cards.answers import GRADES, Grade
from cards.kinds.base import Attempt
from service.cli.comparison import show_ideas, show_suggestion
from service.cli.screen import prose
from service.use_cases.answer import Compared, compare
from service.use_cases.ports import Desk

_INITIALS = {grade.value[0]: grade for grade in GRADES}
_HOW = "How did it come back? b(lank), h(azy), c(lear), v(ivid)"
_TICKS = re.compile(r"\d{1,3}(?:[\s,]+\d{1,3})*", re.ASCII)


def ask_grade(
    desk: Desk, screen: Console, attempt: Attempt, compared: Compared
) -> tuple[Grade, Attempt]:
    """Ask for the reader's own grade; with ideas, numbers tick and untick them first.

    Returns:
        The grade, and the attempt with the ticks the reader corrected.
    """
    if compared.graded_first:
        prose(screen, "Grade this one before the mark is shown, so that it has no pull on you.")
        return _unsuggested(), attempt
    show_suggestion(screen, compared.mark)
    while True:
        given = _asked(compared.mark.grade, ticks=bool(compared.mark.ideas))
        if given in _INITIALS:
            return _INITIALS[given], attempt
        if compared.mark.ideas and _TICKS.fullmatch(given):
            attempt = _ticked(attempt, compared, given)
            compared = compare(desk, compared.item.kept.item.id, attempt)
            show_ideas(screen, compared.mark, compared.answered.words)
            show_suggestion(screen, compared.mark)
            continue
        screen.print(
            "Choose b, h, c or v" + (", or numbers to tick." if compared.mark.ideas else ".")
        )


def _asked(suggested: Grade, *, ticks: bool) -> str:
    how = f"{_HOW}; numbers tick and untick ideas" if ticks else _HOW
    given = str(click.prompt(how, default=suggested.value[0])).strip().casefold()
    return given[:1] if given in {grade.value for grade in GRADES} else given


def _unsuggested() -> Grade:
    choices = [*_INITIALS, *(grade.value for grade in GRADES)]
    given = click.prompt(_HOW, type=click.Choice(choices), show_choices=False)
    return _INITIALS[str(given)[0]]


def _ticked(attempt: Attempt, compared: Compared, given: str) -> Attempt:
    ideas = compared.mark.ideas
    ticked = {number for number, idea in enumerate(ideas, 1) if idea.found}
    for number in (int(each) for each in re.split(r"[\s,]+", given)):
        if 1 <= number <= len(ideas):
            ticked ^= {number}
    return replace(attempt, ticked=frozenset(ticked))
