"""The shapes in which commitments are given: how they stand, and the facts about them."""

from marshmallow import fields

from cards.commitments import Act, Outcome, Pace, Question, Rule, Stand
from cards.commitments.telling import progress, told
from cards.commitments.windows import Kept, Window
from service.api import meanings
from service.api.check_ins import CheckInSchema
from service.api.fields import Shape
from service.api.wording import MeasureSchema
from service.use_cases.commitments import HeldCommitment


class TallySchema(Shape):
    """The check-ins on a commitment, counted by outcome."""

    kept = fields.Integer(required=True, metadata={"description": "How often it was kept."})
    partly = fields.Integer(
        required=True, metadata={"description": "How often it was kept in part."}
    )
    missed = fields.Integer(required=True, metadata={"description": "How often it was missed."})


class OfferSchema(Shape):
    """What a commitment that does not go by itself is met with."""

    question = fields.Enum(
        Question,
        by_value=fields.String,
        required=True,
        metadata={"description": "What is asked first."},
    )
    acts = fields.List(
        fields.Enum(Act, by_value=fields.String),
        required=True,
        metadata={"description": "The decisions offered, the gentlest first; may be empty."},
    )
    halved = fields.Nested(
        MeasureSchema,
        required=True,
        allow_none=True,
        metadata={"description": "The measure half of what it asks, where that is offered."},
    )


class StandSchema(Shape):
    """How a commitment stands on the day asked about, as known on it."""

    pace = fields.Enum(
        Pace, by_value=fields.String, required=True, metadata={"description": "How it stands."}
    )
    rule = fields.Enum(
        Rule,
        by_value=fields.String,
        required=True,
        metadata={"description": "The rule that follows from."},
    )
    said = fields.String(
        required=True, metadata={"description": "The rule and its figures, in a sentence."}
    )
    progress = fields.String(
        required=True,
        allow_none=True,
        metadata={"description": "What is done of what the period that runs asks; or null."},
    )
    ends_on = fields.Date(
        required=True,
        allow_none=True,
        metadata={"description": "Its last day, null while it is open."},
    )
    due = fields.Integer(
        required=True,
        metadata={"description": "Of what is over, or is done once: what was due in all."},
    )
    done = fields.Integer(required=True, metadata={"description": "What was kept of that."})
    settled = fields.Boolean(
        required=True,
        metadata={"description": "Of what is over: whether the reader said what next."},
    )
    offer = fields.Nested(
        OfferSchema,
        required=True,
        allow_none=True,
        metadata={"description": "What it is met with, null where it needs nothing."},
    )


class HeldCommitmentSchema(Shape):
    """A commitment a digest of the library holds, how it stands, and what came of it."""

    id = fields.UUID(required=True, metadata={"description": "Of the commitment."})
    digest = fields.UUID(required=True, metadata={"description": "Id of the digest it is in."})
    title = fields.String(required=True, metadata=meanings.TITLE)
    author = fields.String(required=True, allow_none=True, metadata=meanings.AUTHOR)
    number = fields.Integer(
        required=True, metadata={"description": "Its place among those of its digest, from 1."}
    )
    text = fields.String(required=True, metadata=meanings.WORDS)
    made_on = fields.Date(
        required=True,
        metadata={"description": "The day it was made: when the book was finished, or it came in."},
    )
    caution = fields.String(
        required=True,
        allow_none=True,
        metadata={"description": "To be shown with it when it touches health, money or the law."},
    )
    measure = fields.Nested(
        MeasureSchema,
        required=True,
        allow_none=True,
        metadata={"description": "What it asks; null when it is not measurable."},
    )
    check_ins = fields.Nested(
        TallySchema, required=True, metadata={"description": "What came of it so far, counted."}
    )
    last = fields.Nested(
        CheckInSchema,
        required=True,
        allow_none=True,
        metadata={"description": "The check-in about the latest day; null without any."},
    )
    stand = fields.Nested(
        StandSchema,
        required=True,
        allow_none=True,
        metadata={
            "description": "How it stands on the day; null on one before it came into the library."
        },
    )


class DaysSchema(Shape):
    """Days from a first to a last."""

    first = fields.Date(required=True, metadata={"description": "Its first day."})
    last = fields.Date(
        required=True,
        allow_none=True,
        metadata={"description": "Its last day; null while that is open."},
    )


class PeriodSchema(Shape):
    """One period of a window."""

    first = fields.Date(required=True, metadata={"description": "Its first day."})
    last = fields.Date(required=True, metadata={"description": "Its last day."})
    due = fields.Integer(required=True, metadata={"description": "Deeds due in it."})
    done = fields.Integer(required=True, metadata={"description": "Whole deeds done in it."})


class WindowSchema(Shape):
    """One window it is judged by."""

    first = fields.Date(required=True, metadata={"description": "Its first day."})
    last = fields.Date(required=True, metadata={"description": "Its last day."})
    came_to = fields.Enum(
        Kept,
        by_value=fields.String,
        required=True,
        metadata={"description": "What it comes to; of an open one, so far."},
    )
    paused = fields.Boolean(
        required=True, metadata={"description": "Whether a pause lies in it: it does not count."}
    )
    closed = fields.Boolean(
        required=True, metadata={"description": "Whether it is closed: two days after its last."}
    )
    periods = fields.List(
        fields.Nested(PeriodSchema),
        required=True,
        metadata={"description": "The periods that end in it and count."},
    )


def held_fields(commitment: HeldCommitment) -> dict[str, object]:
    """Return what `HeldCommitmentSchema` dumps."""
    kept, stand, tally = commitment.kept, commitment.stand, commitment.tally
    measure = kept.commitment.measure if stand is None else stand.life.term.measure
    return {
        "id": commitment.id,
        "digest": kept.digest_id,
        "title": kept.title,
        "author": kept.author,
        "number": kept.number,
        "text": kept.text,
        "made_on": kept.commitment.made_on,
        "caution": commitment.caution,
        "measure": measure,
        "check_ins": {outcome.value: tally.counts.get(outcome, 0) for outcome in Outcome},
        "last": tally.last,
        "stand": None if stand is None else _stand(commitment, stand),
    }


def _stand(commitment: HeldCommitment, stand: Stand) -> dict[str, object]:
    return {
        "pace": stand.pace,
        "rule": stand.rule,
        "said": told(stand),
        "progress": progress(stand) or None,
        "ends_on": stand.ends_on,
        "due": stand.due,
        "done": stand.done,
        "settled": stand.settled,
        "offer": commitment.offer,
    }


def window_fields(window: Window) -> dict[str, object]:
    """Return what `WindowSchema` dumps."""
    return {
        "first": window.span.first,
        "last": window.span.last,
        "came_to": window.came_to,
        "paused": window.paused,
        "closed": window.closed,
        "periods": [
            {"first": each.span.first, "last": each.span.last, "due": each.due, "done": each.done}
            for each in window.periods
        ],
    }
