"""The shapes of how well recall was foreseen."""

from marshmallow import fields

from cards.retention.guesses import Guess
from service.api.fields import Shape
from service.api.retention_shapes import said


class LossesSchema(Shape):
    """Mean losses of predictions, judged as they were stored before each answer."""

    n = fields.Integer(required=True, metadata=said("Answers with a prediction."))
    log_loss = fields.Float(
        required=True,
        metadata=said("Mean of -ln of the chance given to what happened; one in two has 0.693."),
    )
    brier = fields.Float(
        required=True,
        metadata=said("Mean square of prediction less outcome (Brier 1950); one in two has 0.25."),
    )
    predicted = fields.Float(required=True, metadata=said("Mean recall foretold, of 1."))
    share = fields.Float(required=True, metadata=said("Share that came back, of 1."))


class CalibrationBinSchema(Shape):
    """Answers with like predictions."""

    predicted = fields.Float(required=True, metadata=said("Mean recall foretold, of 1."))
    asked = fields.Integer(required=True, metadata=said("Answers."))
    came_back = fields.Integer(required=True, metadata=said("How many came back."))
    low = fields.Float(required=True, metadata=said("Lower 95% bound of their share."))
    high = fields.Float(required=True, metadata=said("Upper 95% bound of it."))


class GuessSchema(Shape):
    """What a plain guess would have cost on the same answers."""

    guess = fields.Enum(Guess, by_value=fields.String, required=True, metadata=said("Which guess."))
    value = fields.Float(
        required=True,
        allow_none=True,
        metadata=said("The chance it gives every answer; null where it changes by the month."),
    )
    log_loss = fields.Float(required=True, metadata=said("As of the predictions."))
    brier = fields.Float(required=True, metadata=said("As of the predictions."))
    gain = fields.Float(
        required=True,
        metadata=said("Its log loss less that of the predictions: above 0 they were better."),
    )
    gain_error = fields.Float(
        required=True,
        allow_none=True,
        metadata=said("Standard error of the gain; null where the guess changes by the month."),
    )


class QualitySchema(Shape):
    """How well recall was foreseen."""

    losses = fields.Nested(LossesSchema, required=True, metadata=said("Of all answers."))
    log_loss_error = fields.Float(
        required=True, allow_none=True, metadata=said("Standard error of the log loss, or null.")
    )
    rmse_bins = fields.Float(
        required=True,
        metadata=said(
            "Root mean square of share less prediction, over bins of like history by answers."
        ),
    )
    ece = fields.Float(
        required=True, metadata=said("Mean of |share - prediction| over the bins of the curve.")
    )
    auc = fields.Float(
        required=True,
        allow_none=True,
        metadata=said("Area under the ROC curve; null where all came back, or none."),
    )
    curve = fields.List(
        fields.Nested(CalibrationBinSchema), required=True, metadata=said("The calibration curve.")
    )
    guesses = fields.List(
        fields.Nested(GuessSchema), required=True, metadata=said("Plain guesses beside it.")
    )


class CurveSchema(Shape):
    """A forgetting curve that starts at 1, fitted to what came back by age."""

    rate = fields.Float(
        required=True, metadata=said("a in (1 + a·t)^-d or in e^(-a·t), t in days.")
    )
    decay = fields.Float(
        required=True, allow_none=True, metadata=said("d; null for the exponential.")
    )
    log_loss = fields.Float(required=True, metadata=said("Mean over the answers fitted to."))
    stability = fields.Float(
        required=True,
        allow_none=True,
        metadata=said("Days until it falls to 0.9; null for over a hundred years."),
    )


class ForgettingSchema(Shape):
    """The forgetting curves; null of fewer than 50 answers or of a single age."""

    power = fields.Nested(
        CurveSchema, required=True, allow_none=True, metadata=said("The likeliest power curve.")
    )
    exponential = fields.Nested(
        CurveSchema, required=True, allow_none=True, metadata=said("The likeliest exponential.")
    )


class AgreementSchema(Shape):
    """The reader's own grade against the suggested mark."""

    n = fields.Integer(required=True, metadata=said("Answers with a mark."))
    same = fields.Integer(required=True, metadata=said("Graded as suggested."))
    higher = fields.Integer(required=True, metadata=said("Graded above the mark."))
    kappa = fields.Float(
        required=True, allow_none=True, metadata=said("Cohen's kappa (1960), or null.")
    )
    weighted = fields.Float(
        required=True,
        allow_none=True,
        metadata=said("Cohen's kappa with square weights (1968), or null."),
    )
    counts = fields.List(
        fields.List(fields.Integer()),
        required=True,
        metadata=said("A row a mark, in it a number a grade, both from blank to vivid."),
    )
