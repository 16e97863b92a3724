"""What a growing library asks of its reader, against load arithmetic done elsewhere.

Source of the figures: computed for this project in 50-digit arithmetic, independently of this
code: a library of 25 items a book and 300 books in ten years under the published default
weights of FSRS-6, each item asked when due and graded clear or blank by its predicted recall;
whole reviews a day, first askings and second ones of a day not among them. It is one run by
chance, without spreading, so that a book's items march in step. Agreement within 10 in a
hundred, or the half review the rounding hides, is what such a run can show.
"""

import numpy as np
import pytest

from cards.sitting.price import askings

ITEMS, BOOKS, YEARS = 25, 300, 10
DAYS = 3652
REVIEWS_A_DAY = {
    0.95: {1: 18, 5: 45, 10: 59},
    0.90: {1: 11, 5: 30, 10: 41},
    0.85: {1: 9, 5: 24, 10: 33},
    0.80: {1: 7, 5: 19, 10: 28},
    0.70: {1: 4, 5: 13, 10: 21},
}


@pytest.mark.parametrize("target", REVIEWS_A_DAY)
def test_ten_years_of_books_ask_as_much_as_computed(target):
    """Reviews a day in the first, fifth and tenth year are the computed ones."""
    due, _ = askings(target, DAYS)
    due[0] = 0.0
    added = np.zeros(DAYS)
    added[np.arange(BOOKS) * DAYS // BOOKS] = ITEMS
    reviews = np.convolve(added, due)[:DAYS]
    for year, expected in REVIEWS_A_DAY[target].items():
        days = reviews[DAYS * (year - 1) // YEARS : DAYS * year // YEARS]
        assert days.mean() == pytest.approx(expected, rel=0.1, abs=0.5)


def test_asking_less_well_saves_a_third_and_choosing_saves_more():
    """From 0.9 to 0.8 saves about a third of the reviews: 11, 30, 41 against 7, 19, 28."""
    kept, lower = (askings(target, DAYS)[0][1:].sum() for target in (0.9, 0.8))
    assert lower / kept == pytest.approx(2 / 3, abs=0.05)
