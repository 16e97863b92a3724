"""How well recall was foreseen, measure by measure, each explained in a sentence."""

from dataclasses import dataclass

from cards.retention.guesses import Guess
from cards.retention.quality import Quality

_COIN = 0.6931
"""Log loss of one in two: ln 2."""


@dataclass(frozen=True, slots=True)
class Measure:
    """One measure of how well recall was foreseen.

    Attributes:
        name: what it is called.
        value: the figure, None where it cannot be told.
        give_or_take: its standard error, or None.
        meaning: what it says, in a sentence or two.
    """

    name: str
    value: float | None
    give_or_take: float | None
    meaning: str


def measures(quality: Quality) -> tuple[Measure, ...]:
    """Return the measures of how well recall was foreseen, the plainest first."""
    losses, apart = quality.losses, quality.auc
    return (
        Measure(
            "Log loss",
            losses.log_loss,
            quality.log_loss_error,
            "The mean of −ln of the chance that was given to what then happened. Perfect foresight "
            f"has 0, a coin {_COIN:.3f}; the lower, the better.",
        ),
        Measure(
            "Brier score",
            losses.brier,
            None,
            "The mean square of how far each prediction lay from what happened. Perfect foresight "
            "has 0, a coin 0.25; the lower, the better.",
        ),
        Measure(
            "Calibration error",
            quality.ece,
            None,
            "How far, on average, the points of the picture lie from its diagonal: answers with "
            "like predictions together.",
        ),
        Measure(
            "Root mean square error in bins",
            quality.rmse_bins,
            None,
            "How far what came back lay from what was foretold, answers with like histories "
            "together: as long since, as often asked, as often blank.",
        ),
        Measure(
            "Area under the curve (AUC)",
            None if apart is None else apart.area,
            None,
            "Of one answer that came back and one that did not, how often the first had been given "
            "the greater chance: 0.5 tells nothing apart, 1 everything.",
        ),
    )


def told(quality: Quality) -> str:
    """Return how the predictions did beside the best of the plain guesses, in a sentence or two."""
    foreknown = [each for each in quality.guesses if each.guess is not Guess.HINDSIGHT]
    best = min(foreknown, key=lambda each: each.log_loss)
    n = f"{quality.losses.n:,} {'answer' if quality.losses.n == 1 else 'answers'}"
    if best.gain <= 0:
        return (
            f"Over {n} with a prediction, the memory model did no better than a plain guess: "
            f"{best.guess}. With few answers that says little; with many, its weights do not fit "
            "you yet."
        )
    sure = best.gain_error is not None and best.gain > 2 * best.gain_error
    beyond = ", beyond what chance explains" if sure else ", though chance may explain it"
    if best.gain_error is None:
        beyond = ""
    return (
        f"Over {n} with a prediction, the memory model foresaw what would come back better than "
        f"the best plain guess, {best.guess}{beyond}."
    )
