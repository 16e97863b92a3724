"""The shapes of what came back and of what is known."""

from marshmallow import fields

from cards.kinds.base import KindName
from cards.retention.shares import Verdict
from service.api.fields import Shape


def said(meaning: str) -> dict[str, str]:
    """Return what describes a field."""
    return {"description": meaning}


def of_kind(meaning: str = "The kind of item.") -> fields.Enum[KindName]:
    """Return the field of a kind of item."""
    return fields.Enum(
        KindName, by_value=fields.String, required=True, metadata={"description": meaning}
    )


class CameBackSchema(Shape):
    """What came back of what was asked."""

    asked = fields.Integer(required=True, metadata=said("Answers that count."))
    came_back = fields.Integer(
        required=True, metadata=said("How many of them were graded anything but `blank`.")
    )
    share = fields.Float(
        required=True, allow_none=True, metadata=said("Of 1; null where nothing was asked.")
    )
    low = fields.Float(required=True, metadata=said("Lower 95% bound, of 1 (Wilson 1927)."))
    high = fields.Float(required=True, metadata=said("Upper 95% bound, of 1."))
    verdict = fields.Enum(
        Verdict,
        by_value=fields.String,
        required=True,
        metadata=said(
            "What may be claimed against the target: `on target` only where the bounds hold it "
            "and 50 or more were asked."
        ),
    )


class BookShareSchema(Shape):
    """What came back of one book."""

    digest = fields.UUID(required=True, metadata=said("Id of the digest."))
    title = fields.String(required=True, metadata=said("Of the book."))
    author = fields.String(required=True, allow_none=True, metadata=said("Of the book, or null."))
    share = fields.Nested(CameBackSchema, required=True, metadata=said("What came back."))


class KindShareSchema(Shape):
    """What came back of one kind of item."""

    kind = of_kind()
    share = fields.Nested(CameBackSchema, required=True, metadata=said("What came back."))


class AgeShareSchema(Shape):
    """What came back at one age of the memory."""

    first = fields.Integer(
        required=True, metadata=said("Days since the item's answer before, from.")
    )
    last = fields.Integer(
        required=True, allow_none=True, metadata=said("To; null for any longer time.")
    )
    share = fields.Nested(CameBackSchema, required=True, metadata=said("What came back."))
    predicted = fields.Float(
        required=True,
        allow_none=True,
        metadata=said("Mean recall foretold before the answers, of 1; null where none was."),
    )


class MonthShareSchema(Shape):
    """What came back in one month."""

    month = fields.String(required=True, metadata=said("As in `2026-03`."))
    share = fields.Nested(CameBackSchema, required=True, metadata=said("What came back."))


class KnownBookSchema(Shape):
    """How much of a book is known, in items expected to come back if asked."""

    digest = fields.UUID(required=True, metadata=said("Id of the digest."))
    title = fields.String(required=True, metadata=said("Of the book."))
    items = fields.Integer(required=True, metadata=said("How many the book has."))
    asked = fields.Integer(required=True, metadata=said("How many were asked before."))
    now = fields.Float(required=True, metadata=said("Known today, in items."))
    left_alone = fields.Float(
        required=True, metadata=said("Known in a year without any sitting, in items.")
    )
    kept_up = fields.Float(
        required=True, metadata=said("Known in a year with a sitting every day, in items.")
    )


class KnownSchema(Shape):
    """How much is known; an item never asked counts as not known."""

    asked = fields.Integer(required=True, metadata=said("Items asked at least once."))
    unasked = fields.Integer(required=True, metadata=said("Items never asked."))
    expected = fields.Float(
        required=True, metadata=said("How many of those asked would come back today.")
    )
    spread = fields.Float(
        required=True, metadata=said("Standard deviation of that number, in items.")
    )
    books = fields.List(
        fields.Nested(KnownBookSchema), required=True, metadata=said("Book by book.")
    )


class ComingDaySchema(Shape):
    """What one coming day is expected to ask."""

    day = fields.Date(required=True, metadata=said("The reader's day."))
    due = fields.Float(required=True, metadata=said("Minutes for what is due."))
    unasked = fields.Float(
        required=True, metadata=said("Minutes for what is asked for the first time.")
    )
    left_over = fields.Float(
        required=True,
        metadata=said("Minutes for what is due, does not fit and waits for the next day."),
    )


class MonthKeptSchema(Shape):
    """What the windows of all commitments that ended in a month came to."""

    month = fields.String(required=True, metadata=said("As in `2026-03`."))
    kept = fields.Integer(required=True, metadata=said("Windows kept whole."))
    partly = fields.Integer(required=True, metadata=said("Windows kept in part."))
    missed = fields.Integer(
        required=True, metadata=said("Windows in which nothing was done, and that was said.")
    )
    silent = fields.Integer(required=True, metadata=said("Windows about which nothing was said."))


class SurvivalStepSchema(Shape):
    """A day on which items first came back blank."""

    day = fields.Integer(required=True, metadata=said("Days from the item's first answer."))
    at_risk = fields.Integer(
        required=True, metadata=said("Items never blank before, answered then or later.")
    )
    blanks = fields.Integer(required=True, metadata=said("How many came back blank."))
    lasting = fields.Float(
        required=True, metadata=said("Share that lasts beyond the day, of 1 (Kaplan, Meier 1958).")
    )
    low = fields.Float(required=True, metadata=said("Its lower 95% bound."))
    high = fields.Float(required=True, metadata=said("Its upper 95% bound."))


class SurvivalSchema(Shape):
    """The time to the first blank of one kind of item."""

    kind = of_kind()
    items = fields.Integer(required=True, metadata=said("Answered at least once."))
    blanks = fields.Integer(required=True, metadata=said("Came back blank at least once."))
    median = fields.Integer(
        required=True,
        allow_none=True,
        metadata=said("First day beyond which at most half last; null while more do."),
    )
    until = fields.Integer(
        required=True, metadata=said("Longest that any item was followed, in days.")
    )
    steps = fields.List(fields.Nested(SurvivalStepSchema), required=True, metadata=said("By day."))
