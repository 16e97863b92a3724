"""`/calendar/<secret>.ics`: the reader's calendar, for the programs that were given its address.

The secret stands in the address alone: nothing here writes it anywhere, and what it fails to open
is answered as any address that leads nowhere is.
"""

from dataclasses import replace
from http import HTTPStatus

from flask import Blueprint, Response, abort, request

from service.use_cases.calendar import open_calendar
from service.use_cases.ports import Desk


def install(door: Blueprint, desk: Desk) -> None:
    """Add the calendar to the door."""

    @door.get("/calendar/<string(maxlength=100):secret>.ics")
    def calendar(secret: str) -> Response:
        """Hand the calendar to who knows its address."""
        reached = replace(desk, address=desk.address or request.host_url)
        written = open_calendar(reached, secret)
        if written is None:
            abort(HTTPStatus.NOT_FOUND)
        answer = Response(written, content_type="text/calendar; charset=utf-8")
        answer.headers["Cache-Control"] = "private, no-store"
        return answer
