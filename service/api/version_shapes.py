"""The shapes of the versions of a digest, and of what an edit did to its parts."""

from collections.abc import Mapping
from typing import Any, ClassVar

from marshmallow import ValidationError, fields, validate, validates_schema

from cards.identity import Became, Change
from cards.parts import PartKind
from service.api import meanings
from service.api.digest_shapes import (
    CommitmentSchema,
    DigestSchema,
    care_field,
    digest_said,
)
from service.api.fields import Identity, Request, Shape, Truth
from service.use_cases.records import Cause, Version
from service.use_cases.versions import OpenVersion


class PartSchema(Shape):
    """A part of a digest with its identity."""

    id = fields.UUID(
        required=True,
        metadata={"description": "Stays the same when it is edited, moved, removed and restored."},
    )
    number = fields.Integer(
        required=True,
        metadata={"description": "Its place among the parts of its kind, from 1."},
    )
    text = fields.String(required=True, metadata=meanings.WORDS)
    locator = fields.String(required=True, allow_none=True, metadata=meanings.LOCATOR)
    page = fields.Integer(required=True, allow_none=True, metadata=meanings.PAGE)
    after = fields.Integer(
        required=True,
        allow_none=True,
        metadata={
            "description": "Of a quotation: number of the point it stands after, 0 for before "
            "all, null when not known."
        },
    )


class ChangeSchema(Shape):
    """What became of one part in an edit."""

    became = fields.Enum(
        Became,
        by_value=fields.String,
        required=True,
        metadata={
            "description": "`reworded`, and its items keep their history; `replaced`: it stands "
            "where another was and starts afresh; `fresh`: new; `restored`: it was retired and is "
            "held again, with its history; `retired`: no longer held, its history kept."
        },
    )
    kind = fields.Enum(
        PartKind,
        by_value=fields.String,
        required=True,
        metadata={"description": "What sort of part it is."},
    )
    part = fields.Nested(PartSchema, required=True, metadata={"description": "As it is now."})
    before = fields.Nested(
        PartSchema,
        required=True,
        allow_none=True,
        metadata={
            "description": "As it was; of a replaced one, the part it stands in the place of; "
            "null for a fresh one."
        },
    )


class ChangesSchema(Shape):
    """What the last edit of a digest did to its parts."""

    revision = fields.Integer(required=True, metadata=meanings.REVISION)
    changes = fields.List(
        fields.Nested(ChangeSchema),
        required=True,
        metadata={"description": "Parts that say the same as before are left out."},
    )


class VersionEntrySchema(Shape):
    """A version as the list of them shows it."""

    revision = fields.Integer(
        required=True, metadata={"description": "Of the digest then, from 1."}
    )
    kept_at = fields.DateTime(required=True, metadata={"description": "When it was kept, in UTC."})
    cause = fields.Enum(
        Cause, by_value=fields.String, required=True, metadata={"description": "What it came of."}
    )


class VersionPageSchema(Shape):
    """One page of the versions of a digest."""

    versions = fields.List(
        fields.Nested(VersionEntrySchema),
        required=True,
        metadata={"description": "The newest first."},
    )
    next = fields.String(
        required=True,
        allow_none=True,
        metadata={"description": "Cursor of the page that follows, null on the last."},
    )


class FormerDigestSchema(DigestSchema):
    """A digest as it was at one revision."""

    care = care_field()
    commitments = fields.List(
        fields.Nested(CommitmentSchema), required=True, metadata=meanings.COMMITMENTS
    )


class VersionSchema(VersionEntrySchema):
    """One version of a digest, with what the edit that made it did."""

    digest = fields.Nested(
        FormerDigestSchema, required=True, metadata={"description": "As it was then."}
    )
    changes = fields.List(
        fields.Nested(ChangeSchema),
        required=True,
        metadata={
            "description": "What became of each part from the version before it to this one; none "
            "of the first."
        },
    )
    since = fields.List(
        fields.Nested(ChangeSchema),
        required=True,
        metadata={"description": "What became of each part from this version to now."},
    )


_WAYS = ("continues", "afresh")


class IdentitySchema(Request):
    """What a part is after all, said in exactly one way."""

    rules: ClassVar[dict[str, Any]] = {"oneOf": [{"required": [way]} for way in _WAYS]}

    continues = Identity(
        metadata={
            "description": "Id of the retired part, of its kind, that it is after all: it takes "
            "on the other's history."
        }
    )
    afresh = Truth(
        validate=validate.Equal(True),
        metadata={
            "enum": [True],
            "description": "It is another one now: it starts without history, which stays with "
            "what it said before.",
        },
    )

    @validates_schema
    def said_in_one_way(self, data: Mapping[str, Any], **_: object) -> None:
        """Refuse what says neither, or both."""
        if sum(way in data for way in _WAYS) != 1:
            raise ValidationError("Give exactly one of continues and afresh.")


def change_said(change: Change) -> dict[str, object]:
    """Return what `ChangeSchema` dumps."""
    return {
        "became": change.became,
        "kind": change.part.kind,
        "part": change.part,
        "before": change.before,
    }


def version_said(opened: OpenVersion) -> dict[str, object]:
    """Return what `VersionSchema` dumps."""
    version: Version = opened.version
    return {
        "revision": version.kept.revision,
        "kept_at": version.kept_at,
        "cause": version.cause,
        "digest": digest_said(version.kept.digest()) | {"care": version.kept.care},
        "changes": [change_said(each) for each in opened.changes],
        "since": [change_said(each) for each in opened.since],
    }
