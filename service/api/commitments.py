"""Commitments: what the books of the library ask, and what came of it."""

from http import HTTPStatus
from typing import Any

from marshmallow import fields

from cards.commitments import Outcome
from service.api import examples, meanings
from service.api.check_ins import CheckInSchema
from service.api.cursors import InstantCursor, cursor_of, limit, links
from service.api.desk import desk
from service.api.fields import Request, Shape
from service.api.operations import Gives, Reply, Resource
from service.use_cases.commitments import HeldCommitment, list_commitments

resource = Resource(
    "commitments", "/commitments", "What the books of the library ask, and what came of it."
)


class CommitmentQuerySchema(Request):
    """Which commitments are listed."""

    cursor = InstantCursor()
    limit = limit("digests")


class TallySchema(Shape):
    """The check-ins on a commitment, counted by outcome."""

    kept = fields.Integer(required=True, metadata={"description": "How often it was kept."})
    partly = fields.Integer(
        required=True, metadata={"description": "How often it was kept in part."}
    )
    missed = fields.Integer(required=True, metadata={"description": "How often it was missed."})


class HeldCommitmentSchema(Shape):
    """A commitment a digest of the library holds, with what came of it."""

    id = fields.UUID(required=True, metadata={"description": "Of the commitment."})
    digest = fields.UUID(required=True, metadata={"description": "Id of the digest it is in."})
    title = fields.String(required=True, metadata=meanings.TITLE)
    author = fields.String(required=True, allow_none=True, metadata=meanings.AUTHOR)
    number = fields.Integer(
        required=True, metadata={"description": "Its place among those of its digest, from 1."}
    )
    text = fields.String(required=True, metadata=meanings.WORDS)
    caution = fields.String(
        required=True,
        allow_none=True,
        metadata={"description": "To be shown with it when it touches health, money or the law."},
    )
    check_ins = fields.Nested(
        TallySchema, required=True, metadata={"description": "What came of it so far, counted."}
    )
    last = fields.Nested(
        CheckInSchema,
        required=True,
        allow_none=True,
        metadata={"description": "The check-in about the latest day; null without any."},
    )


class CommitmentPageSchema(Shape):
    """The commitments of one page of the library."""

    day = fields.Date(required=True, metadata={"description": "The reader's day it is now."})
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


@resource.operation(
    "GET",
    query=CommitmentQuerySchema(),
    gives=Gives(
        {HTTPStatus.OK: "The commitments of one page of the library."},
        CommitmentPageSchema(),
        example=examples.COMMITMENTS,
        headers={HTTPStatus.OK: ("Link",)},
    ),
)
def list_held_commitments(query: dict[str, Any]) -> Reply:
    """List the commitments of the library with what came of each.

    They come digest by digest, the one added last first; a page is so many digests. To report
    on one, send a check-in.
    """
    page = list_commitments(desk(), query["cursor"], query["limit"])
    following = None if page.next is None else cursor_of(page.next)
    shown = {
        "day": page.today,
        "commitments": [_held(each) for each in page.commitments],
        "next": following,
    }
    return shown, HTTPStatus.OK, links(following)


def _held(commitment: HeldCommitment) -> dict[str, object]:
    digest, part, tally = commitment.digest, commitment.part, commitment.tally
    return {
        "id": part.id,
        "digest": digest.id,
        "title": digest.title,
        "author": digest.author,
        "number": part.number,
        "text": part.text,
        "caution": commitment.caution,
        "check_ins": {outcome.value: tally.counts.get(outcome, 0) for outcome in Outcome},
        "last": tally.last,
    }
