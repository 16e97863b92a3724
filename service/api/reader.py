"""The reader's settings."""

from http import HTTPStatus
from typing import Any

from marshmallow import fields, validate

from cards.errors import InvalidPreference, ReaderChanged
from cards.schedule import HIGHEST_TARGET, LOWEST_TARGET
from service.api.desk import desk
from service.api.fields import Number, Request, Shape, Text, Whole
from service.api.operations import Gives, Reply, Resource, Takes
from service.api.tags import expected_revision, tag_of, unchanged
from service.use_cases.preferences import Preferences, set_preferences, show_reader
from service.use_cases.records import FEWEST_MINUTES, MOST_MINUTES, MOST_UNASKED_A_DAY, Reader

resource = Resource("reader", "/reader", "The reader's settings.")

_TIME_ZONE = {"description": "IANA name of the time zone the reader's days are counted in."}
_TURNS_AT = {"description": "Hour at which the reader's day turns over, 0 to 23."}
_TARGET = {"description": f"Retention aimed for, {LOWEST_TARGET} to {HIGHEST_TARGET}."}
_UNASKED = {"description": f"Unasked items let in a day at the most, 0 to {MOST_UNASKED_A_DAY}."}
_MINUTES = {"description": f"Minutes of a day's sitting, {FEWEST_MINUTES} to {MOST_MINUTES}."}
_WANTED = {
    "time_zone": "Europe/London",
    "turns_at": 4,
    "target": 0.9,
    "unasked_a_day": 6,
    "minutes": 10,
}
_LONGEST_ZONE = 60


class ReaderSchema(Shape):
    """The reader's settings."""

    time_zone = fields.String(required=True, metadata=_TIME_ZONE)
    turns_at = fields.Integer(required=True, metadata=_TURNS_AT)
    target = fields.Float(required=True, metadata=_TARGET)
    unasked_a_day = fields.Integer(required=True, metadata=_UNASKED)
    minutes = fields.Integer(required=True, metadata=_MINUTES)
    revision = fields.Integer(
        required=True, metadata={"description": "How many times they were changed, from 1."}
    )


class WantedReaderSchema(Request):
    """The reader's settings as they are to be."""

    time_zone = Text(required=True, validate=validate.Length(1, _LONGEST_ZONE), metadata=_TIME_ZONE)
    turns_at = Whole(required=True, validate=validate.Range(0, 23), metadata=_TURNS_AT)
    target = Number(
        required=True, validate=validate.Range(LOWEST_TARGET, HIGHEST_TARGET), metadata=_TARGET
    )
    unasked_a_day = Whole(
        required=True, validate=validate.Range(0, MOST_UNASKED_A_DAY), metadata=_UNASKED
    )
    minutes = Whole(
        required=True, validate=validate.Range(FEWEST_MINUTES, MOST_MINUTES), metadata=_MINUTES
    )
    revision = fields.Raw(
        allow_none=True,
        metadata={"description": "Ignored, so that what was given can be sent back."},
    )


def _shown(kept: Reader) -> Reply:
    return kept, HTTPStatus.OK, {"ETag": tag_of(kept.id, kept.revision)}


@resource.operation(
    "GET",
    gives=Gives(
        {HTTPStatus.OK: "The settings."},
        ReaderSchema(),
        example={**_WANTED, "revision": 1},
        headers={HTTPStatus.OK: ("ETag",)},
    ),
)
def get_reader() -> Reply:
    """Read the settings."""
    kept = show_reader(desk())
    return unchanged(tag_of(kept.id, kept.revision)) or _shown(kept)


@resource.operation(
    "PUT",
    takes=Takes(WantedReaderSchema(), "All the settings.", example=_WANTED),
    gives=Gives(
        {HTTPStatus.OK: "The settings as they are now."},
        ReaderSchema(),
        example={**_WANTED, "revision": 2},
        headers={HTTPStatus.OK: ("ETag",)},
    ),
    refuses=(InvalidPreference, ReaderChanged),
)
def put_reader(sent: dict[str, Any]) -> Reply:
    """Change the settings.

    Days already fixed stay as they are: an answer keeps the day it was given on, an item the
    day it is due. What is set holds from the next answer on.
    """
    sent.pop("revision", None)
    revision = expected_revision(desk().reader, lambda: show_reader(desk()).revision)
    return _shown(set_preferences(desk(), Preferences(**sent), revision))
