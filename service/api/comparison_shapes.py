"""The shapes of an attempt and of what becomes of it beside the digest."""

from collections.abc import Mapping
from typing import Any, ClassVar

from marshmallow import ValidationError, fields, validate, validates_schema

from cards.answers import MAX_ATTEMPT, Grade
from cards.digest import MAX_PARTS
from cards.kinds.base import Attempt
from service.api.fields import Identity, Request, Shape, Text, Truth, Whole

_HIGHEST_NUMBER = 99_999
_WAYS = ("words", "gap", "page", "chapter", "order", "blanks", "book")
_MOST_IDEAS = 1_000
_MOST_BLANKS = 500


class AttemptSchema(Request):
    """What the reader gave, in exactly one way; words may be empty when nothing came back."""

    rules: ClassVar[dict[str, Any]] = {"oneOf": [{"required": [way]} for way in _WAYS]}

    words = Text(validate=validate.Length(max=MAX_ATTEMPT), metadata={"description": "As written."})
    gap = Whole(
        validate=validate.Range(0, MAX_PARTS),
        metadata={"description": "Number of the landmark it stands after, 0 for before all."},
    )
    page = Whole(
        validate=validate.Range(0, _HIGHEST_NUMBER), metadata={"description": "A page number."}
    )
    chapter = Whole(
        validate=validate.Range(0, _HIGHEST_NUMBER), metadata={"description": "A chapter's number."}
    )
    order = fields.List(
        Whole(validate=validate.Range(1, MAX_PARTS)),
        validate=validate.Length(max=MAX_PARTS),
        metadata={
            "description": "Numbers of the landmarks as shown, in the order the reader gave; what "
            "they did not remember is left out.",
            "uniqueItems": True,
        },
    )
    blanks = fields.List(
        Text(validate=validate.Length(max=MAX_ATTEMPT)),
        validate=validate.Length(max=_MOST_BLANKS),
        metadata={"description": "The words given for the blanks, empty where none was."},
    )
    book = Identity(metadata={"description": "Id of the digest of the book that was chosen."})
    ticked = fields.List(
        Whole(validate=validate.Range(1, _MOST_IDEAS)),
        allow_none=True,
        load_default=None,
        validate=validate.Length(max=_MOST_IDEAS),
        metadata={
            "description": "Numbers, from 1, of the ideas the reader says came back, in place of "
            "those found; null where they did not correct them.",
            "uniqueItems": True,
        },
    )
    landmarks_seen = Truth(
        load_default=True,
        metadata={"description": "Whether the landmarks were in sight while it was given."},
    )

    @validates_schema
    def given_in_one_way(self, data: Mapping[str, Any], **_: object) -> None:
        """Refuse an attempt that names no way, or several."""
        if sum(way in data for way in _WAYS) != 1:
            raise ValidationError(f"Give exactly one of {', '.join(_WAYS[:-1])} and {_WAYS[-1]}.")
        for name in ("order", "ticked"):
            numbers = data.get(name) or ()
            if len(set(numbers)) != len(numbers):
                raise ValidationError("Each number can stand here once.", name)


class ComparisonSchema(Request):
    """An attempt to be compared with the digest."""

    attempt = fields.Nested(
        AttemptSchema, required=True, metadata={"description": "What the reader gave."}
    )


class SpanSchema(Shape):
    """A stretch of a text, in characters."""

    start = fields.Integer(required=True, metadata={"description": "Where it begins, from 0."})
    end = fields.Integer(required=True, metadata={"description": "Where it has ended."})
    hit = fields.Boolean(
        required=True, metadata={"description": "Whether the other text holds it too."}
    )


class IdeaSchema(Shape):
    """One idea of the digest's words, held against the attempt."""

    start = fields.Integer(required=True, metadata={"description": "Where it begins, from 0."})
    end = fields.Integer(required=True, metadata={"description": "Where it has ended."})
    weight = fields.Integer(
        required=True, metadata={"description": "How much it counts; a main idea counts double."}
    )
    found = fields.Boolean(required=True, metadata={"description": "Whether it came back."})
    turned = fields.Boolean(
        required=True,
        metadata={"description": "Whether the attempt seems to say the opposite of it."},
    )


class MarkSchema(Shape):
    """The suggested grade with its reason. The reader's grade decides."""

    grade = fields.Enum(
        Grade, by_value=fields.String, required=True, metadata={"description": "The suggestion."}
    )
    reason = fields.String(required=True, metadata={"description": "Why, in a sentence."})
    answer_spans = fields.List(
        fields.Nested(SpanSchema),
        required=True,
        metadata={"description": "Stretches of the digest's words."},
    )
    attempt_spans = fields.List(
        fields.Nested(SpanSchema),
        required=True,
        metadata={"description": "Stretches of the attempt."},
    )
    ideas = fields.List(
        fields.Nested(IdeaSchema),
        required=True,
        metadata={
            "description": "The ideas of the digest's words, in order; empty where it is not "
            "ideas that are compared."
        },
    )


class DigestSaysSchema(Shape):
    """The answer of an item: what the digest says."""

    words = fields.String(
        required=True, metadata={"description": "The digest's words, or the place in words."}
    )
    gap = fields.Integer(
        required=True, allow_none=True, metadata={"description": "The right gap, or null."}
    )
    page = fields.Integer(
        required=True, allow_none=True, metadata={"description": "The right page, or null."}
    )
    chapter = fields.Integer(
        required=True, allow_none=True, metadata={"description": "The right chapter, or null."}
    )
    order = fields.List(
        fields.Integer(),
        required=True,
        metadata={"description": "For an order: the landmarks as shown, in the book's order."},
    )
    blanks = fields.List(
        fields.String(), required=True, metadata={"description": "For blanks: the words left out."}
    )
    book = fields.UUID(
        required=True,
        allow_none=True,
        metadata={"description": "For a book: the id of the right one; else null."},
    )
    locator = fields.String(
        required=True, allow_none=True, metadata={"description": "As the reader wrote it, or null."}
    )
    caution = fields.String(
        required=True,
        allow_none=True,
        metadata={"description": "To be shown with it when it touches health, money or the law."},
    )


class DueSchema(Shape):
    """For each grade, the day the item would be due next if it were graded so now."""

    blank = fields.Date(required=True, metadata={"description": "Nothing came back."})
    hazy = fields.Date(required=True, metadata={"description": "Some of it came back."})
    clear = fields.Date(required=True, metadata={"description": "It came back."})
    vivid = fields.Date(required=True, metadata={"description": "All of it came back."})


class ComparedSchema(Shape):
    """An attempt beside what the digest says."""

    mark = fields.Nested(
        MarkSchema, required=True, metadata={"description": "The suggested grade."}
    )
    answer = fields.Nested(
        DigestSaysSchema,
        attribute="answered",
        required=True,
        metadata={"description": "What the digest says."},
    )
    graded_first = fields.Boolean(
        required=True,
        metadata={
            "description": "Whether the reader is to grade before they are shown the mark: one "
            "answer in ten, so that how far both agree is measured without its pull."
        },
    )
    due = fields.Nested(
        DueSchema, required=True, metadata={"description": "The next due day by grade."}
    )


def attempt_of(sent: Mapping[str, Any]) -> Attempt:
    """Return the attempt that `AttemptSchema` loaded."""
    lists = {name: tuple(sent[name]) for name in ("order", "blanks") if name in sent}
    ticked = None if sent["ticked"] is None else frozenset(sent["ticked"])
    return Attempt(**{**sent, **lists, "ticked": ticked})
