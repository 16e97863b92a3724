"""`/minutes`: how many minutes today's sitting takes."""

from http import HTTPStatus

from flask import Blueprint, redirect, request, url_for
from flask.typing import ResponseReturnValue

from service.pages import fields
from service.pages.fields import Fault
from service.pages.today import more_minutes, refused
from service.use_cases.minutes import set_minutes_today
from service.use_cases.ports import Desk
from service.use_cases.records import FEWEST_MINUTES, MOST_MINUTES
from service.use_cases.sit import todays_sitting


def install(door: Blueprint, desk: Desk) -> None:
    """Add the minutes to the door."""

    @door.post("/minutes")
    def keep_minutes() -> ResponseReturnValue:
        """Set today's minutes, or add a few to what was spent, and lead to Today."""
        if request.form.get("more"):
            minutes = min(more_minutes(todays_sitting(desk)), MOST_MINUTES)
        else:
            try:
                minutes = _wanted()
            except Fault as fault:
                return refused(desk, {fault.field: fault.message})
        set_minutes_today(desk, minutes)
        return redirect(url_for("pages.today"), HTTPStatus.SEE_OTHER)


def _wanted() -> int:
    what = "A day’s sitting, in minutes,"
    minutes = fields.whole(request.form, "minutes", what, FEWEST_MINUTES, MOST_MINUTES)
    if minutes is None:
        raise Fault("minutes", f"Say how many minutes, from {FEWEST_MINUTES} to {MOST_MINUTES}.")
    return minutes
