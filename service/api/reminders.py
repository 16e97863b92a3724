"""Reminders: the mail in the morning, and the addresses of the calendar."""

from http import HTTPStatus
from typing import Any
from uuid import UUID

from flask import Response
from marshmallow import fields, validate

from cards.errors import FeedAddressMissing, Invalid, InvalidPreference, ReaderChanged
from service.api.desk import desk
from service.api.fields import Request, Shape, Text, Truth, Whole
from service.api.operations import Gives, Reply, Resource, Takes
from service.api.tags import expected_revision, tag_of, unchanged
from service.use_cases.reminding import (
    MAX_NAME,
    new_address,
    revoke_address,
    set_reminders,
    show_reminding,
)
from service.use_cases.reminding_records import Reminders

resource = Resource(
    "reminders", "/reminders", "How the reader is reminded: a mail, and a private calendar."
)
addresses = Resource(
    "calendar-addresses", "/calendar-addresses", "The private addresses of the calendar."
)

_LONGEST_ADDRESS = 254
_MAIL = {"description": "Whether a mail goes out in the morning."}
_MAIL_TO = {"description": "The address it goes to; null for none."}
_MAIL_AT = {"description": "The hour of the reader's clock it goes out from, 0 to 23."}
_WANTED = {"mail": True, "mail_to": "ada@example.org", "mail_at": 7}
_ADDRESS = {
    "id": "2f1c7b1e-6a0e-4b38-9a63-7b1f0c1a5d10",
    "name": "The calendar on the desk",
    "made_at": "2026-03-01T20:15:00+00:00",
}


class RemindersSchema(Shape):
    """How the reader is reminded by mail."""

    mail = fields.Boolean(required=True, metadata=_MAIL)
    mail_to = fields.String(required=True, allow_none=True, metadata=_MAIL_TO)
    mail_at = fields.Integer(required=True, metadata=_MAIL_AT)
    can_mail = fields.Boolean(
        required=True,
        metadata={"description": "Whether a mail server is known; without one none goes out."},
    )


class WantedRemindersSchema(Request):
    """How the reader is to be reminded by mail."""

    mail = Truth(required=True, metadata=_MAIL)
    mail_to = Text(
        required=True,
        allow_none=True,
        validate=validate.Length(1, _LONGEST_ADDRESS),
        metadata=_MAIL_TO,
    )
    mail_at = Whole(required=True, validate=validate.Range(0, 23), metadata=_MAIL_AT)
    can_mail = fields.Raw(
        allow_none=True,
        metadata={"description": "Ignored, so that what was given can be sent back."},
    )


class CalendarAddressSchema(Shape):
    """An address that opens the calendar; what opens it is told once, when it is made."""

    id = fields.UUID(required=True, metadata={"description": "Of the address."})
    name = fields.String(required=True, metadata={"description": "What it is for."})
    made_at = fields.DateTime(required=True, metadata={"description": "When, in UTC."})


class NewCalendarAddressSchema(CalendarAddressSchema):
    """An address of the calendar just made."""

    path = fields.String(
        required=True,
        metadata={
            "description": "The path below Catchword's own address that opens the calendar. It is "
            "told this once; whoever has it can read what the reader promised."
        },
    )


class CalendarAddressesSchema(Shape):
    """The addresses that open the calendar."""

    addresses = fields.List(
        fields.Nested(CalendarAddressSchema),
        required=True,
        metadata={"description": "The one made last first; revoked ones are left out."},
    )


class WantedAddressSchema(Request):
    """An address of the calendar as it is asked for."""

    name = Text(
        load_default="",
        validate=validate.Length(max=MAX_NAME),
        metadata={"description": "What it is for, in the reader's words."},
    )


def _shown(kept: Reminders) -> Reply:
    shown = {
        "mail": kept.mail,
        "mail_to": kept.mail_to,
        "mail_at": kept.mail_at,
        "can_mail": desk().post is not None,
    }
    return shown, HTTPStatus.OK, {"ETag": tag_of(desk().reader, kept.revision)}


@resource.operation(
    "GET",
    gives=Gives(
        {HTTPStatus.OK: "The reminders."},
        RemindersSchema(),
        example={**_WANTED, "can_mail": True},
        headers={HTTPStatus.OK: ("ETag",)},
    ),
)
def get_reminders() -> Reply:
    """Read how the reader is reminded."""
    kept = show_reminding(desk()).reminders
    return unchanged(tag_of(desk().reader, kept.revision)) or _shown(kept)


@resource.operation(
    "PUT",
    takes=Takes(WantedRemindersSchema(), "The reminders.", example=_WANTED),
    gives=Gives(
        {HTTPStatus.OK: "The reminders as they are now."},
        RemindersSchema(),
        example={**_WANTED, "can_mail": True},
        headers={HTTPStatus.OK: ("ETag",)},
    ),
    refuses=(InvalidPreference, ReaderChanged),
)
def put_reminders(sent: dict[str, Any]) -> Reply:
    """Change how the reader is reminded.

    The mail itself is sent by `catchword tidy`.
    """
    revision = expected_revision(desk().reader, lambda: show_reminding(desk()).reminders.revision)
    return _shown(
        set_reminders(
            desk(),
            mail=sent["mail"],
            to=sent["mail_to"],
            at=sent["mail_at"],
            revision=revision,
        )
    )


@addresses.operation(
    "GET",
    gives=Gives(
        {HTTPStatus.OK: "The addresses."},
        CalendarAddressesSchema(),
        example={"addresses": [_ADDRESS]},
    ),
)
def list_addresses() -> Reply:
    """List the addresses that open the calendar."""
    return {"addresses": show_reminding(desk()).addresses}, HTTPStatus.OK, {}


@addresses.operation(
    "POST",
    takes=Takes(
        WantedAddressSchema(),
        "What it is for; may be left out.",
        example={"name": _ADDRESS["name"]},
        required=False,
    ),
    gives=Gives(
        {HTTPStatus.CREATED: "It opens the calendar from now on."},
        NewCalendarAddressSchema(),
        example={**_ADDRESS, "path": "/calendar/…43 characters….ics"},
    ),
    refuses=(Invalid, InvalidPreference),
)
def post_address(sent: dict[str, Any]) -> Reply:
    """Make a private address of the calendar.

    It cannot be guessed, is told once, and can be revoked.
    """
    made = new_address(desk(), sent["name"])
    shown = {
        "id": made.address.id,
        "name": made.address.name,
        "made_at": made.address.made_at,
        "path": f"/calendar/{made.secret}.ics",
    }
    return shown, HTTPStatus.CREATED, {}


@addresses.operation(
    "DELETE /<uuid:address_id>",
    path={"address_id": "Id of the address."},
    gives=Gives({HTTPStatus.NO_CONTENT: "It opens the calendar no longer."}),
    refuses=(FeedAddressMissing,),
)
def delete_address(address_id: UUID) -> Response:
    """Revoke an address of the calendar."""
    revoke_address(desk(), address_id)
    return Response(status=HTTPStatus.NO_CONTENT)
