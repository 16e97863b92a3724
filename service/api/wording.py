"""Wording: whether a commitment is concrete, specific and measurable, and its measure."""

from http import HTTPStatus
from typing import Any

from marshmallow import fields, validate

from cards.commitments import Period
from cards.digest import MAX_TEXT
from cards.errors import Invalid
from service.api.desk import desk
from service.api.fields import Day, Request, Shape, Text
from service.api.operations import Gives, Reply, Resource, Takes
from service.use_cases.wording import check_wording, readers_day

resource = Resource("wording", "/wording", "How commitments are worded; nothing is kept.")

_UNCHECKED = "null where its language is not checked."
_SENT = {"text": "Every evening for two weeks I will write one line to Hanne.", "on": "2026-03-01"}
_CHECKED = {
    "concrete": True,
    "specific": True,
    "measurable": True,
    "measure": {
        "times": 1,
        "period": "day",
        "every": 1,
        "on": [],
        "periods": 14,
        "deadline": None,
        "minutes": None,
    },
    "cue": "Every evening",
    "advice": [],
}


class WordingRequestSchema(Request):
    """A commitment whose wording is to be checked."""

    text = Text(
        required=True,
        validate=validate.Length(1, MAX_TEXT),
        metadata={
            "description": "The commitment's words.",
            "pattern": r"^[^\u0000]*\S[^\u0000]*$",
        },
    )
    on = Day(
        load_default=None,
        metadata={
            "description": "The day it is made, which its days and dates are relative to; the "
            "reader's day unless given."
        },
    )


class MeasureSchema(Shape):
    """What a commitment asks, in a form deeds can be counted against."""

    times = fields.Integer(
        required=True, metadata={"description": "Deeds in one period; traits are not counted."}
    )
    period = fields.Enum(
        Period,
        by_value=fields.String,
        required=True,
        metadata={"description": "The span they are counted in."},
    )
    every = fields.Integer(
        required=True, metadata={"description": "How many such spans make one period, from 1."}
    )
    on = fields.List(
        fields.String(),
        required=True,
        metadata={"description": "Weekdays as RFC 5545 writes BYDAY, in the order of the week."},
    )
    periods = fields.Integer(
        required=True,
        allow_none=True,
        metadata={"description": "How many periods; null when open or when a date ends it."},
    )
    deadline = fields.Date(
        required=True, allow_none=True, metadata={"description": "The last day that counts."}
    )
    minutes = fields.Integer(
        required=True, allow_none=True, metadata={"description": "How long one deed lasts."}
    )


class WordingSchema(Shape):
    """How a commitment is worded."""

    concrete = fields.Boolean(
        required=True,
        allow_none=True,
        metadata={
            "description": "Whether it is an act someone could see done, in the imperative or "
            f"with “I will”; {_UNCHECKED}"
        },
    )
    specific = fields.Boolean(
        required=True,
        allow_none=True,
        metadata={"description": f"Whether it says to whom, to what, where or when; {_UNCHECKED}"},
    )
    measurable = fields.Boolean(
        required=True,
        allow_none=True,
        metadata={
            "description": "Whether on a given day one can say if it was done; " + _UNCHECKED
        },
    )
    measure = fields.Nested(
        MeasureSchema,
        required=True,
        allow_none=True,
        metadata={"description": "What it asks; null when it is not measurable."},
    )
    cue = fields.String(
        required=True,
        allow_none=True,
        metadata={"description": "The words of the situation it is tied to, or null."},
    )
    advice = fields.List(
        fields.String(),
        required=True,
        metadata={
            "description": "Sentences to the reader: what is missing and why, a rewording where "
            "there is one, and the caution it carries."
        },
    )


@resource.operation(
    "POST",
    takes=Takes(WordingRequestSchema(), "The commitment.", example=_SENT),
    gives=Gives({HTTPStatus.OK: "What the check says."}, WordingSchema(), example=_CHECKED),
    refuses=(Invalid,),
)
def post_wording(sent: dict[str, Any]) -> Reply:
    """Check how a commitment is worded.

    English is checked; of another language the advice says that it is not. Nothing is kept.
    """
    on = readers_day(desk()) if sent["on"] is None else sent["on"]
    return check_wording(sent["text"], on), HTTPStatus.OK, {}
