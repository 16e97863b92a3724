"""Histories of a reader with a known memory: books finished over three years, asked at 0.9.

Every item goes its own way, so all are carried on at once, the k-th answers together. They
are asked when the published default weights say, whatever the reader's memory is, a little
late or early as due days are spread. What came back blank comes round again the same day.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.random import Generator
from numpy.typing import NDArray

from cards.fitting.reviews import KINDS, Reviews
from cards.schedule import DEFAULT_WEIGHTS, TARGET
from cards.sitting.memory import interval
from tests.benchmarks.recovery.readers import ByWeights, Floats, Remembering

YEARS = 3
DAYS = 365 * YEARS
FIRST_DAY = 738_000
FIRST_GRADES = (0.2, 0.3, 0.4, 0.1)
"""How often a first answer is blank, hazy, clear, vivid."""
CAME_BACK = (0.25, 0.6, 0.15)
"""How often what came back is hazy, clear, vivid."""


@dataclass(frozen=True)
class History:
    """What a reader answered, and how likely each answer truly was.

    Attributes:
        truth: the chance that it came back, of each row; NaN for first answers.
    """

    reviews: Reviews
    truth: Floats


def history(
    reader: Callable[[Generator, int], Remembering],
    seed: int,
    books: int = 300,
    items_a_book: int = 10,
) -> History:
    """Return the three years of one reader."""
    chance = np.random.default_rng(seed)
    count = books * items_a_book
    memory, schedule = reader(chance, count), ByWeights(DEFAULT_WEIGHTS)
    kinds = np.tile(np.arange(items_a_book) % len(KINDS), books)
    day = np.repeat(np.sort(chance.integers(0, DAYS, books)), items_a_book)
    grades = chance.choice(4, count, p=FIRST_GRADES).astype(np.int8)
    memory.begin(grades)
    schedule.begin(grades)
    at = np.arange(count)
    rows = [(at, day[at], grades, np.full(count, np.nan))]
    while len(at):
        again = at[grades == 0]
        second = chance.choice([1, 2], len(again)).astype(np.int8)
        for each in (memory, schedule):
            each.answer(again, np.zeros(len(again)), second)
        rows.append((again, day[again], second, np.full(len(again), np.nan)))
        elapsed = _due(schedule, at, chance)
        later = day[at] + elapsed < DAYS
        at, elapsed = at[later], elapsed[later]
        day[at] += elapsed
        truth = memory.recall(at, elapsed.astype(np.float64))
        how = chance.choice([1, 2, 3], len(at), p=CAME_BACK)
        grades = np.where(chance.random(len(at)) < truth, how, 0).astype(np.int8)
        for each in (memory, schedule):
            each.answer(at, elapsed.astype(np.float64), grades)
        rows.append((at, day[at], grades, truth))
    items, days, given, truths = (np.concatenate(column) for column in zip(*rows, strict=True))
    order = np.argsort(items, kind="stable")
    items = items[order]
    reviews = Reviews(items, kinds[items].astype(np.int8), FIRST_DAY + days[order], given[order])
    return History(reviews, truths[order])


def _due(schedule: ByWeights, at: NDArray[np.intp], chance: Generator) -> NDArray[np.int64]:
    days = interval(schedule.stability[at], TARGET, DEFAULT_WEIGHTS)
    spread = np.where(days >= 3, chance.uniform(0.9, 1.1, len(at)), 1.0)
    return np.maximum(np.round(days * spread), 1).astype(np.int64)
