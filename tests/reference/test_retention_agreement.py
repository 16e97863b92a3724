"""Cohen's kappa against published values and scikit-learn's `cohen_kappa_score`.

Published: the example in its docstring (.6875). The kappas of ten pairs of grades, .594595 plain
and .867257 with quadratic weights, were computed by scikit-learn.
"""

import numpy as np
import pytest
from sklearn.metrics import cohen_kappa_score

from cards.answers import GRADES
from cards.retention.agreement import agreements_of

MARKS = (1, 2, 3, 3, 4, 3, 1, 2, 3, 4)
READERS = (1, 3, 3, 3, 4, 2, 1, 2, 4, 4)


def agreement(marks, readers):
    """Return how far marks and grades agree, each given as a number from 1 to 4."""
    counts = {}
    for mark, grade in zip(marks, readers, strict=True):
        key = (GRADES[mark - 1], GRADES[grade - 1], False)
        counts[key] = counts.get(key, 0) + 1
    return agreements_of(counts).all


def test_three_labels_agree_as_published():
    """Four of five agree, which is .6875 beyond chance; neg, neu and pos stand as 1, 2 and 3."""
    assert agreement((1, 3, 1, 2, 3), (1, 3, 1, 2, 1)).kappa == pytest.approx(0.6875)


def test_ten_grades_agree_as_computed():
    """Both kappas, and the plain counts."""
    found = agreement(MARKS, READERS)
    assert found.kappa == pytest.approx(0.594595, abs=5e-7)
    assert found.weighted == pytest.approx(0.867257, abs=5e-7)
    assert (found.n, found.same, found.higher) == (10, 7, 2)


@pytest.mark.parametrize("seed", range(5))
def test_made_up_grades_agree_as_scikit_learn_says(seed):
    """Of grades that lean towards the mark, whichever of the four occur."""
    chance = np.random.default_rng(seed)
    marks = chance.integers(1, 4 + seed % 2, 200)
    readers = (marks + chance.integers(-1, 2, 200)).clip(1, 4)
    found = agreement(marks, readers)
    labels = [1, 2, 3, 4]
    assert found.kappa == pytest.approx(cohen_kappa_score(marks, readers, labels=labels))
    quadratic = cohen_kappa_score(marks, readers, labels=labels, weights="quadratic")
    assert found.weighted == pytest.approx(quadratic)
    assert found.same == (marks == readers).sum()
    assert found.higher == (readers > marks).sum()


def test_where_chance_explains_all_there_is_no_kappa():
    """One grade throughout agrees by necessity; of no grades nothing is said either."""
    for found in (agreement((3, 3), (3, 3)), agreement((), ())):
        assert found.kappa is None
        assert found.weighted is None


def test_grades_given_first_are_counted_apart():
    """The mark pulls where it was seen: both are told, and both together."""
    clear, vivid = GRADES[2], GRADES[3]
    found = agreements_of({(clear, vivid, True): 2, (clear, clear, False): 3})
    assert (found.first.n, found.first.same) == (2, 0)
    assert (found.seen.n, found.seen.same) == (3, 3)
    assert (found.all.n, found.all.same) == (5, 3)
    assert found.all.counts[2] == (0, 0, 3, 2)
