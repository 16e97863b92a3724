"""Commitments: what the books of the library ask, how it stands, and what came of it."""

from datetime import date
from http import HTTPStatus
from typing import Any
from uuid import UUID

from marshmallow import fields

from cards.errors import CommitmentMissing, Invalid
from service.api import commitment_examples as examples
from service.api.check_ins import CheckInSchema
from service.api.commitment_shapes import (
    DaysSchema,
    HeldCommitmentSchema,
    WindowSchema,
    held_fields,
    window_fields,
)
from service.api.cursors import InstantCursor, cursor_of, limit, links
from service.api.decisions import DecisionSchema
from service.api.desk import desk
from service.api.fields import Day, Request, Shape
from service.api.operations import Gives, Reply, Resource
from service.use_cases.commitments import SHOWN, list_commitments, open_commitment

resource = Resource(
    "commitments", "/commitments", "What the books of the library ask, and what came of it."
)

_DAY = {"description": "The reader's day asked about."}


def _on() -> Day:
    return Day(
        load_default=None,
        metadata={
            "description": "The reader's day asked about, at most a year ahead; today unless given."
        },
    )


class DayQuerySchema(Request):
    """The day that is asked about."""

    on = _on()


class CommitmentQuerySchema(DayQuerySchema):
    """Which commitments are listed, and for which day."""

    cursor = InstantCursor()
    limit = limit("digests")


class CommitmentPageSchema(Shape):
    """The commitments of one page of the library."""

    day = fields.Date(required=True, metadata=_DAY)
    commitments = fields.List(
        fields.Nested(HeldCommitmentSchema),
        required=True,
        metadata={
            "description": "Those of the digest added last first; may be empty though more follow."
        },
    )
    next = fields.String(
        required=True,
        allow_none=True,
        metadata={"description": "Cursor of the page that follows, null on the last."},
    )


class OpenCommitmentSchema(HeldCommitmentSchema):
    """A commitment laid open, with the facts about it."""

    day = fields.Date(required=True, metadata=_DAY)
    former = fields.List(
        fields.String(),
        required=True,
        metadata={"description": "What it said before it was reworded, the first first."},
    )
    pauses = fields.List(
        fields.Nested(DaysSchema),
        required=True,
        metadata={"description": "When nothing was asked, in order."},
    )
    windows = fields.List(
        fields.Nested(WindowSchema),
        required=True,
        metadata={"description": "Those it is judged by, the latest first."},
    )
    reports = fields.List(
        fields.Nested(CheckInSchema),
        required=True,
        metadata={
            "description": f"The latest {SHOWN} check-ins, taken back ones too, the latest first."
        },
    )
    decisions = fields.List(
        fields.Nested(DecisionSchema),
        required=True,
        metadata={"description": "All decisions about it, the latest first."},
    )


@resource.operation(
    "GET",
    query=CommitmentQuerySchema(),
    gives=Gives(
        {HTTPStatus.OK: "The commitments of one page of the library."},
        CommitmentPageSchema(),
        example=examples.COMMITMENTS,
        headers={HTTPStatus.OK: ("Link",)},
    ),
    refuses=(Invalid,),
)
def list_held_commitments(query: dict[str, Any]) -> Reply:
    """List the commitments of the library, how each stands and what came of it.

    They come digest by digest, the one added last first; a page is so many digests. To report
    on one, send a check-in.
    """
    page = list_commitments(desk(), query["cursor"], query["limit"], query["on"])
    following = None if page.next is None else cursor_of(page.next)
    shown = {
        "day": page.day,
        "commitments": [held_fields(each) for each in page.commitments],
        "next": following,
    }
    return shown, HTTPStatus.OK, links(following)


@resource.operation(
    "GET /<uuid:commitment_id>",
    path={"commitment_id": "Id of the commitment."},
    query=DayQuerySchema(),
    gives=Gives({HTTPStatus.OK: "The commitment."}, OpenCommitmentSchema(), example=examples.OPEN),
    refuses=(CommitmentMissing, Invalid),
)
def get_commitment(query: dict[str, Any], commitment_id: UUID) -> Reply:
    """Lay a commitment open: how it stands, by which windows, and the facts about it."""
    found = open_commitment(desk(), commitment_id, query["on"])
    stand = found.held.stand
    life = None if stand is None else stand.life
    shown = {
        **held_fields(found.held),
        "day": found.day,
        "former": () if life is None else life.former,
        "pauses": [
            {"first": each.first, "last": None if each.last == date.max else each.last}
            for each in (() if life is None else life.pauses)
        ],
        "windows": [] if stand is None else [window_fields(each) for each in stand.windows],
        "reports": found.check_ins,
        "decisions": found.decisions,
    }
    return shown, HTTPStatus.OK, {}
