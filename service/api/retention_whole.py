"""The shape of all figures of retention together."""

from marshmallow import fields

from service.api.fields import Shape
from service.api.prediction_shapes import AgreementSchema, ForgettingSchema, QualitySchema
from service.api.retention_shapes import (
    AgeShareSchema,
    BookShareSchema,
    CameBackSchema,
    ComingDaySchema,
    KindShareSchema,
    KnownSchema,
    MonthKeptSchema,
    MonthShareSchema,
    SurvivalSchema,
    said,
)


class RetentionSchema(Shape):
    """What came back when asked, how well it was foreseen, what is known and what lies ahead."""

    day = fields.Date(required=True, metadata=said("The reader's day."))
    target = fields.Float(required=True, metadata=said("Retention aimed for, of 1."))
    answers = fields.Integer(
        required=True,
        metadata=said(
            "All answers. An answer counts in what follows when its item was asked before on an "
            "earlier day."
        ),
    )
    whole = fields.Nested(CameBackSchema, required=True, metadata=said("All that counts."))
    books = fields.List(
        fields.Nested(BookShareSchema), required=True, metadata=said("Book by book.")
    )
    kinds = fields.List(
        fields.Nested(KindShareSchema), required=True, metadata=said("Kind by kind.")
    )
    ages = fields.List(
        fields.Nested(AgeShareSchema), required=True, metadata=said("By the age of the memory.")
    )
    months = fields.List(
        fields.Nested(MonthShareSchema), required=True, metadata=said("Month by month.")
    )
    quality = fields.Nested(
        QualitySchema,
        required=True,
        allow_none=True,
        metadata=said("How well it was foreseen; null where nothing was."),
    )
    forgetting = fields.Nested(
        ForgettingSchema, required=True, metadata=said("Curves fitted to the shares by age.")
    )
    survival = fields.List(
        fields.Nested(SurvivalSchema), required=True, metadata=said("Time to the first blank.")
    )
    grades = fields.Nested(
        AgreementSchema, required=True, metadata=said("The reader's grades against the marks.")
    )
    kept = fields.List(
        fields.Nested(MonthKeptSchema),
        required=True,
        metadata=said("Commitments kept, in the last three years."),
    )
    known = fields.Nested(KnownSchema, required=True, metadata=said("What is known."))
    coming = fields.List(
        fields.Nested(ComingDaySchema), required=True, metadata=said("The coming eight weeks.")
    )
