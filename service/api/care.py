"""Care: how much of a book to keep."""

from http import HTTPStatus
from typing import Any
from uuid import UUID

from marshmallow import fields

from cards.errors import DigestChanged, DigestMissing
from cards.parts import Care, KeptDigest
from service.api import meanings
from service.api.desk import desk
from service.api.digest_shapes import care_field
from service.api.fields import Request, Shape
from service.api.operations import Gives, Reply, Resource, Takes
from service.api.tags import expected_revision, tag_of, unchanged
from service.use_cases.care import set_care
from service.use_cases.library import open_digest

resource = Resource("care", "/digests", "How much of a book to keep.")

_PATH = {"digest_id": "Id of the digest."}


class CareSchema(Shape):
    """How much of a book is kept."""

    care = care_field()


class WantedCareSchema(Request):
    """How much of a book to keep from now on."""

    care = fields.Enum(Care, by_value=fields.String, required=True, metadata=meanings.CARE)


def _shown(kept: KeptDigest) -> Reply:
    return {"care": kept.care}, HTTPStatus.OK, {"ETag": tag_of(kept.id, kept.revision)}


@resource.operation(
    "GET /<uuid:digest_id>/care",
    path=_PATH,
    gives=Gives(
        {HTTPStatus.OK: "Its care."},
        CareSchema(),
        example={"care": "steady"},
        headers={HTTPStatus.OK: ("ETag",)},
    ),
    refuses=(DigestMissing,),
)
def get_care(digest_id: UUID) -> Reply:
    """Read how much of a book is kept."""
    kept = open_digest(desk(), digest_id).kept
    return unchanged(tag_of(kept.id, kept.revision)) or _shown(kept)


@resource.operation(
    "PUT /<uuid:digest_id>/care",
    path=_PATH,
    takes=Takes(WantedCareSchema(), "The care.", example={"care": "close"}),
    gives=Gives(
        {HTTPStatus.OK: "Its care now."},
        CareSchema(),
        example={"care": "close"},
        headers={HTTPStatus.OK: ("ETag",)},
    ),
    refuses=(DigestMissing, DigestChanged),
)
def put_care(sent: dict[str, Any], digest_id: UUID) -> Reply:
    """Say how much of a book to keep.

    Its due days move to what that aims for; no answer changes. What a resting book has unasked
    waits until it rests no more.
    """
    revision = expected_revision(digest_id, lambda: open_digest(desk(), digest_id).kept.revision)
    return _shown(set_care(desk(), digest_id, sent["care"], revision))
