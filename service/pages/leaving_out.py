"""`/items/<id>/left-out`: an item is left out for today, or taken in again."""

from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, redirect, url_for
from flask.typing import ResponseReturnValue

from service.use_cases.leave_out import leave_out, take_in
from service.use_cases.ports import Desk


def install(door: Blueprint, desk: Desk) -> None:
    """Add leaving out to the door."""

    @door.post("/items/<uuid:item_id>/left-out")
    def leave_item_out(item_id: UUID) -> ResponseReturnValue:
        """Leave an item out for today and lead on to the next one."""
        leave_out(desk, item_id)
        return redirect(url_for("pages.today", left_out=item_id), HTTPStatus.SEE_OTHER)

    @door.post("/items/<uuid:item_id>/taken-in")
    def take_item_in(item_id: UUID) -> ResponseReturnValue:
        """Take an item that was left out in again, and lead to Today."""
        take_in(desk, item_id)
        return redirect(url_for("pages.today"), HTTPStatus.SEE_OTHER)
