"""The shapes of a talk: its sheet, the report of one, the fact."""

from marshmallow import fields, validate

from cards.digest import MAX_TEXT
from cards.talk import Blank, Length, Stage
from cards.talk.facts import MAX_LISTENER, MAX_NOTE, MOST_MINUTES
from service.api import meanings
from service.api.fields import Day, Identity, QueryWhole, Request, Shape, Text, Whole
from service.use_cases.talking import MOST_RESOLVED

_LENGTHS = [int(each) for each in Length]
_LISTENER = {"description": "With whom, in the reader's words; may be empty."}
_NOTE = {"description": "What came of it; may be empty."}


class LengthSchema(Request):
    """How long the talk is to be."""

    minutes = QueryWhole(
        load_default=int(Length.READ_IT),
        validate=validate.OneOf(_LENGTHS),
        metadata={"description": "80 with someone who read the book, 15 with someone who did not."},
    )


class TalkLineSchema(Shape):
    """One line of a sheet."""

    label = fields.String(
        required=True, metadata={"description": "A letter, a number, or nothing."}
    )
    words = fields.String(required=True, metadata={"description": "What is read."})
    beside = fields.String(
        required=True,
        metadata={"description": "A caution, a place, what was recorded; may be empty."},
    )


class SectionSchema(Shape):
    """One section of a talk."""

    stage = fields.Enum(
        Stage, by_value=fields.String, required=True, metadata={"description": "What it is."}
    )
    heading = fields.String(required=True, metadata={"description": "Its name in words."})
    minutes = fields.Integer(required=True, metadata={"description": "What it takes of the talk."})
    asked = fields.String(required=True, metadata={"description": "What the two are to do."})
    lines = fields.List(
        fields.Nested(TalkLineSchema),
        required=True,
        metadata={
            "description": "What stands on the talking page: never the theme, an order or a place."
        },
    )
    blank = fields.Enum(
        Blank,
        by_value=fields.String,
        required=True,
        metadata={"description": "What is left free to be filled in."},
    )
    answers = fields.List(
        fields.Nested(TalkLineSchema),
        required=True,
        metadata={"description": "What stands on the checking page; may be empty."},
    )
    more = fields.Integer(
        required=True, metadata={"description": "Of how many of its kind nothing is on the sheet."}
    )


class AgendaSchema(Shape):
    """The sheet of a talk; a section for what the digest lacks is not there."""

    digest = fields.UUID(
        attribute="digest_id", required=True, metadata={"description": "Id of the digest."}
    )
    title = fields.String(required=True, metadata={"description": "Of the book."})
    author = fields.String(
        required=True, allow_none=True, metadata={"description": "Of the book, or null."}
    )
    minutes = fields.Integer(
        attribute="length", required=True, metadata={"description": "Of all sections together."}
    )
    sections = fields.List(
        fields.Nested(SectionSchema),
        required=True,
        metadata={"description": "In the order they are gone through."},
    )


class HeldTalkSchema(Request):
    """A talk as it is sent."""

    id = Identity(required=True, metadata=meanings.OWN_ID)
    day = Day(
        load_default=None,
        metadata={"description": "The reader's day it took place on; today unless given."},
    )
    listener = Text(load_default="", validate=validate.Length(max=MAX_LISTENER), metadata=_LISTENER)
    minutes = Whole(
        load_default=None,
        allow_none=True,
        validate=validate.Range(1, MOST_MINUTES),
        metadata={"description": "How long it took, or null."},
    )
    note = Text(load_default="", validate=validate.Length(max=MAX_NOTE), metadata=_NOTE)
    resolved = fields.List(
        Text(validate=validate.Length(1, MAX_TEXT)),
        load_default=list,
        validate=validate.Length(max=MOST_RESOLVED),
        metadata={
            "description": "New commitments, each in words. They are added to the digest; what it "
            "asks already is not added twice."
        },
    )
    judgement = Text(
        load_default=None,
        allow_none=True,
        validate=validate.Length(1, MAX_TEXT),
        metadata={"description": "What the digest's judgement is now; null leaves it as it is."},
    )


class TalkSchema(Shape):
    """A talk in the library: a fact."""

    id = fields.UUID(required=True, metadata={"description": "Of the talk."})
    digest = fields.UUID(
        attribute="digest_id", required=True, metadata={"description": "Id of the digest."}
    )
    day = fields.Date(required=True, metadata={"description": "The reader's day it took place."})
    reported_at = fields.DateTime(
        required=True, metadata={"description": "When it was recorded, in UTC."}
    )
    listener = fields.String(required=True, metadata=_LISTENER)
    minutes = fields.Integer(
        required=True, allow_none=True, metadata={"description": "How long it took, or null."}
    )
    note = fields.String(required=True, metadata=_NOTE)


class RecordedTalkSchema(Shape):
    """What recording a talk came to."""

    talk = fields.Nested(TalkSchema, required=True, metadata={"description": "The fact."})
    added = fields.Integer(
        required=True, metadata={"description": "How many commitments the digest has from it."}
    )


class TalksSchema(Shape):
    """The talks about a book."""

    talks = fields.List(
        fields.Nested(TalkSchema), required=True, metadata={"description": "The latest first."}
    )
