"""The reader's own weights: the likeliest, given their answers and what is thought beforehand."""

import numpy as np

from cards.fitting.gradient import loss_and_gradient
from cards.fitting.prior import Prior
from cards.fitting.reviews import Floats, Reviews
from cards.fitting.steps import lay
from cards.schedule import DEFAULT_WEIGHTS

STRENGTH = 1.0
"""How much what is thought beforehand counts: the spreads of the prior at their word."""
# Measured: `python -m tests.benchmarks.recovery strength`, the expected log loss of readers'
# next answers, by strength. Twice as strong would cost readers unlike the published weights
# more than it would save those like them, who are not given other weights anyway.
#
#     reader         answers  published    0.25     0.5     1.0     2.0     4.0   truth
#     as published       360     0.3407  0.3500  0.3479  0.3458  0.3439  0.3427  0.3407
#     as published     2,100     0.3339  0.3360  0.3357  0.3353  0.3350  0.3347  0.3339
#     as published    12,000     0.3325  0.3329  0.3329  0.3328  0.3328  0.3327  0.3325
#     other weights      360     0.3210  0.3092  0.3073  0.3065  0.3075  0.3092  0.2976
#     other weights    2,100     0.3040  0.2784  0.2782  0.2781  0.2782  0.2786  0.2766
#     other weights   12,000     0.2968  0.2681  0.2681  0.2680  0.2680  0.2681  0.2676
#     other memory       360     0.4400  0.4172  0.4170  0.4183  0.4207  0.4241  0.3940
#     other memory     2,100     0.3928  0.3625  0.3632  0.3641  0.3651  0.3667  0.3474
#     other memory    12,000     0.3874  0.3525  0.3526  0.3536  0.3556  0.3565  0.3415
KIND_STRENGTH = 4.0
"""The same for one kind, around the reader's own weights for every kind: half those spreads."""
# Measured by the same command, of a kind whose weights lie so far from the reader's others:
#
#     apart     answers  of all     0.5     1.0     2.0     4.0     8.0   truth
#      0 %          400  0.2854  0.2878  0.2870  0.2863  0.2858  0.2855  0.2827
#      0 %        1,600  0.2693  0.2701  0.2698  0.2696  0.2694  0.2693  0.2685
#     15 %          400  0.2962  0.2987  0.2976  0.2967  0.2961  0.2958  0.2931
#     15 %        1,600  0.2769  0.2778  0.2775  0.2772  0.2770  0.2769  0.2755
#     30 %          400  0.3000  0.3000  0.2993  0.2989  0.2988  0.2989  0.2947
#     30 %        1,600  0.2801  0.2797  0.2793  0.2791  0.2789  0.2789  0.2773
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
