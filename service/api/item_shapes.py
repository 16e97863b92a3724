"""The shapes of items and of the sitting."""

from marshmallow import fields

from cards.items import Standing
from cards.kinds.base import Asked, KindName
from service.api.cursors import IdCursor, InstantCursor, limit
from service.api.fields import Identity, Request, Shape
from service.use_cases.items import ItemView


class LandmarkSchema(Shape):
    """Something a gap of the plot lies before or after, or that is to be put in order."""

    number = fields.Integer(
        required=True,
        metadata={
            "description": "From 1, in the book's order; where the order is asked, as shown."
        },
    )
    text = fields.String(required=True, metadata={"description": "What it says."})
    page = fields.Integer(
        required=True,
        allow_none=True,
        metadata={"description": "Where it stands, null when nothing says so."},
    )


class ShelvedSchema(Shape):
    """A book of the reader's to choose."""

    id = fields.UUID(required=True, metadata={"description": "Id of its digest."})
    title = fields.String(required=True, metadata={"description": "Its title."})
    author = fields.String(
        required=True, allow_none=True, metadata={"description": "Its author, or null."}
    )


class CueSchema(Shape):
    """What an item shows first. It never contains its answer."""

    heading = fields.String(
        required=True, metadata={"description": "What is to be done, in a few words."}
    )
    words = fields.String(
        required=True, metadata={"description": "A title, a quotation, a situation."}
    )
    question = fields.String(required=True, metadata={"description": "What is asked."})
    asked = fields.List(
        fields.Enum(Asked, by_value=fields.String),
        required=True,
        metadata={"description": "The ways an attempt can be given, the usual one first."},
    )
    landmarks = fields.List(
        fields.Nested(LandmarkSchema),
        required=True,
        metadata={
            "description": "What the gaps lie between: gap 0 before all, gap n after the n-th."
        },
    )
    pages = fields.Integer(
        required=True,
        allow_none=True,
        metadata={"description": "How many pages the book has, when a page is asked; or null."},
    )
    pieces = fields.List(
        fields.String(),
        required=True,
        metadata={"description": "For blanks: the words around them, one piece more than blanks."},
    )
    choices = fields.List(
        fields.Nested(ShelvedSchema),
        required=True,
        metadata={"description": "For a book: those to choose among."},
    )
    caution = fields.String(
        required=True,
        allow_none=True,
        metadata={"description": "To be shown with it when it touches health, money or the law."},
    )


class BookWords(fields.String):
    """Words that name the book of an item, held back while the book is what is asked."""

    def _serialize(
        self, value: object, attr: str | None, obj: ItemView, **kwargs: object
    ) -> str | None:
        return None if obj.asks_its_book else super()._serialize(value, attr, obj, **kwargs)


class ItemSchema(Shape):
    """An item as it is shown: its cue, never its answer."""

    id = fields.UUID(
        attribute="kept.item.id", required=True, metadata={"description": "Of the item."}
    )
    kind = fields.Enum(
        KindName,
        by_value=fields.String,
        attribute="kept.item.kind",
        required=True,
        metadata={"description": "What sort of item it is."},
    )
    digest = fields.UUID(
        attribute="kept.item.digest_id",
        required=True,
        metadata={"description": "Id of the digest it was made from."},
    )
    title = BookWords(
        required=True,
        allow_none=True,
        metadata={"description": "Of its book; null where the book is what is asked."},
    )
    author = BookWords(
        required=True,
        allow_none=True,
        metadata={"description": "Of its book; null where there is none, or the book is asked."},
    )
    cue = fields.Nested(
        CueSchema,
        required=True,
        allow_none=True,
        metadata={"description": "What it shows first; null for a retired item."},
    )
    standing = fields.Enum(
        Standing,
        by_value=fields.String,
        attribute="kept.standing",
        required=True,
        metadata={"description": "How it stands with the reader's memory."},
    )
    due_on = fields.Date(
        required=True,
        allow_none=True,
        metadata={"description": "The reader's day it is due; null while unasked and not let in."},
    )
    recall = fields.Float(
        required=True,
        allow_none=True,
        metadata={"description": "Probability that it would come back today; null while unasked."},
    )
    retired = fields.Boolean(
        attribute="kept.item.retired",
        required=True,
        metadata={"description": "Whether its source is gone; its answers are kept."},
    )


class ItemPageSchema(Shape):
    """One page of items."""

    items = fields.List(
        fields.Nested(ItemSchema), required=True, metadata={"description": "In order of their ids."}
    )
    next = fields.String(
        required=True,
        allow_none=True,
        metadata={"description": "Cursor of the page that follows, null on the last."},
    )


class ItemQuerySchema(Request):
    """Which items are listed."""

    cursor = IdCursor()
    limit = limit()
    kind = fields.Enum(
        KindName,
        by_value=fields.String,
        load_default=None,
        metadata={"description": "Only items of this kind."},
    )
    digest = Identity(
        load_default=None, metadata={"description": "Only items of the digest with this id."}
    )


class AnswerQuerySchema(Request):
    """Which answers are listed."""

    cursor = InstantCursor()
    limit = limit()
