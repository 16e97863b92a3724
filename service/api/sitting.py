"""Today's sitting: what is asked, for how long, and what is left out of it."""

from http import HTTPStatus
from typing import Any
from uuid import UUID

from flask import Response

from cards.errors import InvalidPreference, ItemMissing
from service.api import examples
from service.api.desk import desk
from service.api.operations import Gives, Reply, Resource, Takes
from service.api.sitting_shapes import MinutesSchema, SittingQuerySchema, SittingSchema
from service.use_cases.leave_out import leave_out, take_in
from service.use_cases.minutes import set_minutes_today
from service.use_cases.sit import todays_sitting

resource = Resource("sitting", "/sitting", "What is asked today.")

_PATH = {"item_id": "Id of the item."}
_GONE = Gives({HTTPStatus.NO_CONTENT: "It is so."})


@resource.operation(
    "GET",
    query=SittingQuerySchema(),
    gives=Gives({HTTPStatus.OK: "The sitting."}, SittingSchema(), example=examples.SITTING),
)
def get_sitting(query: dict[str, Any]) -> Reply:
    """Sit down to what is asked today.

    It is composed anew from the facts each time, for the minutes that are left of the day's: the
    items whose asking now keeps most memory for the seconds they take, a commitment and something
    unasked always among them. What came back blank today comes round again at the end.
    """
    return todays_sitting(desk(), query["minutes"]), HTTPStatus.OK, {}


@resource.operation(
    "PUT /minutes",
    takes=Takes(MinutesSchema(), "The minutes.", example={"minutes": 15}),
    gives=Gives({HTTPStatus.OK: "The sitting now."}, SittingSchema(), example=examples.SITTING),
    refuses=(InvalidPreference,),
)
def put_minutes(sent: dict[str, Any]) -> Reply:
    """Say how many minutes today's sitting is to take."""
    set_minutes_today(desk(), sent["minutes"])
    return todays_sitting(desk()), HTTPStatus.OK, {}


@resource.operation("PUT /left-out/<uuid:item_id>", path=_PATH, gives=_GONE, refuses=(ItemMissing,))
def put_left_out(item_id: UUID) -> Reply:
    """Leave an item out for today.

    It stays due, and a second time changes nothing.
    """
    leave_out(desk(), item_id)
    return Response(status=HTTPStatus.NO_CONTENT)


@resource.operation(
    "DELETE /left-out/<uuid:item_id>", path=_PATH, gives=_GONE, refuses=(ItemMissing,)
)
def delete_left_out(item_id: UUID) -> Reply:
    """Take an item that was left out for today in again."""
    take_in(desk(), item_id)
    return Response(status=HTTPStatus.NO_CONTENT)
