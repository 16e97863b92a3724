"""A reader's own heading words: what announces a part in the digests they write."""

from collections.abc import Mapping
from http import HTTPStatus
from typing import Any

from marshmallow import ValidationError, fields, validate, validates_schema

from cards.errors import Invalid, ReaderChanged
from cards.intake.heading_words import MAX_HEADING, MAX_WORDS, Part
from service.api.desk import desk
from service.api.fields import Request, Shape, Text
from service.api.operations import Gives, Reply, Resource, Takes
from service.api.tags import expects, tag_of_words, unchanged
from service.use_cases.headings import set_headings, show_headings

resource = Resource(
    "headings", "/reader/headings", "The reader's own heading words, which win over the usual ones."
)

_WORDS = {"description": "The heading as it stands in the reader's digests."}
_PART = {"description": "The part it announces."}
_HEADINGS = {
    "headings": [
        {"words": "What it comes to", "part": "theme"},
        {"words": "Lines that stay", "part": "quotations"},
    ]
}


class HeadingSchema(Shape):
    """A heading of the reader's own."""

    words = fields.String(required=True, metadata=_WORDS)
    part = fields.Enum(Part, by_value=fields.String, required=True, metadata=_PART)


class HeadingsSchema(Shape):
    """The headings of the reader's own."""

    headings = fields.List(
        fields.Nested(HeadingSchema), required=True, metadata={"description": "By their words."}
    )


class WantedHeadingSchema(Request):
    """A heading of the reader's own as it is to be."""

    words = Text(required=True, validate=validate.Length(1, MAX_HEADING), metadata=_WORDS)
    part = fields.Enum(Part, by_value=fields.String, required=True, metadata=_PART)


class WantedHeadingsSchema(Request):
    """All headings of the reader's own, in place of those there were."""

    headings = fields.List(
        fields.Nested(WantedHeadingSchema),
        required=True,
        validate=validate.Length(max=MAX_WORDS),
        metadata={"description": "In no order that matters; none to have the usual ones alone."},
    )

    @validates_schema(skip_on_field_errors=True)
    def given_once(self, data: Mapping[str, Any], **_: object) -> None:
        """Refuse the same words twice."""
        words = [each["words"] for each in data["headings"]]
        if len(set(words)) != len(words):
            raise ValidationError("Give each heading once.", "headings")


@resource.operation(
    "GET",
    gives=Gives(
        {HTTPStatus.OK: "The headings."},
        HeadingsSchema(),
        example=_HEADINGS,
        headers={HTTPStatus.OK: ("ETag",)},
    ),
)
def get_headings() -> Reply:
    """Read the reader's own headings."""
    words = show_headings(desk())
    return unchanged(_tag(words)) or _shown(words)


@resource.operation(
    "PUT",
    takes=Takes(WantedHeadingsSchema(), "All the headings.", example=_HEADINGS),
    gives=Gives(
        {HTTPStatus.OK: "The headings as they are now."},
        HeadingsSchema(),
        example=_HEADINGS,
        headers={HTTPStatus.OK: ("ETag",)},
    ),
    refuses=(Invalid, ReaderChanged),
)
def put_headings(sent: dict[str, Any]) -> Reply:
    """Change the reader's own headings.

    They hold from the next document that is read. Nothing that is kept changes.
    """
    if not expects(_tag(show_headings(desk()))):
        raise ReaderChanged
    words = {each["words"]: each["part"] for each in sent["headings"]}
    return _shown(set_headings(desk(), words))


def _shown(words: Mapping[str, Part]) -> Reply:
    headings = [{"words": heading, "part": part} for heading, part in words.items()]
    return {"headings": headings}, HTTPStatus.OK, {"ETag": _tag(words)}


def _tag(words: Mapping[str, Part]) -> str:
    said = (f"{part.value} {heading}" for heading, part in words.items())
    return tag_of_words("headings", ["", *said])
