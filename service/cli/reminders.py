"""`catchword reminders`: the mail in the morning, and the addresses of the calendar."""

from uuid import UUID

import click

from service.cli.group import Tools
from service.cli.screen import console, faint, prose
from service.use_cases.ports import Desk
from service.use_cases.reminding import (
    new_address,
    revoke_address,
    set_reminders,
    show_reminding,
)


@click.command()
@click.option("--mail-to", metavar="ADDRESS", help="Send a mail in the morning to this address.")
@click.option("--at", type=click.IntRange(0, 23), help="From which hour of your clock on.")
@click.option("--no-mail", is_flag=True, help="Send none any more.")
@click.option("--calendar", metavar="NAME", help="Make a private address of your calendar.")
@click.option("--revoke", type=click.UUID, metavar="ID", help="Let an address open it no longer.")
@click.pass_obj
def reminders(
    tools: Tools,
    mail_to: str | None,
    at: int | None,
    calendar: str | None,
    revoke: UUID | None,
    *,
    no_mail: bool,
) -> None:
    """Show how you are reminded, or change it."""
    with tools.desk() as desk:
        if mail_to is not None or at is not None or no_mail:
            known = show_reminding(desk).reminders
            set_reminders(
                desk,
                mail=not no_mail and (known.mail or mail_to is not None),
                to=mail_to or known.mail_to,
                at=known.mail_at if at is None else at,
            )
        if calendar is not None:
            made = new_address(desk, calendar)
            base = desk.address or "http://127.0.0.1:8417/"
            click.echo(f"{base}calendar/{made.secret}.ics")
            prose(
                console(stderr=True),
                "This address opens your calendar, and is shown this once. Keep it to yourself.",
            )
            return
        if revoke is not None:
            revoke_address(desk, revoke)
        _show(desk)


def _show(desk: Desk) -> None:
    shown, screen = show_reminding(desk), console()
    kept = shown.reminders
    if kept.mail:
        prose(screen, f"A mail goes to {kept.mail_to} from {kept.mail_at:02d}:00 on.")
    else:
        prose(screen, "No mail goes out.")
    if kept.mail and not shown.can_mail:
        prose(screen, "No mail server is known yet: set CATCHWORD_SMTP_HOST.")
    if not shown.addresses:
        prose(screen, "The calendar has no address that opens it.")
    for each in shown.addresses:
        prose(screen, f"Calendar: {each.name or 'an address'}")
        prose(screen, faint(str(each.id)))
