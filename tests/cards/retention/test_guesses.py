"""What plain guesses would have cost, month by month."""

from math import log

import pytest

from cards.kinds.base import KindName
from cards.retention.guesses import Guess, plain_guesses
from cards.retention.quality import quality_of
from cards.retention.reading import read
from cards.retention.tally import merged
from cards.retention.tallying import tallies_of
from tests.cards.retention.telling import BOOK, counted, foretold, told

JANUARY, FEBRUARY, MARCH = 1, 30, 58


def beside(guess, sorts, target=0.9):
    """Return what one guess would have cost."""
    return next(each for each in quality_of(sorts, target).guesses if each.guess is guess)


def three_months():
    """Return tallies of 2 of 3 in January, 1 of 2 in February and 0 of 1 in March."""
    outcomes = {JANUARY: "vvb", FEBRUARY: "vb", MARCH: "b"}
    grade = {"v": "vivid", "b": "blank"}
    items = [
        [counted(0), counted(day, grade[each], 0.8)]
        for day, several in outcomes.items()
        for each in several
    ]
    return read(merged(*(tallies_of(KindName.NEXT, BOOK, item) for item in items)))


def test_the_share_so_far_is_that_of_all_earlier_months():
    """By Laplace's rule: a half in January, 3 of 5 in February, 4 of 7 in March."""
    found = beside(Guess.SO_FAR, three_months())
    lost = 3 * log(2) - log(3 / 5) - log(2 / 5) - log(3 / 7)
    assert found.log_loss == pytest.approx(lost / 6)
    assert found.brier == pytest.approx((3 / 4 + 4 / 25 + 9 / 25 + 16 / 49) / 6)
    assert (found.value, found.rmse_bins, found.ece, found.gain_error) == (None,) * 4


def test_the_month_before_is_the_last_with_an_answer():
    """A half in January, 3 of 5 in February, 2 of 4 in March."""
    found = beside(Guess.MONTH_BEFORE, three_months())
    lost = 3 * log(2) - log(3 / 5) - log(2 / 5) + log(2)
    assert found.log_loss == pytest.approx(lost / 6)
    assert found.gain == pytest.approx(found.log_loss + (3 * log(0.8) + 3 * log(0.2)) / 6)


def test_a_month_without_a_prediction_is_passed_over():
    """What nothing was predicted for is no part of the comparison."""
    sorts = told(
        counted(0), counted(1, "blank"), counted(30, "clear", 0.8), counted(58, "clear", 0.8)
    )
    found = beside(Guess.SO_FAR, sorts)
    assert found.log_loss == pytest.approx((log(2) + log(3 / 2)) / 2)


def test_a_guess_that_is_always_the_same_errs_in_bins_of_like_history():
    """Three answers, each in a bin of its own: the root of the mean square of how far each is."""
    sorts = told(
        counted(0),
        counted(1, "clear", 0.9),
        counted(5, "blank", 0.9),
        counted(9, "blank", 0.9),
    )
    shares = {key: (tally.came, tally.n) for key, tally in sorts.bins.items()}
    assert shares == {"0.1.0": (1, 1), "1.1.0": (0, 1), "1.2.1": (0, 1)}
    found = beside(Guess.TARGET, sorts, target=0.7)
    assert found.rmse_bins == pytest.approx(((0.09 + 0.49 + 0.49) / 3) ** 0.5)
    assert found.ece == pytest.approx(abs(1 / 3 - 0.7))


def test_every_guess_is_told_in_its_place():
    """In the order they are named, each on the same answers."""
    found = quality_of(foretold([1, 0, 1], [0.9, 0.8, 0.7]), 0.9).guesses
    assert [each.guess for each in found] == list(Guess)


def test_without_a_prediction_there_is_nothing_to_compare():
    """No quality, no guesses."""
    sorts = told(counted(0), counted(3), counted(9, "blank"))
    assert quality_of(sorts, 0.9) is None
    assert plain_guesses(sorts.thousandths, sorts.months, sorts.bins, 0.9, 0.0) == ()
