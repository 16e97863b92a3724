"""How much is lost of one kind's next answers when it has weights of its own.

A reader unlike the published defaults whose memory of one kind differs from that of the rest
by so much: the weights for every kind are fitted to both, those for the kind to it alone.
"""

from collections.abc import Sequence

import numpy as np

from cards.fitting.likeliest import fit
from cards.fitting.model import predictions
from cards.fitting.prior import HIGHEST, LOWEST
from cards.fitting.reviews import Reviews
from tests.benchmarks.recovery.foreseeing import expected
from tests.benchmarks.recovery.histories import history
from tests.benchmarks.recovery.readers import ByWeights, other_weights

APART = (0.0, 0.15, 0.3)
"""Spread of the kind's weights around the reader's others, as a share of each."""
OF_THE_KIND = (400, 1_600)
"""Answers of the kind a fit is given."""
BOOKS = 200


def losses_of_a_kind(
    apart: float, seed: int, answers: int, strengths: Sequence[float]
) -> list[float]:
    """Return the expected log loss, in nats, of a kind's next answers.

    Returns:
        By the reader's weights for every kind, by weights of the kind's own for each
        strength of the prior around those in turn, and by the truth.
    """
    memory = other_weights(np.random.default_rng(seed), 0)
    assert isinstance(memory, ByWeights)
    factors = np.exp(np.random.default_rng([seed, 1]).normal(0, apart, 21))
    own = tuple(np.clip(np.array(memory.weights) * factors, LOWEST, HIGHEST))
    others = history(lambda *_: ByWeights(memory.weights), seed, BOOKS, 3).reviews
    told = history(lambda *_: ByWeights(own), seed + 10_000, BOOKS, 2)
    kind = told.reviews
    days = np.sort(kind.days[kind.scored])
    now, end = days[answers], days[min(2 * answers, len(days) - 1)]
    given = kind.only(kind.days < now)
    general = fit(_joined(others.only(others.days < now), given))
    later = kind.scored & (kind.days >= now) & (kind.days <= end)
    weights = (general, *(fit(given, general, each) for each in strengths))
    foreseen = [predictions(kind, each)[later] for each in weights]
    truth = told.truth[later]
    return [expected(recall, truth) for recall in (*foreseen, truth)]


def _joined(some: Reviews, others: Reviews) -> Reviews:
    """Return the reviews of both; how their kinds are numbered does not matter to a fit."""
    return Reviews(
        np.concatenate((some.items, others.items + some.items.max() + 1)),
        np.concatenate((some.kinds, others.kinds)),
        np.concatenate((some.days, others.days)),
        np.concatenate((some.grades, others.grades)),
    )
