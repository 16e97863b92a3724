"""The shapes of answers."""

from marshmallow import fields, validate

from cards.answers import LONGEST, Grade
from cards.items import Standing
from service.api import meanings
from service.api.comparison_shapes import AttemptSchema, DigestSaysSchema
from service.api.fields import Identity, Instant, Request, Shape, Truth, Whole
from service.use_cases.records import KeptAnswer


class GivenAnswerSchema(Request):
    """An answer as it is sent."""

    id = Identity(required=True, metadata=meanings.OWN_ID)
    item = Identity(required=True, metadata={"description": "Id of the item it answers."})
    grade = fields.Enum(
        Grade,
        by_value=fields.String,
        required=True,
        metadata={"description": "The reader's own grade, which decides."},
    )
    answered_at = Instant(
        load_default=None,
        metadata={"description": "When it happened, with its zone; now unless given."},
    )
    attempt = fields.Nested(
        AttemptSchema,
        load_default=None,
        metadata={"description": "What the reader gave, to be marked and kept with the answer."},
    )
    seconds = Whole(
        allow_none=True,
        load_default=None,
        validate=validate.Range(1, LONGEST),
        metadata={"description": "From the cue to the grade; null where nobody measured it."},
    )
    graded_first = Truth(
        load_default=False,
        metadata={"description": "Whether it was graded before the mark was shown."},
    )


class KeptAnswerSchema(Shape):
    """An answer in the library: a fact."""

    id = fields.UUID(required=True, metadata={"description": "Of the answer."})
    item = fields.UUID(
        required=True,
        metadata={"description": "Id of the item it answers."},
    )
    grade = fields.Enum(
        Grade,
        by_value=fields.String,
        required=True,
        metadata={"description": "The reader's grade."},
    )
    answered_at = fields.DateTime(
        required=True,
        metadata={"description": "When it happened, in UTC."},
    )
    day = fields.Date(
        required=True,
        metadata={"description": "The reader's day it happened on."},
    )
    suggested = fields.Enum(
        Grade,
        by_value=fields.String,
        required=True,
        allow_none=True,
        metadata={"description": "The grade the mark suggested, null without an attempt."},
    )
    predicted = fields.Float(
        required=True,
        allow_none=True,
        metadata={"description": "Recall predicted just before it, null for a first answer."},
    )
    attempt = fields.String(
        required=True,
        metadata={"description": "What the reader gave, as text; may be empty."},
    )
    seconds = fields.Integer(
        required=True,
        allow_none=True,
        metadata={"description": "From the cue to the grade, null where nobody measured it."},
    )
    graded_first = fields.Boolean(
        required=True,
        metadata={"description": "Whether it was graded before the mark was shown."},
    )
    ticked = fields.List(
        fields.Integer(),
        required=True,
        allow_none=True,
        metadata={
            "description": "Numbers of the ideas that came back by the reader's own word; null "
            "where they did not correct what was found."
        },
    )
    taken_back_at = fields.DateTime(
        required=True,
        allow_none=True,
        metadata={"description": "When it was taken back, in UTC, or null."},
    )


class AnswerPageSchema(Shape):
    """One page of the answers to an item."""

    answers = fields.List(
        fields.Nested(KeptAnswerSchema),
        required=True,
        metadata={"description": "The newest first; those taken back too."},
    )
    next = fields.String(
        required=True,
        allow_none=True,
        metadata={"description": "Cursor of the page that follows, null on the last."},
    )


class RecordedAnswerSchema(KeptAnswerSchema):
    """An answer, and what it made of its item."""

    due_on = fields.Date(
        required=True,
        allow_none=True,
        metadata={"description": "The reader's day its item is due next; null when unasked again."},
    )
    standing = fields.Enum(
        Standing,
        by_value=fields.String,
        required=True,
        metadata={"description": "How its item stands with the reader's memory now."},
    )
    stability = fields.Float(
        required=True,
        allow_none=True,
        metadata={"description": "Days until recall of its item falls to 0.9; null when unasked."},
    )


class ShownAnswerSchema(RecordedAnswerSchema):
    """An answer beside what the digest says."""

    says = fields.Nested(
        DigestSaysSchema,
        required=True,
        allow_none=True,
        metadata={"description": "What the digest says; null when the item's source is gone."},
    )


class TakenBackSchema(Request):
    """The fact that an answer is taken back."""

    id = Identity(
        load_default=None,
        metadata={"description": f"{meanings.OWN_ID['description']} May be left out."},
    )


def kept_answer(kept: KeptAnswer) -> dict[str, object]:
    """Return what `KeptAnswerSchema` dumps."""
    answer = kept.answer
    return {
        "id": answer.id,
        "item": answer.item_id,
        "grade": answer.grade,
        "answered_at": answer.answered_at,
        "day": answer.day,
        "suggested": answer.suggested,
        "predicted": answer.predicted,
        "attempt": answer.attempt,
        "seconds": answer.seconds,
        "graded_first": answer.graded_first,
        "ticked": None if answer.ticked is None else sorted(answer.ticked),
        "taken_back_at": kept.taken_back_at,
    }
