"""`catchword sit`: today's sitting in the terminal."""

from datetime import date
from uuid import UUID

import click
from rich.console import Console

from cards.answers import Grade, seconds_taken
from cards.commitments import Pressing, pressing
from cards.errors import CommitmentMissing, ItemMissing
from cards.kinds.base import KindName
from cards.parts import KeptDigest
from service.cli.attempts import LeftOutForToday, Stopped, ask_attempt
from service.cli.commitments import show_commitment
from service.cli.comparison import show_comparison
from service.cli.cues import show_cue
from service.cli.grading import ask_grade
from service.cli.group import Tools
from service.cli.kept import ask_kept
from service.cli.offers import ask_offer
from service.cli.screen import console, faint, heading, prose
from service.use_cases.answer import compare, record_answer, take_back
from service.use_cases.bringing_up import brought_up
from service.use_cases.commitments import open_commitment
from service.use_cases.items import ItemView
from service.use_cases.leave_out import leave_out
from service.use_cases.library import open_digest
from service.use_cases.minutes import set_minutes_today
from service.use_cases.ports import Desk
from service.use_cases.recording import GivenAnswer, Recorded
from service.use_cases.records import FEWEST_MINUTES, MOST_MINUTES
from service.use_cases.sit import Sitting, todays_sitting


@click.command()
@click.option(
    "--minutes",
    type=click.IntRange(FEWEST_MINUTES, MOST_MINUTES),
    help="How long today's sitting takes at the most.",
)
@click.pass_obj
def sit(tools: Tools, minutes: int | None) -> None:
    """Be asked what is worth asking today. Every answer is kept at once; stop when you like."""
    screen = console()
    with tools.desk() as desk:
        if minutes is not None:
            set_minutes_today(desk, minutes)
        try:
            _sit(desk, screen)
        except (click.Abort, KeyboardInterrupt, Stopped):
            screen.print()
            screen.print(faint("Stopped. What you answered is kept."))


def _sit(desk: Desk, screen: Console) -> None:
    sitting = todays_sitting(desk)
    _welcome(screen, sitting)
    while sitting.items:
        screen.rule(f"{len(sitting.items)} left", align="right", style="dim")
        _ask(desk, screen, sitting.items[0])
        sitting = todays_sitting(desk)
    later = f"Something is asked again on {_long(sitting.next_on)}." if sitting.next_on else ""
    spent = _about(sitting.spent).capitalize() + " today. " if sitting.spent else ""
    prose(screen, f"That is all for today. {spent}{later}".rstrip())
    if sitting.spent and sitting.next_on and (sitting.next_on - sitting.day).days == 1:
        more = min(MOST_MINUTES, sitting.minutes + 5)
        prose(screen, faint(f"catchword sit --minutes {more} makes today’s sitting longer."))
    _bring_up(desk, screen)


def _ask_kept(desk: Desk, screen: Console, commitment_id: UUID) -> None:
    """Ask of a commitment that was restated whether it was kept, where it wants a word."""
    try:
        held = open_commitment(desk, commitment_id).held
    except CommitmentMissing:
        return
    if held.stand is not None and pressing(held.stand) is not Pressing.NOT_AT_ALL:
        ask_kept(desk, screen, held)


def _bring_up(desk: Desk, screen: Console) -> None:
    held = brought_up(desk)
    if held is None or held.offer is None:
        return
    screen.print()
    show_commitment(screen, held)
    ask_offer(desk, screen, held, held.offer)


def _welcome(screen: Console, sitting: Sitting) -> None:
    if sitting.away is not None:
        level = sitting.away.level_on
        when = f"about {_long(level)}" if level else "not within a year, unless some books rest"
        minutes = "minute" if sitting.minutes == 1 else f"{sitting.minutes} minutes"
        prose(
            screen,
            f"You were last here on {_long(sitting.away.since)}. Here are today’s best {minutes}; "
            f"at that a day, the rest will be level again {when}.",
        )
    elif sitting.items:
        prose(screen, faint(f"{_about(sitting.seconds).capitalize()}."))


def _ask(desk: Desk, screen: Console, item: ItemView) -> None:
    """Ask one item; LeftOutForToday is dealt with here, Stopped is not."""
    item_id, cue = item.kept.item.id, item.cue
    if cue is None:
        return
    kept = open_digest(desk, item.kept.item.digest_id).kept
    begun = desk.now()
    show_cue(screen, cue, item, kept)
    try:
        attempt = ask_attempt(screen, cue)
    except LeftOutForToday:
        leave_out(desk, item_id)
        screen.print(faint("Left out for today; it is asked another day."))
        return
    try:
        compared = compare(desk, item_id, attempt)
    except ItemMissing:
        prose(
            screen, "Its digest was changed meanwhile and no longer holds it. It is asked no more."
        )
        return
    show_comparison(screen, attempt, compared, kept, hidden=compared.graded_first)
    grade, attempt = ask_grade(desk, screen, attempt, compared)
    recorded = record_answer(
        desk,
        GivenAnswer(
            desk.new_id(),
            item_id,
            grade,
            attempt=attempt,
            seconds=seconds_taken(begun, desk.now()),
            graded_first=compared.graded_first,
        ),
    )
    if compared.graded_first:
        said = f"The mark would have been {compared.mark.grade}. {compared.mark.reason}"
        prose(screen, said)
    _told(screen, recorded, grade, compared.today)
    if item.kept.item.kind is KindName.RESTATE:
        _ask_kept(desk, screen, item.kept.item.part_id)
    _go_on(desk, screen, recorded, kept)


def _told(screen: Console, recorded: Recorded, grade: Grade, today: date) -> None:
    memory = recorded.item.memory
    if memory is not None:
        days = (memory.due_on - today).days
        once_more = " Once more before you stop today." if grade is Grade.BLANK else ""
        prose(screen, f"Asked again on {_long(memory.due_on)}, in {_days(days)}.{once_more}")


def _go_on(desk: Desk, screen: Console, recorded: Recorded, kept: KeptDigest) -> None:
    while True:
        choice = click.prompt(
            "Enter goes on, t takes it back, d shows the digest, s stops",
            default="",
            show_default=False,
            prompt_suffix=": ",
            type=click.Choice(["", "t", "d", "s"]),
            show_choices=False,
        )
        if choice == "d":
            _show_digest(screen, kept)
            continue
        if choice == "t":
            take_back(desk, recorded.answer.answer.id, desk.new_id())
            screen.print(faint("Taken back; it is asked as before."))
        if choice == "s":
            raise Stopped
        return


def _show_digest(screen: Console, kept: KeptDigest) -> None:
    digest = kept.digest()
    by = f", {digest.author}" if digest.author else ""
    screen.print(heading(f"{digest.title}{by}"))
    if digest.theme:
        prose(screen, digest.theme)
    for name, lines in (
        ("Points", [f"{point.text}{_at(point.locator)}" for point in digest.points]),
        ("Commitments", [each.text for each in digest.commitments]),
        ("Quotations", [f"“{each.text}”{_at(each.locator)}" for each in digest.quotations]),
    ):
        if lines:
            screen.print(faint(name))
            for number, said in enumerate(lines, 1):
                prose(screen, f"{number}. {said}")


def _at(locator: str | None) -> str:
    return f" ({locator})" if locator else ""


def _about(seconds: int) -> str:
    minutes = max(1, round(seconds / 60))
    return f"about {minutes} {'minute' if minutes == 1 else 'minutes'}"


def _days(count: int) -> str:
    return "1 day" if count == 1 else f"{count} days"


def _long(day: date) -> str:
    return f"{day.day} {day:%B %Y}"
