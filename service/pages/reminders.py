"""`/reminders`: the mail and the calendar; `/mail/stop/<secret>`: no more mails."""

from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, abort, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from cards.errors import Invalid, ReaderChanged
from service.pages import fields
from service.pages.fields import Fault, Faults
from service.use_cases.ports import Desk
from service.use_cases.preferences import show_reader
from service.use_cases.reminding import (
    MAX_NAME,
    NewAddress,
    knows_stop,
    new_address,
    revoke_address,
    set_reminders,
    show_reminding,
    stop_mail,
)

_CHANGED = (
    "The reminders were changed since you opened them, in another window or on another device. "
    "They are shown as they are now."
)


def install(door: Blueprint, desk: Desk) -> None:
    """Add the reminders to the door."""
    _install_mail(door, desk)
    _install_calendar(door, desk)
    _install_stop(door, desk)


def _install_mail(door: Blueprint, desk: Desk) -> None:
    @door.get("/reminders")
    def reminders() -> str:
        """Show how the reader is reminded."""
        return _page(desk, {})

    @door.post("/reminders")
    def keep_reminders() -> ResponseReturnValue:
        """Keep whether a mail goes out, where to, and when."""
        form = request.form
        try:
            at = fields.whole(form, "mail_at", "The hour", 0, 23)
            set_reminders(
                desk,
                mail=form.get("mail") == "yes",
                to=fields.optional(form, "mail_to"),
                at=7 if at is None else at,
                revision=fields.revision(form) or None,
            )
        except Fault as fault:
            return _refused(desk, {fault.field: fault.message})
        except ReaderChanged:
            return _page(desk, {"mail": _CHANGED}), HTTPStatus.CONFLICT
        except Invalid as refusal:
            return _refused(desk, {refusal.where or "mail": refusal.message})
        return redirect(url_for("pages.reminders", kept="mail"), HTTPStatus.SEE_OTHER)


def _install_calendar(door: Blueprint, desk: Desk) -> None:
    @door.post("/calendar-addresses")
    def add_calendar_address() -> ResponseReturnValue:
        """Make an address of the calendar, and show it this once."""
        try:
            made = new_address(desk, fields.text(request.form, "name").strip())
        except Invalid as refusal:
            return _refused(desk, {"name": refusal.message})
        return _page(desk, {}, made)

    @door.post("/calendar-addresses/<uuid:address_id>/revoked")
    def revoke_calendar_address(address_id: UUID) -> ResponseReturnValue:
        """Let an address open the calendar no longer."""
        revoke_address(desk, address_id)
        return redirect(url_for("pages.reminders", kept="revoked"), HTTPStatus.SEE_OTHER)


def _install_stop(door: Blueprint, desk: Desk) -> None:
    @door.get("/mail/stop/<string(maxlength=100):secret>")
    def stop_mail_page(secret: str) -> str:
        """Ask whether the mails are to end; a link alone ends nothing."""
        if not knows_stop(desk, secret):
            abort(HTTPStatus.NOT_FOUND)
        return render_template("stop_mail.html", secret=secret, stopped=False)

    @door.post("/mail/stop/<string(maxlength=100):secret>")
    def end_mail(secret: str) -> str:
        """End the mails, by the button or by a mail program's one click (RFC 8058)."""
        if not stop_mail(desk, secret):
            abort(HTTPStatus.NOT_FOUND)
        return render_template("stop_mail.html", secret=secret, stopped=True)


def _refused(desk: Desk, faults: Faults) -> ResponseReturnValue:
    return _page(desk, faults), HTTPStatus.UNPROCESSABLE_ENTITY


def _page(desk: Desk, faults: Faults, made: NewAddress | None = None) -> str:
    shown = show_reminding(desk)
    reader, kept = show_reader(desk), shown.reminders
    typed = request.form if faults else {}
    base = desk.address or request.host_url
    return render_template(
        "reminders.html",
        reader=reader,
        revision=kept.revision,
        mail=typed.get("mail") == "yes" if typed else kept.mail,
        mail_to=typed.get("mail_to", kept.mail_to or ""),
        mail_at=typed.get("mail_at", str(kept.mail_at)),
        can_mail=shown.can_mail,
        addresses=shown.addresses,
        made=made,
        made_address=None if made is None else f"{base}calendar/{made.secret}.ics",
        name=typed.get("name", ""),
        longest_name=MAX_NAME,
        faults=faults,
        kept_now=request.args.get("kept"),
    )
