"""The shapes of a yearly review."""

from marshmallow import fields

from cards.commitments import Act, Pace, Question
from cards.yearly import Likeness
from service.api.commitment_shapes import TallySchema
from service.api.fields import Shape


class YearlyChangeSchema(Shape):
    """One decision of the year."""

    act = fields.Enum(
        Act, by_value=fields.String, required=True, metadata={"description": "What was decided."}
    )
    day = fields.Date(required=True, metadata={"description": "The day it holds from."})
    told = fields.String(
        required=True,
        metadata={
            "description": "A sentence: of a rewording with the former words, of a release with "
            "its reason."
        },
    )


class RenewingSchema(Shape):
    """What a commitment is met with."""

    question = fields.Enum(
        Question,
        by_value=fields.String,
        required=True,
        metadata={"description": "What is asked first."},
    )
    acts = fields.List(
        fields.Enum(Act, by_value=fields.String),
        required=True,
        metadata={"description": "The decisions offered."},
    )


class PromiseSchema(Shape):
    """One commitment in a year."""

    commitment = fields.UUID(
        attribute="id", required=True, metadata={"description": "Id of the commitment."}
    )
    digest = fields.UUID(
        attribute="digest_id", required=True, metadata={"description": "Id of its digest."}
    )
    title = fields.String(required=True, metadata={"description": "Of its book."})
    text = fields.String(
        required=True, metadata={"description": "Its words on the last day looked at."}
    )
    caution = fields.String(
        required=True, allow_none=True, metadata={"description": "What it carries, or null."}
    )
    made_on = fields.Date(required=True, metadata={"description": "The day it counts from."})
    new = fields.Boolean(
        required=True, metadata={"description": "Whether it came in during the year."}
    )
    counts = fields.Nested(
        TallySchema, required=True, metadata={"description": "The check-ins of the year."}
    )
    deeds = fields.Integer(required=True, metadata={"description": "How many deeds those report."})
    pace = fields.Enum(
        Pace,
        by_value=fields.String,
        attribute="stand.pace",
        required=True,
        metadata={"description": "How it stands on the last day looked at."},
    )
    before = fields.String(
        required=True,
        allow_none=True,
        metadata={"description": "What was recorded of it when the year began, or null."},
    )
    after = fields.String(
        required=True, metadata={"description": "What is on the last day looked at."}
    )
    changes = fields.List(
        fields.Nested(YearlyChangeSchema),
        required=True,
        metadata={"description": "What was decided in the year, in order."},
    )
    renewing = fields.Nested(
        RenewingSchema,
        required=True,
        allow_none=True,
        metadata={"description": "Where it is over, stalled or never judged; else null."},
    )


class BookYearSchema(Shape):
    """What was promised to one book."""

    digest = fields.UUID(
        attribute="digest_id", required=True, metadata={"description": "Id of the digest."}
    )
    title = fields.String(required=True, metadata={"description": "Of the book."})
    author = fields.String(
        required=True, allow_none=True, metadata={"description": "Of the book, or null."}
    )
    promises = fields.List(
        fields.Nested(PromiseSchema), required=True, metadata={"description": "In order."}
    )


class PairSchema(Shape):
    """Two commitments of different books that meet."""

    likeness = fields.Enum(
        Likeness, by_value=fields.String, required=True, metadata={"description": "How they meet."}
    )
    rule = fields.String(required=True, metadata={"description": "The same in a sentence."})
    one = fields.UUID(
        attribute="one.id", required=True, metadata={"description": "Id of the one commitment."}
    )
    other = fields.UUID(
        attribute="other.id", required=True, metadata={"description": "Id of the other."}
    )


class ReviewSchema(Shape):
    """A year of the reader's commitments."""

    year = fields.Integer(required=True, metadata={"description": "Which."})
    last = fields.Date(
        required=True,
        metadata={"description": "The last day looked at: its last, or today while it runs."},
    )
    counts = fields.Nested(
        TallySchema, required=True, metadata={"description": "All check-ins of the year."}
    )
    books = fields.List(
        fields.Nested(BookYearSchema),
        required=True,
        metadata={"description": "By the day the first commitment of each was made."},
    )
    pairs = fields.List(
        fields.Nested(PairSchema),
        required=True,
        metadata={"description": "Commitments of different books that collide or repeat."},
    )
    minutes = fields.Integer(
        required=True,
        metadata={"description": "What the live ones that say how long ask of a day together."},
    )
