"""Links: points of one book that speak to another."""

from http import HTTPStatus
from typing import Any
from uuid import UUID

from flask import Response
from marshmallow import fields, validate

from cards.errors import DigestMissing, InvalidLink, LinkMissing
from cards.parts import Link, PartKind
from service.api import meanings
from service.api.desk import desk
from service.api.fields import Identity, Request, Shape, Text
from service.api.operations import Gives, Reply, Resource, Takes
from service.use_cases.library import open_digest
from service.use_cases.links import MOST_WHY, GivenLink, drop_link, link

resource = Resource("links", "/digests", "Points of one book that speak to another.")

_PATH = {"digest_id": "Id of the digest."}
_WHY = {"description": "What the one says to the other; may be empty."}
_GIVEN = {
    "id": "2f6d1d0e-7d1b-4f57-8a7e-0d6a0f4b8c11",
    "point": "6a1f6f0e-1f3e-4ad1-9d53-7f2f0b9f8a22",
    "book": "9b0c8a54-5a0c-4a51-9b9d-1d6f2e8c7a33",
    "why": "What one owns comes to own one.",
}
_LINK = {**_GIVEN, "title": "Walden", "author": "Henry David Thoreau"}


class GivenLinkSchema(Request):
    """A link as it is sent."""

    id = Identity(required=True, metadata=meanings.OWN_ID)
    point = Identity(required=True, metadata={"description": "Id of the point."})
    book = Identity(required=True, metadata={"description": "Id of the other book's digest."})
    why = Text(load_default="", validate=validate.Length(max=MOST_WHY), metadata=_WHY)


class LinkSchema(Shape):
    """A link in the library."""

    id = fields.UUID(required=True, metadata={"description": "Of the link."})
    point = fields.UUID(
        attribute="part_id", required=True, metadata={"description": "Id of the point."}
    )
    book = fields.UUID(
        attribute="book_id",
        required=True,
        metadata={"description": "Id of the other book's digest."},
    )
    title = fields.String(required=True, metadata={"description": "Of the other book."})
    author = fields.String(
        required=True, allow_none=True, metadata={"description": "Of the other book, or null."}
    )
    why = fields.String(required=True, metadata=_WHY)


class LinkedPointSchema(Shape):
    """A point, and the books it speaks to."""

    id = fields.UUID(required=True, metadata={"description": "Of the point."})
    number = fields.Integer(required=True, metadata={"description": "From 1, in order."})
    text = fields.String(required=True, metadata={"description": "Its words."})
    links = fields.List(
        fields.Nested(LinkSchema), required=True, metadata={"description": "In order of titles."}
    )


class LinksSchema(Shape):
    """The points of a digest, linked or not."""

    points = fields.List(
        fields.Nested(LinkedPointSchema),
        required=True,
        metadata={"description": "In the book's order."},
    )


def _by_title(each: Link) -> tuple[str, str]:
    return each.title, str(each.id)


@resource.operation(
    "GET /<uuid:digest_id>/links",
    path=_PATH,
    gives=Gives(
        {HTTPStatus.OK: "Its points."},
        LinksSchema(),
        example={
            "points": [
                {
                    "id": _GIVEN["point"],
                    "number": 1,
                    "text": "Fifteen years of weaving.",
                    "links": [_LINK],
                }
            ]
        },
    ),
    refuses=(DigestMissing,),
)
def get_links(digest_id: UUID) -> Reply:
    """List the points of a digest with the books they speak to."""
    kept = open_digest(desk(), digest_id).kept
    points = [
        {
            "id": point.id,
            "number": point.number,
            "text": point.text,
            "links": sorted(
                (each for each in kept.links if each.part_id == point.id), key=_by_title
            ),
        }
        for point in kept.held(PartKind.POINT)
    ]
    return {"points": points}, HTTPStatus.OK, {}


@resource.operation(
    "POST /<uuid:digest_id>/links",
    path=_PATH,
    takes=Takes(GivenLinkSchema(), "The link.", example=_GIVEN),
    gives=Gives(
        {HTTPStatus.CREATED: "It is kept; or it was kept already."}, LinkSchema(), example=_LINK
    ),
    refuses=(DigestMissing, InvalidLink),
)
def post_link(sent: dict[str, Any], digest_id: UUID) -> Reply:
    """Link a point to another book.

    It is asked from then on: the point is shown, and the reader names the book. The same point
    and book again keeps the first link's id and what is now said of the why.
    """
    given = GivenLink(sent["id"], digest_id, sent["point"], sent["book"], sent["why"])
    return link(desk(), given), HTTPStatus.CREATED, {}


@resource.operation(
    "DELETE /<uuid:digest_id>/links/<uuid:link_id>",
    path={**_PATH, "link_id": "Id of the link."},
    gives=Gives({HTTPStatus.NO_CONTENT: "It is dropped."}),
    refuses=(DigestMissing, LinkMissing),
)
def delete_link(digest_id: UUID, link_id: UUID) -> Reply:
    """Drop a link.

    When no other is left its point is asked no more; its history is kept.
    """
    drop_link(desk(), digest_id, link_id)
    return Response(status=HTTPStatus.NO_CONTENT)
