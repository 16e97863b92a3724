"""Check-ins: whether commitments were kept."""

from http import HTTPStatus
from typing import Any

from marshmallow import fields, validate

from cards.commitments import MAX_NOTE, Outcome
from cards.errors import CommitmentMissing, Conflict, Invalid
from service.api import examples
from service.api.desk import desk
from service.api.fields import Day, Identity, Request, Shape, Text
from service.api.operations import Gives, Reply, Resource, Takes
from service.use_cases.check_in import Report, check_in

resource = Resource("check-ins", "/check-ins", "Whether commitments were kept.")


class ReportSchema(Request):
    """A check-in as it is sent."""

    id = Identity(
        required=True,
        metadata={
            "description": "Made by whoever records it, so that sending it twice changes nothing."
        },
    )
    digest = Identity(
        required=True, metadata={"description": "Id of the digest that holds the commitment."}
    )
    commitment = Identity(required=True, metadata={"description": "Id of the commitment."})
    outcome = fields.Enum(
        Outcome,
        by_value=fields.String,
        required=True,
        metadata={"description": "What came of the commitment."},
    )
    day = Day(
        load_default=None,
        metadata={"description": "The reader's day it is about; today unless given."},
    )
    note = Text(
        load_default="",
        validate=validate.Length(max=MAX_NOTE),
        metadata={"description": "The reader's words about it."},
    )


class CheckInSchema(Shape):
    """A check-in in the library: a fact."""

    id = fields.UUID(required=True, metadata={"description": "Of the check-in."})
    commitment = fields.UUID(
        attribute="commitment_id", required=True, metadata={"description": "Id of the commitment."}
    )
    outcome = fields.Enum(
        Outcome,
        by_value=fields.String,
        required=True,
        metadata={"description": "What came of the commitment."},
    )
    day = fields.Date(required=True, metadata={"description": "The reader's day it is about."})
    reported_at = fields.DateTime(
        required=True, metadata={"description": "When it was reported, in UTC."}
    )
    note = fields.String(required=True, metadata={"description": "The reader's words about it."})


@resource.operation(
    "POST",
    takes=Takes(ReportSchema(), "The check-in.", example=examples.REPORT),
    gives=Gives(
        {HTTPStatus.CREATED: "It is kept; or it was kept already."},
        CheckInSchema(),
        example=examples.CHECK_IN,
    ),
    refuses=(CommitmentMissing, Conflict, Invalid),
)
def post_check_in(sent: dict[str, Any]) -> Reply:
    """Report on a commitment.

    A check-in is a fact and is never changed. The very same again changes nothing.
    """
    report = Report(
        id=sent["id"],
        digest_id=sent["digest"],
        commitment_id=sent["commitment"],
        outcome=sent["outcome"],
        day=sent["day"],
        note=sent["note"],
    )
    return check_in(desk(), report), HTTPStatus.CREATED, {}
