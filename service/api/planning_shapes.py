"""The shapes of a plan, and of whose weights are in force."""

from marshmallow import fields

from cards.kinds.base import KindName
from cards.parts import Care
from service.api.fields import Shape
from service.api.retention_shapes import said

_YEARS = "for the first, the fifth and the tenth year"


class TargetPlanSchema(Shape):
    """What one target takes and keeps, if everything is asked on the day it is due."""

    target = fields.Float(required=True, metadata=said("Retention aimed for, of 1."))
    minutes = fields.List(fields.Float(), required=True, metadata=said(f"Minutes a day, {_YEARS}."))
    mean_minutes = fields.Float(
        required=True, metadata=said("Minutes a day, the mean of ten years.")
    )
    known = fields.List(
        fields.Float(),
        required=True,
        metadata=said(f"Items that would come back if asked, {_YEARS}, in its last quarter."),
    )
    until_lasting = fields.Float(
        required=True,
        allow_none=True,
        metadata=said("Minutes an item that does not last yet takes until it does, or null."),
    )


class ProposalSchema(Shape):
    """The target under which items take the fewest minutes until they last."""

    target = fields.Float(required=True, metadata=said("The best of those planned, of 1."))
    alike_from = fields.Float(required=True, metadata=said("Lowest target that takes hardly more."))
    alike_to = fields.Float(required=True, metadata=said("Highest target that takes hardly more."))
    at_edge = fields.Boolean(
        required=True, metadata=said("Whether it is the lowest or the highest there is.")
    )


class CarePlanSchema(Shape):
    """What the targets take and keep for some books."""

    care = fields.Enum(
        Care,
        by_value=fields.String,
        required=True,
        allow_none=True,
        metadata=said("How much of the books is kept; null for the whole library."),
    )
    items = fields.Integer(required=True, metadata=said("How many they have."))
    now = fields.Float(required=True, metadata=said("Known today, in items."))
    left_alone = fields.List(
        fields.Float(),
        required=True,
        metadata=said(f"Known without any sitting, in items, {_YEARS}."),
    )
    targets = fields.List(
        fields.Nested(TargetPlanSchema), required=True, metadata=said("From lowest to highest.")
    )
    proposal = fields.Nested(
        ProposalSchema,
        required=True,
        allow_none=True,
        metadata=said("Null where a target makes no difference."),
    )


class PlanSchema(Shape):
    """What each target takes and keeps in the coming ten years."""

    day = fields.Date(required=True, metadata=said("The reader's day it is reckoned from."))
    target = fields.Float(required=True, metadata=said("The one aimed for now, of 1."))
    whole = fields.Nested(CarePlanSchema, required=True, metadata=said("All books together."))
    by_care = fields.List(
        fields.Nested(CarePlanSchema),
        required=True,
        metadata=said("The books of each care there are any of."),
    )
    within = fields.Float(
        required=True,
        allow_none=True,
        metadata=said(
            "Highest target of which the first year fits into the reader's minutes, or null."
        ),
    )
    proposed = fields.String(
        required=True, metadata=said("What is proposed for the whole library, in words.")
    )


class KindWeightsSchema(Shape):
    """Weights for one kind of item."""

    kind = fields.Enum(
        KindName, by_value=fields.String, required=True, metadata=said("The kind of item.")
    )
    weights = fields.List(fields.Float(), required=True, metadata=said("The 21 weights of FSRS-6."))


class WeightingSchema(Shape):
    """Which weights foresee which kind of item."""

    general = fields.List(
        fields.Float(),
        required=True,
        metadata=said("The 21 weights of FSRS-6, for every kind without its own."),
    )
    by_kind = fields.List(
        fields.Nested(KindWeightsSchema), required=True, metadata=said("Those with their own.")
    )


class VerdictSchema(Shape):
    """Whether weights fitted to earlier answers foresaw later ones better than those in force."""

    kind = fields.Enum(
        KindName,
        by_value=fields.String,
        required=True,
        allow_none=True,
        metadata=said("Whose answers were judged; null for all together."),
    )
    answers = fields.Integer(required=True, metadata=said("All that tell of forgetting."))
    held_out = fields.Integer(
        required=True, metadata=said("The later ones of them, which the fit did not see.")
    )
    in_force = fields.Float(
        attribute="comparison.in_force",
        required=True,
        allow_none=True,
        dump_default=None,
        metadata=said("Log loss of the weights in force over them; null of too few."),
    )
    proposed = fields.Float(
        attribute="comparison.proposed",
        required=True,
        allow_none=True,
        dump_default=None,
        metadata=said("Log loss of the fitted ones; null of too few."),
    )
    error = fields.Float(
        attribute="comparison.error",
        required=True,
        allow_none=True,
        dump_default=None,
        metadata=said("Standard error of the difference; null of too few."),
    )
    adopted = fields.Boolean(
        required=True, metadata=said("Whether the fitted ones were put in force.")
    )
    sentence = fields.String(required=True, metadata=said("All of it in a sentence."))


class FormerSchema(Shape):
    """Weights that were in force before."""

    since = fields.Date(
        required=True,
        allow_none=True,
        metadata=said("The reader's day they were put in force; null of the published ones."),
    )
    until = fields.Date(required=True, metadata=said("The day others took their place."))
    weighting = fields.Nested(
        WeightingSchema, required=True, metadata=said("The weights themselves.")
    )


class WeightsSchema(Shape):
    """Whose weights foresee what is recalled."""

    own = fields.Boolean(
        required=True, metadata=said("Whether they are the reader's own, not the published ones.")
    )
    since = fields.Date(
        required=True,
        allow_none=True,
        metadata=said("The reader's day they were put in force; null of the published ones."),
    )
    in_force = fields.Nested(WeightingSchema, required=True, metadata=said("The weights."))
    told = fields.String(required=True, metadata=said("The same in words."))
    considered_on = fields.Date(
        required=True,
        allow_none=True,
        metadata=said("The day the reader's own were last considered, or null."),
    )
    verdicts = fields.List(
        fields.Nested(VerdictSchema),
        required=True,
        metadata=said("What that came to: of all answers, then kind by kind."),
    )
    waiting = fields.Integer(
        required=True, metadata=said("Due days that wait to be moved to what is in force.")
    )
    former = fields.List(
        fields.Nested(FormerSchema), required=True, metadata=said("The last first.")
    )
