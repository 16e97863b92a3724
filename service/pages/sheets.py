"""`/sheets`: a sitting on paper, and what came back entered afterwards."""

from datetime import date
from http import HTTPStatus
from io import BytesIO
from uuid import UUID

from flask import Blueprint, Response, redirect, render_template, request, send_file, url_for
from flask.typing import ResponseReturnValue

from cards.answers import GRADES, MAX_ATTEMPT, Grade
from cards.errors import AnswerConflict, Invalid, InvalidAnswer
from cards.kinds.base import Asked
from service.pages import fields
from service.pages.fields import Fault, Faults
from service.use_cases.ports import Desk
from service.use_cases.preferences import show_reader
from service.use_cases.records import FEWEST_MINUTES, MOST_MINUTES
from service.use_cases.sheets import Entered, enter_sheet, open_sheet, open_sheets, print_sheet
from service.use_cases.sitting_records import PrintedSheet


def install(door: Blueprint, desk: Desk) -> None:
    """Add the sheets to the door."""

    @door.get("/sheets")
    def sheets() -> str:
        """List the sheets that wait for their answers, and offer a new one."""
        return _listed(desk, {})

    @door.post("/sheets")
    def make_sheet() -> ResponseReturnValue:
        """Compose today's sitting for paper and lead to its form."""
        return _make(desk)

    @door.get("/sheets/<uuid:sheet_id>")
    def sheet(sheet_id: UUID) -> str:
        """Show the form that takes what came back of a sheet."""
        return _form(desk, open_sheet(desk, sheet_id), {})

    @door.get("/sheets/<uuid:sheet_id>.pdf")
    def sheet_pdf(sheet_id: UUID) -> Response:
        """Hand out a sheet to print; it opens in the browser."""
        printed = open_sheet(desk, sheet_id)
        return send_file(
            BytesIO(desk.press.sheet(printed)),
            mimetype="application/pdf",
            download_name=f"sitting-{printed.day}.pdf",
        )

    @door.post("/sheets/<uuid:sheet_id>")
    def enter_a_sheet(sheet_id: UUID) -> ResponseReturnValue:
        """Record what came back, all of it or nothing."""
        return _enter(desk, sheet_id)


def _make(desk: Desk) -> ResponseReturnValue:
    what = "The number of minutes"
    try:
        minutes = fields.whole(request.form, "minutes", what, FEWEST_MINUTES, MOST_MINUTES)
        printed = print_sheet(desk, minutes)
    except Fault as fault:
        return _listed(desk, {fault.field: fault.message}), HTTPStatus.UNPROCESSABLE_ENTITY
    except Invalid as refusal:
        return _listed(desk, {"form": refusal.message}), HTTPStatus.UNPROCESSABLE_ENTITY
    return redirect(url_for("pages.sheet", sheet_id=printed.sheet.id), HTTPStatus.SEE_OTHER)


def _enter(desk: Desk, sheet_id: UUID) -> ResponseReturnValue:
    printed = open_sheet(desk, sheet_id)
    entered, on, faults = _entered(printed)
    if not faults and not entered:
        faults["form"] = "Tick how at least one of them came back."
    if not faults:
        try:
            fresh = enter_sheet(desk, sheet_id, entered, on)
        except (InvalidAnswer, AnswerConflict) as refusal:
            faults[refusal.where or "form"] = refusal.message
        else:
            address = url_for("pages.sheet", sheet_id=sheet_id, kept=fresh)
            return redirect(address, HTTPStatus.SEE_OTHER)
    return _form(desk, printed, faults), HTTPStatus.UNPROCESSABLE_ENTITY


def _listed(desk: Desk, faults: Faults) -> str:
    return render_template(
        "sheets.html",
        sheets=open_sheets(desk),
        days=show_reader(desk).days,
        faults=faults,
        minutes=request.form.get("minutes", str(show_reader(desk).minutes)),
    )


def _form(desk: Desk, printed: PrintedSheet, faults: Faults) -> str:
    days = show_reader(desk).days
    kept = request.args.get("kept", "")
    return render_template(
        "sheet.html",
        printed=printed,
        day=printed.day,
        today=days.of(desk.now()),
        form=request.form,
        faults=faults,
        kept=int(kept) if kept.isascii() and kept.isdigit() and len(kept) < _DIGITS else None,
        grades=GRADES,
        by_words=Asked.WORDS,
        most=MAX_ATTEMPT,
    )


_DIGITS = 5


def _entered(printed: PrintedSheet) -> tuple[dict[UUID, Entered], date | None, Faults]:
    faults: Faults = {}
    entered = {}
    for line in printed.lines:
        name = f"grade-{line.number}"
        written = request.form.get(name, "")
        words = fields.text(request.form, f"words-{line.number}").strip()
        if len(words) > MAX_ATTEMPT:
            faults[f"words-{line.number}"] = f"At most {MAX_ATTEMPT} characters are kept."
        if written in set(Grade):
            entered[line.item_id] = Entered(Grade(written), words)
        elif written:
            faults[name] = "Choose blank, hazy, clear or vivid."
        elif words:
            faults[name] = f"Say how number {line.number} came back, or leave its words out."
    on = fields.taken(faults, lambda: fields.day(request.form, "on"))
    return entered, on, faults
