"""How far predictions were from what happened, answer by answer."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import log, sqrt

from cards.retention.tally import BILLION, Tally

LEAST = 1e-6
"""Predictions are held from this to 1 - this before their loss is reckoned.

One that was certain and wrong would else make the mean of all infinite; so it costs 13.8, where
a plain even guess costs 0.69."""

Cells = Mapping[int, Tally]
"""What is counted of each recall predicted, in thousandths."""


@dataclass(frozen=True, slots=True)
class Losses:
    """The mean losses of predictions, all judged as they were stored before the answer.

    Attributes:
        n: answers with a prediction; at least one.
        log_loss: the mean of -ln of the probability given to what happened (Good 1952); an
            even guess has 0.693.
        brier: the mean of (p - y)² (Brier 1950); an even guess has 0.25.
        predicted: the mean recall predicted.
        share: the share that came back.
    """

    n: int
    log_loss: float
    brier: float
    predicted: float
    share: float


def losses_of(tally: Tally) -> Losses | None:
    """Return the mean losses of a tally; None where nothing of it was predicted."""
    n = tally.foreseen
    if not n:
        return None
    return Losses(
        n,
        tally.logs / n / BILLION,
        tally.squares / n / BILLION,
        tally.predicted / n / BILLION,
        tally.came / n,
    )


def loss(given: float, came: bool) -> float:
    """Return the loss of one probability of recall given to what happened, in nats."""
    held = min(max(given if came else 1 - given, LEAST), 1 - LEAST)
    return -log(held)


def standard_error(cells: Cells, guess: float | None = None) -> float | None:
    """Return the standard error of the mean log loss, or of how far a guess's lies above it.

    Answers are taken for independent, each with the mean prediction of its thousandth. None
    for fewer than two answers.

    Args:
        cells: what is counted by thousandths.
        guess: a probability given to every answer instead; None for the loss itself.
    """
    n, first, second = 0, 0.0, 0.0
    for tally in cells.values():
        given = tally.predicted / tally.foreseen / BILLION
        for came, count in ((True, tally.came), (False, tally.foreseen - tally.came)):
            lost = loss(given, came)
            value = lost if guess is None else loss(guess, came) - lost
            n += count
            first += count * value
            second += count * value * value
    if n < 2:
        return None
    variance = max(0.0, second - first * first / n) / (n - 1)
    return sqrt(variance / n)
