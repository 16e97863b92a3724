"""Decisions: what the reader settled about a commitment."""

from http import HTTPStatus
from typing import Any
from uuid import UUID

from flask import Response
from marshmallow import fields, validate

from cards.commitments import Act, Outcome
from cards.commitments.decisions import MAX_REASON
from cards.errors import CommitmentMissing, Conflict, DecisionMissing, Invalid, InvalidDigest
from service.api import commitment_examples as examples
from service.api import meanings
from service.api.desk import desk
from service.api.fields import Day, Identity, Request, Shape, Text
from service.api.measure_shapes import GivenMeasureSchema, measure_of
from service.api.operations import Gives, Reply, Resource, Takes
from service.api.wording import MeasureSchema
from service.use_cases.decide import Ruling, decide, withdraw_decision

resource = Resource(
    "decisions", "/decisions", "Commitments started, paused, renewed, reworded, released."
)

_ACT = {
    "description": "What is decided: `start` on another day, another `measure`, `move` the last "
    "day, `pause`, `resume`, `renew`, `halve`, `reword`, `release`, `close`."
}
_UNTIL = {"description": "The last day of a pause, null for an open one; the day it is moved to."}
_OUTCOME = {"description": "Of `close`: what came of it."}
_WORDS = {"description": "The reason of a release, the new wording, else a note; may be empty."}


class RulingSchema(Request):
    """A decision as it is sent."""

    id = Identity(required=True, metadata=meanings.OWN_ID)
    commitment = Identity(required=True, metadata={"description": "Id of the commitment."})
    act = fields.Enum(Act, by_value=fields.String, required=True, metadata=_ACT)
    day = Day(
        load_default=None,
        metadata={
            "description": "The reader's day it holds from, of a pause up to a year ahead; today "
            "unless given."
        },
    )
    measure = fields.Nested(
        GivenMeasureSchema,
        load_default=None,
        allow_none=True,
        metadata={
            "description": "The measure it is to have, of `measure`, `renew`, `halve`, `reword`. "
            "Null for what follows: half, what the new words say, or what it was."
        },
    )
    until = Day(load_default=None, allow_none=True, metadata=_UNTIL)
    outcome = fields.Enum(
        Outcome, by_value=fields.String, load_default=None, allow_none=True, metadata=_OUTCOME
    )
    words = Text(load_default="", validate=validate.Length(max=MAX_REASON), metadata=_WORDS)


class DecisionSchema(Shape):
    """A decision in the library: a fact."""

    id = fields.UUID(required=True, metadata={"description": "Of the decision."})
    commitment = fields.UUID(
        attribute="commitment_id", required=True, metadata={"description": "Id of the commitment."}
    )
    act = fields.Enum(Act, by_value=fields.String, required=True, metadata=_ACT)
    day = fields.Date(required=True, metadata={"description": "The reader's day it holds from."})
    measure = fields.Nested(
        MeasureSchema,
        required=True,
        allow_none=True,
        metadata={"description": "The measure it gave; null where that stayed as it was."},
    )
    until = fields.Date(required=True, allow_none=True, metadata=_UNTIL)
    outcome = fields.Enum(
        Outcome, by_value=fields.String, required=True, allow_none=True, metadata=_OUTCOME
    )
    words = fields.String(required=True, metadata=_WORDS)
    decided_at = fields.DateTime(
        required=True, metadata={"description": "When it was recorded, in UTC."}
    )
    decided_on = fields.Date(
        required=True, metadata={"description": "The reader's day it was recorded on."}
    )
    taken_back_on = fields.Date(
        attribute="withdrawn_on",
        required=True,
        allow_none=True,
        metadata={"description": "The reader's day it was taken back; null while it holds."},
    )


@resource.operation(
    "POST",
    takes=Takes(RulingSchema(), "The decision.", example=examples.RULING),
    gives=Gives(
        {HTTPStatus.CREATED: "It is kept; or it was kept already."},
        DecisionSchema(),
        example=examples.DECISION,
    ),
    refuses=(CommitmentMissing, Conflict, Invalid, InvalidDigest),
)
def post_decision(sent: dict[str, Any]) -> Reply:
    """Decide about a commitment.

    A decision is a fact and is never changed. The very same again changes nothing. A new wording
    is written into the digest, and its item keeps its memory.
    """
    measure = sent["measure"]
    ruling = Ruling(
        id=sent["id"],
        commitment_id=sent["commitment"],
        act=sent["act"],
        day=sent["day"],
        measure=None if measure is None else measure_of(measure),
        until=sent["until"],
        outcome=sent["outcome"],
        words=sent["words"],
    )
    return decide(desk(), ruling), HTTPStatus.CREATED, {}


@resource.operation(
    "DELETE /<uuid:decision_id>",
    path={"decision_id": "Id of the decision."},
    gives=Gives({HTTPStatus.NO_CONTENT: "It is taken back; or it was already."}),
    refuses=(DecisionMissing,),
)
def delete_decision(decision_id: UUID) -> Reply:
    """Take a decision back.

    It stays on record, and holds no longer; of a new wording the digest says the former one again.
    Twice changes nothing.
    """
    withdraw_decision(desk(), decision_id)
    return Response(status=HTTPStatus.NO_CONTENT)
