"""The forgetting curve of what happened, and where there is none.

Values against outside sources are in tests/reference/test_retention_curves.py.
"""

import pytest

from cards.retention.descent import Slope, least, solved
from cards.retention.forgetting import Curve, forgetting_of
from cards.retention.tally import BILLION, Tally

FALLING = {1: Tally(40, 38), 10: Tally(40, 30), 100: Tally(40, 18)}


def test_ages_are_told_in_readable_classes():
    """Two ages of one class are told together, with the mean recall predicted."""
    found = forgetting_of(
        {
            2: Tally(4, 3, 2, 1, 16 * BILLION // 10),
            3: Tally(1, 1),
            700: Tally(2, 0, 1, 0, 7 * BILLION // 10),
            20: Tally(1, 1),
        }
    )
    told = [(each.age.words, each.share.recalled, each.share.asked) for each in found.ages]
    assert told == [("2 to 3 days", 4, 5), ("15 to 30 days", 1, 1), ("over a year", 0, 2)]
    assert [each.predicted for each in found.ages] == [0.8, None, 0.7]


@pytest.mark.parametrize(
    "ages",
    [
        {},
        {1: Tally(20, 19), 9: Tally(29, 20)},
        {5: Tally(900, 700)},
        {1: Tally(400, 400), 9: Tally(100, 100)},
        {1: Tally(400, 0), 9: Tally(100, 0)},
    ],
)
def test_too_little_bears_no_curve(ages):
    """Of fewer than fifty answers, of one age, or where all or nothing came back."""
    found = forgetting_of(ages)
    assert (found.power, found.exponential) == (None, None)


def test_fifty_answers_of_two_ages_bear_one():
    """The least there is: through two shares goes a power curve, exactly."""
    found = forgetting_of({1: Tally(25, 24), 9: Tally(25, 20)})
    assert found.power.at(1) == pytest.approx(24 / 25, abs=1e-4)
    assert found.power.at(9) == pytest.approx(20 / 25, abs=1e-4)


def test_both_curves_fall_from_one():
    """At no age all is there; then less and less, and never below nothing."""
    found = forgetting_of(FALLING)
    for curve in (found.power, found.exponential):
        values = [curve.at(days) for days in (0, 1, 10, 100, 1_000, 10_000)]
        assert values[0] == 1
        assert values == sorted(values, reverse=True)
        assert values[-1] >= 0
    assert found.power.log_loss < found.exponential.log_loss


@pytest.mark.parametrize(
    "ages",
    [
        {1: Tally(100, 90), 10: Tally(100, 90), 300: Tally(100, 90)},
        {1: Tally(100, 60), 10: Tally(100, 80), 300: Tally(100, 99)},
        {1: Tally(100_000, 99_999), 10: Tally(100_000, 100_000)},
        {1: Tally(100_000, 1), 30_000: Tally(100_000, 0)},
        {1: Tally(60, 60), 30_000: Tally(60, 0)},
    ],
)
def test_what_does_not_fall_bears_a_curve_all_the_same(ages):
    """As level or as steep as a curve can be, finite, and no worse than an even guess."""
    found = forgetting_of(ages)
    for curve in (found.power, found.exponential):
        assert 0 <= curve.at(1_000) <= curve.at(1) <= 1
        assert curve.stability is None or curve.stability > 0
    assert found.power.log_loss < 0.6932


@pytest.mark.parametrize(
    ("curve", "stability"),
    [
        (Curve(0.01, None, 0.0), 10.536),
        (Curve(0.1, 0.5, 0.0), 2.3457),
        (Curve(1e-9, None, 0.0), None),
        (Curve(1e-3, 1e-4, 0.0), None),
    ],
)
def test_stability_is_the_day_recall_falls_to_nine_in_ten(curve, stability):
    """None where that takes over a hundred years, however many more."""
    assert curve.stability == (None if stability is None else pytest.approx(stability, rel=1e-4))


def test_the_least_may_lie_on_a_bound():
    """Of (x - 3)² + (y + 1)² within x ≤ 2 and y ≥ 0, it is where both bounds meet."""

    def at(place):
        x, y = place
        return Slope((x - 3) ** 2 + (y + 1) ** 2, [2 * (x - 3), 2 * (y + 1)], [[2, 0], [0, 2]])

    assert least(at, (0.0, 5.0), [(-9, 2), (0, 9)]) == pytest.approx((2, 0), abs=1e-6)
    assert least(at, (0.0, 5.0), [(-9, 9), (-9, 9)]) == pytest.approx((3, -1), abs=1e-5)


def test_equations_are_solved():
    """Three with three unknowns, symmetric."""
    matrix = [[4, 1, 0.5], [1, 3, 1], [0.5, 1, 2]]
    found = solved(matrix, [4 + 2 + 1.5, 1 + 6 + 3, 0.5 + 2 + 6])
    assert found == pytest.approx([1, 2, 3])
