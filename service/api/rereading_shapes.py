"""The shapes of the re-reading list and of a re-reading."""

from marshmallow import fields, validate

from cards.rereading import MAX_NOTE, MAX_PAGES, MOST_MINUTES, Reason
from service.api import meanings
from service.api.fields import Day, Identity, Request, Shape, Text, Whole

_PAGES = {"description": "Which pages, in the reader's words, as in `10-24, 30`; may be empty."}
_NOTE = {"description": "The reader's words about it; may be empty."}
_DIGEST = {"description": "Id of the book's digest."}


class ReasonSchema(Shape):
    """Why a book is on the list."""

    reason = fields.Enum(
        Reason, by_value=fields.String, required=True, metadata={"description": "Which it is."}
    )
    sentence = fields.String(
        required=True, metadata={"description": "The rule and its figures, said to the reader."}
    )
    caution = fields.String(
        required=True,
        allow_none=True,
        metadata={"description": "To be shown with it when it touches health, money or the law."},
    )
    parts = fields.List(
        fields.UUID(),
        required=True,
        metadata={"description": "Ids of the parts of the digest it is about; may be empty."},
    )


class StandingPartSchema(Shape):
    """A point or a quotation that stands in a stretch."""

    id = fields.UUID(required=True, metadata={"description": "Of the part."})
    text = fields.String(required=True, metadata=meanings.WORDS)
    locator = fields.String(
        required=True, allow_none=True, metadata={"description": "As the reader wrote it."}
    )


class StretchSchema(Shape):
    """Something to read again in a book."""

    place = fields.String(
        required=True,
        metadata={
            "description": "What to look for: pages, a locator, or the words where it stands."
        },
    )
    first = fields.Integer(
        required=True, allow_none=True, metadata={"description": "Page; null where none is known."}
    )
    last = fields.Integer(
        required=True, allow_none=True, metadata={"description": "Page; null where none is known."}
    )
    points = fields.List(
        fields.Nested(StandingPartSchema),
        required=True,
        metadata={"description": "The points that stand there."},
    )
    quotations = fields.List(
        fields.Nested(StandingPartSchema),
        required=True,
        metadata={"description": "The quotations that stand there."},
    )


class BookToRereadSchema(Shape):
    """A book to open again."""

    digest = fields.UUID(attribute="digest_id", required=True, metadata=_DIGEST)
    title = fields.String(required=True, metadata=meanings.TITLE)
    author = fields.String(required=True, allow_none=True, metadata=meanings.AUTHOR)
    reasons = fields.List(
        fields.Nested(ReasonSchema),
        required=True,
        metadata={"description": "What weighs most first; never empty."},
    )
    stretches = fields.List(
        fields.Nested(StretchSchema),
        required=True,
        metadata={"description": "By page in the book's order, then what has no known page."},
    )
    minutes = fields.Integer(
        required=True,
        allow_none=True,
        metadata={
            "description": "What the known pages take at the reader's own pace; null without any."
        },
    )


class RereadingListSchema(Shape):
    """The books to open again."""

    day = fields.Date(required=True, metadata={"description": "The reader's day it is now."})
    books = fields.List(
        fields.Nested(BookToRereadSchema),
        required=True,
        metadata={"description": "Most worth it first, twelve at the most."},
    )
    more = fields.Integer(
        required=True, metadata={"description": "How many books more have a reason."}
    )


class ReadAgainSchema(Request):
    """A re-reading as it is sent."""

    id = Identity(required=True, metadata=meanings.OWN_ID)
    digest = Identity(required=True, metadata=_DIGEST)
    day = Day(
        load_default=None,
        metadata={"description": "The reader's day it took place on; today unless given."},
    )
    pages = Text(load_default="", validate=validate.Length(max=MAX_PAGES), metadata=_PAGES)
    minutes = Whole(
        load_default=None,
        allow_none=True,
        validate=validate.Range(1, MOST_MINUTES),
        metadata={"description": "How long it took, or null."},
    )
    note = Text(load_default="", validate=validate.Length(max=MAX_NOTE), metadata=_NOTE)


class ShareSchema(Shape):
    """How many of the items asked came back; back is any grade but `blank`."""

    recalled = fields.Integer(required=True, metadata={"description": "How many came back."})
    asked = fields.Integer(required=True, metadata={"description": "Of how many."})


class HelpedSchema(Shape):
    """What a re-reading came to: only items asked before and after it are counted."""

    before = fields.Nested(
        ShareSchema, required=True, metadata={"description": "By the last answers before it."}
    )
    after = fields.Nested(
        ShareSchema, required=True, metadata={"description": "By the first answers after it."}
    )
    waiting = fields.Integer(
        required=True, metadata={"description": "Items not asked since it yet."}
    )
    sentence = fields.String(required=True, metadata={"description": "That, said to the reader."})


class RereadingSchema(Shape):
    """A re-reading in the library: a fact, and what it came to."""

    id = fields.UUID(
        attribute="rereading.id", required=True, metadata={"description": "Of the re-reading."}
    )
    digest = fields.UUID(attribute="rereading.digest_id", required=True, metadata=_DIGEST)
    title = fields.String(required=True, metadata=meanings.TITLE)
    author = fields.String(required=True, allow_none=True, metadata=meanings.AUTHOR)
    day = fields.Date(
        attribute="rereading.day",
        required=True,
        metadata={"description": "The reader's day it took place on."},
    )
    reported_at = fields.DateTime(
        attribute="rereading.reported_at",
        required=True,
        metadata={"description": "When it was recorded, in UTC."},
    )
    pages = fields.String(attribute="rereading.pages", required=True, metadata=_PAGES)
    minutes = fields.Integer(
        attribute="rereading.minutes",
        required=True,
        allow_none=True,
        metadata={"description": "How long it took, or null."},
    )
    note = fields.String(attribute="rereading.note", required=True, metadata=_NOTE)
    items = fields.List(
        fields.UUID(),
        attribute="rereading.items",
        required=True,
        metadata={"description": "Ids of the items it was for, asked afresh within three days."},
    )
    withdrawn_on = fields.Date(
        attribute="rereading.withdrawn_on",
        required=True,
        allow_none=True,
        metadata={"description": "The reader's day it was taken back on, or null."},
    )
    helped = fields.Nested(
        HelpedSchema, required=True, metadata={"description": "What it came to so far."}
    )


class RereadingsSchema(Shape):
    """The latest re-readings."""

    rereadings = fields.List(
        fields.Nested(RereadingSchema),
        required=True,
        metadata={"description": "The latest first, twelve at the most."},
    )
