"""The shape of a measure as it is sent, beside the one it is given in."""

from typing import Any

from marshmallow import fields, validate

from cards.commitments import Measure, Period
from cards.commitments.measures_held import (
    BYDAY,
    MOST_EVERY,
    MOST_MINUTES,
    MOST_PERIODS,
    MOST_TIMES,
)
from service.api.fields import Day, Request, Text, Whole

_MOST_NAMED = 77
"""Days that can be named at the most: each of the week, and each of a month by its number."""


class GivenMeasureSchema(Request):
    """What a commitment is to ask; what contradicts itself is refused."""

    times = Whole(
        load_default=1,
        validate=validate.Range(1, MOST_TIMES),
        metadata={"description": "Deeds in one period; all of them together for `once`."},
    )
    period = fields.Enum(
        Period,
        by_value=fields.String,
        required=True,
        metadata={"description": "The span they are counted in."},
    )
    every = Whole(
        load_default=1,
        validate=validate.Range(1, max(MOST_EVERY.values())),
        metadata={"description": "How many such spans make one period; 1 for `once`."},
    )
    on = fields.List(
        Text(validate=validate.Regexp(BYDAY), metadata={"pattern": BYDAY}),
        load_default=(),
        validate=validate.Length(max=_MOST_NAMED),
        metadata={
            "description": "Weekdays as RFC 5545 writes BYDAY, none twice; with a number before "
            "them only of months and years."
        },
    )
    periods = Whole(
        load_default=None,
        allow_none=True,
        validate=validate.Range(1, MOST_PERIODS),
        metadata={"description": "How many periods; null when open or when a date ends it."},
    )
    deadline = Day(
        load_default=None, allow_none=True, metadata={"description": "The last day that counts."}
    )
    minutes = Whole(
        load_default=None,
        allow_none=True,
        validate=validate.Range(1, MOST_MINUTES),
        metadata={"description": "How long one deed lasts."},
    )


def measure_of(sent: dict[str, Any]) -> Measure:
    """Return the measure `GivenMeasureSchema` loads."""
    return Measure(**{**sent, "on": tuple(sent["on"])})
