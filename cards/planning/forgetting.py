"""What is known over a stretch of days, asked no more."""

from cards.sitting.worth_memory import Floats, Weights, curve


def recalled_days(
    stability: Floats, since: Floats | float, until: Floats | float, weights: Weights
) -> Floats:
    """Return the chance of recall added up over a stretch of days: the forgetting curve's area.

    Args:
        stability: days, above 0.
        since: days since the last answer as the stretch begins.
        until: the same as it ends.
        weights: the 21 weights of FSRS-6.
    """
    decay, factor = curve(weights)
    scale = stability / (factor * (1 + decay))
    area: Floats = scale * (
        (1 + factor * until / stability) ** (1 + decay)
        - (1 + factor * since / stability) ** (1 + decay)
    )
    return area
