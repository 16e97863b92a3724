"""`/reader`: what the reader sets."""

import re
from functools import cache
from http import HTTPStatus
from zoneinfo import available_timezones

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from cards.errors import InvalidPreference, ReaderChanged
from cards.intake.heading_words import MAX_HEADING, Part
from cards.schedule import HIGHEST_TARGET, LOWEST_TARGET
from service.pages import fields
from service.pages.fields import MOST_REVISIONS, Fault, Faults
from service.use_cases.headings import show_headings
from service.use_cases.ports import Desk
from service.use_cases.preferences import Preferences, set_preferences, show_reader
from service.use_cases.records import FEWEST_MINUTES, MOST_MINUTES, MOST_UNASKED_A_DAY

_HUNDREDTHS = re.compile(r"\d{1,2}(\.\d{1,2})?", re.ASCII)
LOWEST, HIGHEST = round(LOWEST_TARGET * 100), round(HIGHEST_TARGET * 100)


def install(door: Blueprint, desk: Desk) -> None:
    """Add the settings to the door."""

    @door.get("/reader")
    def reader() -> str:
        """Show the settings."""
        return page(desk, as_form(desk), {})

    @door.post("/reader")
    def set_reader() -> ResponseReturnValue:
        """Keep the settings."""
        preferences, faults = _preferences()
        if not faults:
            try:
                revision = fields.whole(request.form, "revision", "A revision", 1, MOST_REVISIONS)
                set_preferences(desk, preferences, revision)
            except (InvalidPreference, ReaderChanged) as refusal:
                faults[refusal.where or "form"] = refusal.message
            except Fault as fault:
                faults["revision"] = fault.message
        if faults:
            return page(desk, dict(request.form), faults), HTTPStatus.UNPROCESSABLE_ENTITY
        return redirect(url_for("pages.reader", kept="settings"), HTTPStatus.SEE_OTHER)


@cache
def _zones() -> tuple[str, ...]:
    return tuple(sorted(available_timezones()))


def page(desk: Desk, form: dict[str, str], faults: Faults) -> str:
    """Return the settings page, with what was typed and what is wrong with it."""
    return render_template(
        "settings.html",
        form=form,
        faults=faults,
        revision=show_reader(desk).revision,
        zones=_zones(),
        lowest=LOWEST,
        highest=HIGHEST,
        most_unasked=MOST_UNASKED_A_DAY,
        most_minutes=MOST_MINUTES,
        kept_now=request.args.get("kept", ""),
        headings=show_headings(desk),
        heading_typed={name: request.form.get(name, "") for name in ("heading", "part")},
        parts=tuple(Part),
        longest_heading=MAX_HEADING,
    )


def as_form(desk: Desk) -> dict[str, str]:
    """Return what the reader has set, as the fields of the form."""
    reader = show_reader(desk)
    return {
        "time_zone": reader.time_zone,
        "turns_at": str(reader.turns_at),
        "target": f"{100 * reader.target:g}",
        "unasked_a_day": str(reader.unasked_a_day),
        "minutes": str(reader.minutes),
    }


def _preferences() -> tuple[Preferences, Faults]:
    faults: Faults = {}

    def number(name: str, what: str, least: int, most: int) -> int | None:
        try:
            given = fields.whole(request.form, name, what, least, most)
        except Fault as fault:
            faults[name] = fault.message
            return None
        if given is None:
            faults[name] = f"{what} is a whole number from {least} to {most}."
        return given

    zone = fields.text(request.form, "time_zone").strip()
    if not zone:
        faults["time_zone"] = "Give a time zone, as Europe/London."
    hour = number("turns_at", "The hour", 0, 23)
    target = target_given(faults)
    unasked = number("unasked_a_day", "The number a day", 0, MOST_UNASKED_A_DAY)
    minutes = number("minutes", "The number of minutes", FEWEST_MINUTES, MOST_MINUTES)
    return Preferences(zone, hour, target, unasked, minutes), faults


def target_given(faults: Faults) -> float | None:
    """Return the retention aimed for as a share of 1, typed as hundredths; else a fault."""
    written = fields.text(request.form, "target").strip()
    if _HUNDREDTHS.fullmatch(written) and LOWEST <= float(written) <= HIGHEST:
        return round(float(written) / 100, 4)
    faults["target"] = f"The retention aimed for is a number from {LOWEST} to {HIGHEST}."
    return None
