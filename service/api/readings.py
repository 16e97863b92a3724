"""Readings: one book read more than once, its digests side by side."""

from http import HTTPStatus
from uuid import UUID

from marshmallow import fields

from cards.errors import DigestMissing
from cards.parts import KeptDigest
from service.api import examples, meanings
from service.api.desk import desk
from service.api.digest_shapes import (
    BookSchema,
    KeptDigestSchema,
    book_said,
    care_field,
    kept_digest,
)
from service.api.fields import Shape
from service.api.operations import Gives, Reply, Resource
from service.use_cases.keeping import counted
from service.use_cases.readings import beside, other_readings

resource = Resource(
    "readings", "/digests", "One book read more than once, its digests side by side."
)

_PATH = {"digest_id": "Id of the digest."}
_EARLIER = {
    **examples.KEPT,
    "id": "8f5b0d2e-2a4c-4c59-bb0a-5c1f3a7e9d42",
    "finished_on": "2016-08-14",
    "revision": 1,
}
_READING = {
    key: _EARLIER[key]
    for key in (
        "id",
        "title",
        "author",
        "edition",
        "isbn",
        "pages",
        "finished_on",
        "care",
        "revision",
    )
}


class ReadingSchema(BookSchema):
    """Another digest of the same book."""

    id = fields.UUID(required=True, metadata={"description": "Of that digest."})
    revision = fields.Integer(required=True, metadata=meanings.REVISION)
    care = care_field()


class ReadingsSchema(Shape):
    """The other readings of a book."""

    readings = fields.List(
        fields.Nested(ReadingSchema),
        required=True,
        metadata={
            "description": "Digests of the same title and author, whatever the edition, by the "
            "day the book was finished; those without a day first."
        },
    )


class SideBySideSchema(Shape):
    """Two digests side by side."""

    earlier = fields.Nested(
        KeptDigestSchema, required=True, metadata={"description": "Of the earlier reading."}
    )
    later = fields.Nested(
        KeptDigestSchema, required=True, metadata={"description": "Of the later reading."}
    )


@resource.operation(
    "GET /<uuid:digest_id>/readings",
    path=_PATH,
    gives=Gives(
        {HTTPStatus.OK: "Its other readings."},
        ReadingsSchema(),
        example={"readings": [_READING]},
    ),
    refuses=(DigestMissing,),
)
def list_readings(digest_id: UUID) -> Reply:
    """List the other readings of a digest's book."""
    readings = [_entry(each) for each in other_readings(desk(), digest_id)]
    return {"readings": readings}, HTTPStatus.OK, {}


@resource.operation(
    "GET /<uuid:digest_id>/readings/<uuid:other_id>",
    path={**_PATH, "other_id": "Id of another digest, as a rule of the same book."},
    gives=Gives(
        {HTTPStatus.OK: "Both digests."},
        SideBySideSchema(),
        example={"earlier": _EARLIER, "later": examples.KEPT},
    ),
    refuses=(DigestMissing,),
)
def get_side_by_side(digest_id: UUID, other_id: UUID) -> Reply:
    """Look at two readings side by side.

    The one that was finished first stands first; one without a day stands before the other.
    """
    both = beside(desk(), digest_id, other_id)
    shown = {
        "earlier": kept_digest(both.earlier, counted(both.earlier)),
        "later": kept_digest(both.later, counted(both.later)),
    }
    return shown, HTTPStatus.OK, {}


def _entry(kept: KeptDigest) -> dict[str, object]:
    return book_said(kept) | {"id": kept.id, "revision": kept.revision, "care": kept.care}
