"""The memory model over all items at once, held against the package answer by answer."""

from uuid import UUID

import numpy as np
import pytest
from hypothesis import given, settings

from cards.fitting.model import predictions
from cards.fitting.reviews import Reviews
from cards.schedule import DEFAULT_WEIGHTS, Schedule
from tests.cards.fitting.histories import HISTORIES, WEIGHTS, answers_of, reviews_of

ITEM = UUID(int=9)


def foreseen_one_by_one(histories, weights):
    """Return what `Schedule` foresees before each answer; NaN for an item's first."""
    schedule = Schedule(weights=weights)
    found = []
    for steps in histories:
        answers = answers_of(steps, ITEM)
        found.append(np.nan)
        for count in range(1, len(answers)):
            memory = schedule.fold(ITEM, answers[:count])
            found.append(schedule.recall(memory, answers[count].day))
    return np.array(found)


@settings(max_examples=25)
@given(HISTORIES)
def test_any_histories_are_foreseen_as_the_schedule_foresees_them(histories):
    """Under the published weights each recall agrees with `Schedule` to 1e-9.

    Source: the package `fsrs`, which `Schedule` calls answer by answer.
    """
    found = predictions(reviews_of(histories), DEFAULT_WEIGHTS)
    expected = foreseen_one_by_one(histories, DEFAULT_WEIGHTS)
    np.testing.assert_allclose(found, expected, rtol=1e-9, equal_nan=True)


@settings(max_examples=25)
@given(HISTORIES, WEIGHTS)
def test_any_weights_foresee_as_the_schedule_does(histories, weights):
    """Whatever the weights within the published ranges, each recall agrees to 1e-9."""
    found = predictions(reviews_of(histories), weights)
    expected = foreseen_one_by_one(histories, weights)
    np.testing.assert_allclose(found, expected, rtol=1e-9, equal_nan=True)


def test_a_published_history_is_foreseen_as_published():
    """The recall before each answer of a printed history is the printed one.

    Source: FSRS-6 with its published weights, in 50-digit decimal arithmetic
    (`tests/reference/fsrs_vectors.json` says how); the second answer on a day not printed.
    """
    steps = [(0, 2), (2, 2), (11, 2), (46, 0), (0, 2), (1, 2)]
    found = predictions(reviews_of([steps]), DEFAULT_WEIGHTS)
    printed = [0.90949326, 0.89977672, 0.90041669, 0.95650264]
    assert found[[1, 2, 3, 5]] == pytest.approx(printed, abs=5e-9)


def test_nothing_answered_foresees_nothing():
    """No rows give no predictions."""
    assert len(predictions(Reviews.of([], [], [], []), DEFAULT_WEIGHTS)) == 0


def test_a_very_long_history_stays_a_number():
    """Even thousands of days answered vividly, or a thousand times a day, foresee a number."""
    often = [(0, 3)] * 1_000 + [(30, 0)]
    late = [(2_000, 3)] * 300
    widest = (*DEFAULT_WEIGHTS[:8], 4.5, 0.0, 3.5, *DEFAULT_WEIGHTS[11:16], 6.0, 2.0, 2.0, 0.0, 0.1)
    found = predictions(reviews_of([often, late]), widest)
    assert np.isfinite(found[1:1_001]).all()
    assert np.isfinite(found[1_002:]).all()
