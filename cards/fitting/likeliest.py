"""The reader's own weights: the likeliest, given their answers and what is thought beforehand."""

import numpy as np

from cards.fitting.gradient import loss_and_gradient
from cards.fitting.prior import Prior
from cards.fitting.records import Floats, Reviews
from cards.fitting.steps import lay
from cards.schedule import DEFAULT_WEIGHTS

STRENGTH = 1.0
KIND_STRENGTH = 1.0
ENOUGH = 1e-2
"""Nats of the whole: a step that makes the fit no likelier than by so little is the last."""
LONGEST = 64
"""Answers of an item a fit goes through: few have more, and each further step over all items
costs as much as a thousand answers."""


def fit(
    reviews: Reviews,
    centre: tuple[float, ...] = DEFAULT_WEIGHTS,
    strength: float = STRENGTH,
) -> tuple[float, ...]:
    """Return the 21 weights of FSRS-6 that are likeliest: a maximum a posteriori fit.

    The log loss of what came back, summed over every answer a day or more after the item's
    one before, and the prior (`cards.fitting.prior`) are made least together, by L-BFGS-B
    within the published ranges, from the centre. Further answers of a day move the memory,
    but are not scored. Without a scored answer the centre is returned.

    Args:
        reviews: whole histories of items, or of each the answers up to some day.
        centre: the weights thought likeliest beforehand.
        strength: how much the prior counts.
    """
    if not reviews.scored.any():
        return centre
    laid = lay(reviews, LONGEST)
    prior = Prior.around(centre, strength)

    def posterior(spreads: Floats) -> tuple[float, Floats]:
        weights = prior.weights(spreads)
        loss, gradient = loss_and_gradient(laid, weights)
        penalty, pull = prior.penalty(spreads)
        return loss + penalty, gradient * prior.slopes(weights) + pull

    at_centre, _ = posterior(np.zeros(21))
    # It takes half a second to import, and everything but a fit does without it.
    from scipy.optimize import Bounds, minimize  # noqa: PLC0415

    found = minimize(
        posterior,
        np.zeros(21),
        jac=True,
        method="L-BFGS-B",
        bounds=Bounds(*prior.bounds),
        options={"ftol": ENOUGH / max(at_centre, 1.0)},
    )
    return tuple(float(weight) for weight in prior.weights(found.x))
