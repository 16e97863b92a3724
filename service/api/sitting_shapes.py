"""The shapes of today's sitting."""

from marshmallow import fields, validate

from service.api.fields import QueryWhole, Request, Shape, Whole
from service.api.item_shapes import ItemSchema
from service.use_cases.records import FEWEST_MINUTES, MOST_MINUTES

_RANGE = validate.Range(FEWEST_MINUTES, MOST_MINUTES)


class AwaySchema(Shape):
    """A reader who comes back after weeks."""

    since = fields.Date(required=True, metadata={"description": "The day of their last answer."})
    level_on = fields.Date(
        required=True,
        allow_none=True,
        metadata={
            "description": "The day on which, at these minutes a day, nothing due is left over; "
            "null when that is more than a year away."
        },
    )


class SittingSchema(Shape):
    """What is asked today."""

    day = fields.Date(required=True, metadata={"description": "The reader's day."})
    items = fields.List(
        fields.Nested(ItemSchema),
        required=True,
        metadata={
            "description": "In the order they are asked: what keeps most memory for the time it "
            "takes, books in turn, and nothing that gives away what is still to be asked."
        },
    )
    minutes = fields.Integer(
        required=True, metadata={"description": "What the day's sitting takes at the most."}
    )
    seconds = fields.Integer(
        required=True,
        metadata={"description": "What its items are expected to take, at the reader's own pace."},
    )
    spent = fields.Integer(
        required=True, metadata={"description": "Seconds answered for today already."}
    )
    next_on = fields.Date(
        required=True,
        allow_none=True,
        metadata={"description": "The next day something is asked after today, or null."},
    )
    left_out = fields.List(
        fields.UUID(),
        required=True,
        metadata={"description": "Ids of the items left out for today, the latest last."},
    )
    away = fields.Nested(
        AwaySchema,
        required=True,
        allow_none=True,
        metadata={
            "description": "When the reader comes back after three weeks and more waits than "
            "fits; else null."
        },
    )


class SittingQuerySchema(Request):
    """For how long a sitting is composed."""

    minutes = QueryWhole(
        load_default=None,
        validate=_RANGE,
        metadata={
            "description": "Minutes of the whole day's sitting; what the reader set unless given."
        },
    )


class MinutesSchema(Request):
    """How long today's sitting is to take."""

    minutes = Whole(
        required=True,
        validate=_RANGE,
        metadata={"description": "Minutes; other days keep theirs."},
    )
