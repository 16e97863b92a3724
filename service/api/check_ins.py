"""Check-ins: whether commitments were kept."""

from http import HTTPStatus
from typing import Any
from uuid import UUID

from flask import Response
from marshmallow import fields, validate

from cards.commitments import MAX_NOTE, Outcome
from cards.commitments.check_ins import MAX_WITNESS, MOST_DEEDS
from cards.errors import CheckInMissing, CommitmentMissing, Conflict, Invalid
from service.api import commitment_examples as examples
from service.api import meanings
from service.api.desk import desk
from service.api.fields import Day, Identity, Request, Shape, Text, Whole
from service.api.operations import Gives, Reply, Resource, Takes
from service.use_cases.check_in import (
    Report,
    check_in,
    show_check_in,
    withdraw_check_in,
)

resource = Resource("check-ins", "/check-ins", "Whether commitments were kept.")

_PATH = {"check_in_id": "Id of the check-in."}
_COUNT = {
    "description": "The deeds it reports; null for one where it was kept, none where it was not."
}
_WITNESS = {"description": "Who saw it; may be empty."}
_NOTE = {"description": "The reader's words about it."}
_OUTCOME = {"description": "What came of the commitment."}


class ReportSchema(Request):
    """A check-in as it is sent."""

    id = Identity(required=True, metadata=meanings.OWN_ID)
    commitment = Identity(required=True, metadata={"description": "Id of the commitment."})
    digest = Identity(
        load_default=None,
        allow_none=True,
        metadata={"description": "Id of the digest that holds it, to be checked; or null."},
    )
    outcome = fields.Enum(Outcome, by_value=fields.String, required=True, metadata=_OUTCOME)
    day = Day(
        load_default=None,
        metadata={"description": "The reader's day it is about; today unless given."},
    )
    note = Text(load_default="", validate=validate.Length(max=MAX_NOTE), metadata=_NOTE)
    count = Whole(
        load_default=None,
        allow_none=True,
        validate=validate.Range(0, MOST_DEEDS),
        metadata=_COUNT,
    )
    witness = Text(load_default="", validate=validate.Length(max=MAX_WITNESS), metadata=_WITNESS)
    instead_of = Identity(
        load_default=None,
        allow_none=True,
        metadata={"description": "Id of the check-in it corrects, taken back with it; or null."},
    )


class CheckInSchema(Shape):
    """A check-in in the library: a fact."""

    id = fields.UUID(required=True, metadata={"description": "Of the check-in."})
    commitment = fields.UUID(
        attribute="commitment_id", required=True, metadata={"description": "Id of the commitment."}
    )
    outcome = fields.Enum(Outcome, by_value=fields.String, required=True, metadata=_OUTCOME)
    day = fields.Date(required=True, metadata={"description": "The reader's day it is about."})
    reported_at = fields.DateTime(
        required=True, metadata={"description": "When it was reported, in UTC."}
    )
    reported_on = fields.Date(
        required=True, metadata={"description": "The reader's day it was reported on."}
    )
    note = fields.String(required=True, metadata=_NOTE)
    count = fields.Integer(required=True, allow_none=True, metadata=_COUNT)
    witness = fields.String(required=True, metadata=_WITNESS)
    taken_back_on = fields.Date(
        attribute="withdrawn_on",
        required=True,
        allow_none=True,
        metadata={"description": "The reader's day it was taken back; null while it stands."},
    )


@resource.operation(
    "POST",
    takes=Takes(ReportSchema(), "The check-in.", example=examples.REPORT),
    gives=Gives(
        {HTTPStatus.CREATED: "It is kept; or it was kept already."},
        CheckInSchema(),
        example=examples.CHECK_IN,
        headers={HTTPStatus.CREATED: ("Location",)},
    ),
    refuses=(CommitmentMissing, CheckInMissing, Conflict, Invalid),
)
def post_check_in(sent: dict[str, Any]) -> Reply:
    """Report on a commitment.

    A check-in is a fact and is never changed; another corrects it by taking its place. The very
    same again changes nothing.
    """
    report = Report(
        id=sent["id"],
        commitment_id=sent["commitment"],
        outcome=sent["outcome"],
        day=sent["day"],
        note=sent["note"],
        count=sent["count"],
        witness=sent["witness"],
        instead_of=sent["instead_of"],
        digest_id=sent["digest"],
    )
    fact = check_in(desk(), report)
    return fact, HTTPStatus.CREATED, {"Location": f"/api/check-ins/{fact.id}"}


@resource.operation(
    "GET /<uuid:check_in_id>",
    path=_PATH,
    gives=Gives({HTTPStatus.OK: "The check-in."}, CheckInSchema(), example=examples.CHECK_IN),
    refuses=(CheckInMissing,),
)
def get_check_in(check_in_id: UUID) -> Reply:
    """Look at a check-in, taken back or not."""
    return show_check_in(desk(), check_in_id), HTTPStatus.OK, {}


@resource.operation(
    "DELETE /<uuid:check_in_id>",
    path=_PATH,
    gives=Gives({HTTPStatus.NO_CONTENT: "It is taken back; or it was already."}),
    refuses=(CheckInMissing,),
)
def delete_check_in(check_in_id: UUID) -> Reply:
    """Take a check-in back.

    It stays on record, and counts no longer. Twice changes nothing.
    """
    withdraw_check_in(desk(), check_in_id)
    return Response(status=HTTPStatus.NO_CONTENT)
