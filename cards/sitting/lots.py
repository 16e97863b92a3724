"""Lots laid evenly instead of drawn, and the days an item waits by its lot."""

import numpy as np

from cards.schedule import MAX_INTERVAL
from cards.sitting.memory import interval
from cards.sitting.worth_memory import Floats, Weights

_GOLDEN, _PLASTIC, _PLASTIC_SQUARED = 0.6180339887498949, 0.7548776662466927, 0.5698402909980532
"""Steps that lay points evenly on a line and, two at once, in a square (Roberts 2018)."""


def lots(count: int, step: int) -> tuple[Floats, Floats]:
    """Return two lots between 0 and 1 for each of so many courses, at one of their steps.

    Neighbours' lots lie evenly. Where the courses stand in the order of their memory at every
    step, every sort of course fares ill in its right share, without chance (Array-RQMC:
    L'Ecuyer, Lécot & Tuffin 2008, Operations Research 56(4), 958-975; from memory).
    """
    places = np.arange(count, dtype=np.float64) + step * _GOLDEN
    return places * _PLASTIC % 1, places * _PLASTIC_SQUARED % 1


def waited(stability: Floats, target: float | Floats, weights: Weights, lot: Floats) -> Floats:
    """Return the whole days until items are due, spread as the schedule spreads them.

    Args:
        stability: days, above 0.
        target: retention aimed for, one for all or of each.
        weights: the 21 weights of FSRS-6.
        lot: 0 to 1, in place of the fraction that `cards.schedule.spread` hashes.
    """
    exact = interval(stability, target, weights)
    delta = (
        1
        + 0.15 * (np.minimum(exact, 7) - 2.5)
        + 0.10 * np.maximum(np.minimum(exact, 20) - 7, 0)
        + 0.05 * np.maximum(exact - 20, 0)
    )
    low = np.maximum(2, np.round(exact - delta))
    high = np.minimum(MAX_INTERVAL, np.round(exact + delta))
    spread: Floats = np.where(exact < 2.5, exact, low + np.floor(lot * (high - low + 1)))
    return spread
