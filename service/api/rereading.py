"""Re-reading: which books to open again, and that it was done."""

from http import HTTPStatus
from typing import Any
from uuid import UUID

from flask import Response

from cards.errors import Conflict, DigestMissing, Invalid, RereadingMissing
from service.api import examples
from service.api.desk import desk
from service.api.operations import Gives, Reply, Resource, Takes
from service.api.rereading_shapes import (
    ReadAgainSchema,
    RereadingListSchema,
    RereadingSchema,
    RereadingsSchema,
)
from service.use_cases.rereading import (
    ReadAgain,
    earlier_rereadings,
    list_rereading,
    record_rereading,
    show_rereading,
    withdraw_rereading,
)

books = Resource("re-reading", "/re-reading", "Which books to open again, where and why.")
facts = Resource("re-readings", "/re-readings", "That pages of a book were read again.")

_PATH = {"rereading_id": "Id of the re-reading."}
_REREADING_ID = "6a1f0c52-7d55-4a60-8e07-1f4f1c3f8b21"
_GIVEN = {
    "id": _REREADING_ID,
    "digest": examples.DIGEST_ID,
    "day": "2026-03-01",
    "pages": "103-105",
    "minutes": 9,
    "note": "It is the hearth, not the gold.",
}
_QUOTATION = {
    "id": "e3c1a9d2-0a1f-4c62-9d5b-6f0c9a7b2e11",
    "text": "The gold had turned into the child.",
    "locator": "p. 104",
}
_LISTED = {
    "day": "2026-03-01",
    "books": [
        {
            "digest": examples.DIGEST_ID,
            "title": "Silas Marner",
            "author": "George Eliot",
            "reasons": [
                {
                    "reason": "stalled",
                    "sentence": "“When I come home, ask a neighbour in for tea once a week” is "
                    "stalled. Nothing was said about the last two weeks, 9 to 15 and 16 to 22 "
                    "February 2026.",
                    "caution": None,
                    "parts": [examples.COMMITMENT_ID],
                }
            ],
            "stretches": [
                {
                    "place": "pp. 103-105",
                    "first": 103,
                    "last": 105,
                    "points": [],
                    "quotations": [_QUOTATION],
                }
            ],
            "minutes": 6,
        }
    ],
    "more": 0,
}
_TOLD = {
    **_GIVEN,
    "title": "Silas Marner",
    "author": "George Eliot",
    "reported_at": "2026-03-01T21:40:00+00:00",
    "items": [examples.ITEM_ID],
    "withdrawn_on": None,
    "helped": {
        "before": {"recalled": 0, "asked": 1},
        "after": {"recalled": 1, "asked": 1},
        "waiting": 0,
        "sentence": "Of the one item asked again, none came back before and one since.",
    },
}


@books.operation(
    "GET",
    gives=Gives({HTTPStatus.OK: "The list."}, RereadingListSchema(), example=_LISTED),
)
def get_rereading_list() -> Reply:
    """List the books to open again, most worth it first.

    By what reading is worth an hour; of equals those with a stalled commitment first. A page is
    named only where the digest knows it.
    """
    return list_rereading(desk()), HTTPStatus.OK, {}


@facts.operation(
    "GET",
    gives=Gives(
        {HTTPStatus.OK: "The re-readings."}, RereadingsSchema(), example={"rereadings": [_TOLD]}
    ),
)
def get_rereadings() -> Reply:
    """Look at the latest re-readings and what they came to.

    The items were chosen because they had not come back: some would have without it.
    """
    return {"rereadings": earlier_rereadings(desk())}, HTTPStatus.OK, {}


@facts.operation(
    "POST",
    takes=Takes(ReadAgainSchema(), "The re-reading.", example=_GIVEN),
    gives=Gives(
        {HTTPStatus.CREATED: "It is kept; or it was kept already."},
        RereadingSchema(),
        example=_TOLD,
    ),
    refuses=(DigestMissing, Invalid, Conflict),
)
def post_rereading(sent: dict[str, Any]) -> Reply:
    """Record that pages of a book were read again.

    A re-reading is a fact and is never changed; the very same again changes nothing. The items
    concerned are asked afresh within three days.
    """
    read = ReadAgain(digest_id=sent.pop("digest"), **sent)
    return record_rereading(desk(), read), HTTPStatus.CREATED, {}


@facts.operation(
    "GET /<uuid:rereading_id>",
    path=_PATH,
    gives=Gives({HTTPStatus.OK: "The re-reading."}, RereadingSchema(), example=_TOLD),
    refuses=(RereadingMissing,),
)
def get_rereading(rereading_id: UUID) -> Reply:
    """Look at one re-reading, taken back or not, and what it came to."""
    return show_rereading(desk(), rereading_id), HTTPStatus.OK, {}


@facts.operation(
    "DELETE /<uuid:rereading_id>",
    path=_PATH,
    gives=Gives({HTTPStatus.NO_CONTENT: "It is taken back."}),
    refuses=(RereadingMissing,),
)
def delete_rereading(rereading_id: UUID) -> Reply:
    """Take a re-reading back: it stays on record, and counts no longer."""
    withdraw_rereading(desk(), rereading_id)
    return Response(status=HTTPStatus.NO_CONTENT)
