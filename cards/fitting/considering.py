"""Considering weights of a reader's own: fitted to earlier answers, judged by later ones.

The fit that is judged sees the answers before a day; the last fifth, from that day on, is
held out. Adopted are weights that foresaw it better than those in force, beyond doubt; put
in force are then weights fitted to all answers. After that each kind is tried for itself,
with the reader's own weights for every kind as what is thought beforehand.
"""

from dataclasses import replace

import numpy as np

from cards.fitting.judging import better, compared
from cards.fitting.likeliest import KIND_STRENGTH, STRENGTH, fit
from cards.fitting.records import Considered, Verdict
from cards.fitting.reviews import KINDS, Reviews
from cards.fitting.telling import judged, too_few
from cards.kinds.base import KindName
from cards.schedule import DEFAULT_WEIGHTS
from cards.weighting import PUBLISHED, Weighting, Weights

HELD_OUT = 0.2
"""Share of the answers, the latest ones, that the judged fit does not see."""
FEWEST = 100
"""Held-out answers below which nothing is judged.

Measured with simulated readers whom the published weights describe exactly, considered after
75, 150 and 300 answers, of which a fifth were held out: 2, 2 and 1 of 23 would have been given
other weights; after 600, 1,200 and 2,400 none of 67."""
FEWEST_APART = 10
"""Items, and days, they are to be of: of fewer their standard error says little."""


def consider(reviews: Reviews, current: Weighting = PUBLISHED, since: int = 0) -> Considered:
    """Consider weights of the reader's own, and say what is in force from now on.

    Args:
        reviews: the whole history of every item.
        current: the weights in force.
        since: ordinal of the first reader's day whose answers the weights in force were not
            fitted to; 0 when they were fitted to none. Answers before it are never held out:
            there the weights in force would be praised for what they had seen.
    """
    begin = max(_last_fifth(reviews), since)
    verdict, tried = _try(reviews, begin, None, current)
    final = _with(current, None, fit(reviews)) if verdict.adopted else current
    verdicts = []
    for number in np.unique(reviews.kinds):
        kind, of_kind = KINDS[number], reviews.only(reviews.kinds == number)
        # Of one kind alone its weights would be those for every kind, fitted to the same twice.
        if len(of_kind) == len(reviews):
            break
        found, _ = _try(of_kind, begin, kind, tried)
        verdicts.append(found)
        if found.adopted:
            final = _with(final, kind, fit(of_kind, final.general, KIND_STRENGTH))
    return Considered(verdict, tuple(verdicts), final)


def _try(
    reviews: Reviews, begin: int, kind: KindName | None, current: Weighting
) -> tuple[Verdict, Weighting]:
    """Judge weights for a kind, or for all; and return what the judged fit has in force then."""
    held_out = reviews.scored & (reviews.days >= begin)
    count, answers = int(held_out.sum()), int(reviews.scored.sum())
    items, days = (len(np.unique(each[held_out])) for each in (reviews.items, reviews.days))
    if count < FEWEST or min(items, days) < FEWEST_APART:
        sentence = too_few(kind, (count, items, days), (FEWEST, FEWEST_APART))
        return Verdict(kind, answers, count, None, False, sentence), current
    earlier = reviews.only(reviews.days < begin)
    if kind is None:
        proposed = _with(current, None, fit(earlier, DEFAULT_WEIGHTS, STRENGTH))
    else:
        proposed = _with(current, kind, fit(earlier, current.general, KIND_STRENGTH))
    comparison = compared(reviews, held_out, current, proposed)
    adopted = better(comparison, count, kind=kind is not None)
    sentence = judged(kind, count, comparison, adopted=adopted)
    verdict = Verdict(kind, answers, count, comparison, adopted, sentence)
    return verdict, proposed if adopted else current


def _last_fifth(reviews: Reviews) -> int:
    """Return the ordinal of the reader's day on which the last fifth of the answers begins."""
    days = np.sort(reviews.days[reviews.scored])
    return int(days[int(len(days) * (1 - HELD_OUT))]) if len(days) else 0


def _with(weighting: Weighting, kind: KindName | None, weights: Weights) -> Weighting:
    """Return a weighting with other weights for a kind, or for those without their own."""
    if kind is None:
        return replace(weighting, general=weights)
    own = dict(weighting.by_kind) | {kind: weights}
    return replace(weighting, by_kind=tuple((each, own[each]) for each in KINDS if each in own))
