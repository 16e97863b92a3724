"""Bins and classes of the age of a memory."""

from itertools import pairwise

import pytest

from cards.retention.ages import CLASSES, OLDEST, age_bin, age_within, class_of, survival_bin
from cards.retention.history_bins import history_bin


def test_a_bin_holds_its_ages_and_no_class_is_split():
    """A bin begins at or before its age, is a twentieth wide at most, and lies in one class."""
    for days in [*range(1, 1_500), 5_000, 20_000, OLDEST - 1]:
        first = age_bin(days)
        assert first <= days < first + max(1, first / 20) + 1
        assert age_bin(first) == first
        assert class_of(first) is class_of(days)
        assert first <= age_within(first) < first * 1.026 + 0.5


def test_ages_are_exact_to_thirty_nine_days():
    """Each day of them is a bin of its own."""
    assert [age_bin(days) for days in range(1, 40)] == list(range(1, 40))
    assert [age_within(days) for days in (1, 39)] == [1, 39]


@pytest.mark.parametrize("days", [OLDEST, OLDEST + 1, 3_652_058])
def test_over_a_hundred_years_ages_are_alike(days):
    """However far two dates lie apart."""
    assert age_bin(days) == age_bin(OLDEST)
    assert age_within(age_bin(days)) == age_bin(OLDEST)
    assert survival_bin(days) == survival_bin(OLDEST)


def test_a_long_life_has_few_bins():
    """Ten years have some hundred and fifty bins of age and some five hundred of survival."""
    assert len({age_bin(days) for days in range(1, 3_653)}) < 150
    assert len({survival_bin(days) for days in range(3_653)}) < 550


@pytest.mark.parametrize("days", [0, 7, 199, 200, 777, 3_000])
def test_survival_is_exact_to_199_days_and_then_to_a_hundredth(days):
    """A bin begins at or before its day, by a hundredth at most."""
    first = survival_bin(days)
    assert first <= days
    assert days - first < max(1, days / 100)


@pytest.mark.parametrize(
    ("days", "words"),
    [
        (1, "1 day"),
        (2, "2 to 3 days"),
        (3, "2 to 3 days"),
        (4, "4 to 7 days"),
        (30, "15 to 30 days"),
        (31, "31 to 90 days"),
        (180, "91 to 180 days"),
        (181, "181 days to a year"),
        (365, "181 days to a year"),
        (366, "over a year"),
        (730, "over a year"),
        (731, "over two years"),
        (40_000, "over two years"),
    ],
)
def test_ages_have_readable_classes(days, words):
    """On both sides of each border."""
    assert class_of(days).words == words


def test_classes_follow_on_each_other():
    """Each begins a day after the one before ends; the last is open."""
    for one, other in pairwise(CLASSES):
        assert one.last + 1 == other.first
    assert CLASSES[-1].last is None


@pytest.mark.parametrize(
    ("history", "place"),
    [
        ((1, 1, 0), (0, 1, 0)),
        ((3, 2, 0), (0, 1, 0)),
        ((4, 3, 1), (1, 2, 1)),
        ((13, 5, 1), (1, 2, 1)),
        ((14, 6, 2), (2, 3, 2)),
        ((48, 11, 3), (3, 3, 3)),
        ((172, 12, 5), (4, 4, 3)),
    ],
)
def test_histories_fall_into_bins_by_powers(history, place):
    """3.62 to the age, 1.89 to the length, 1.73 to the blanks, where none is a bin of its own."""
    assert history_bin(*history) == place
