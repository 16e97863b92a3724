"""Orders against exact arithmetic of chance and a published measure.

Sources: the Mahonian numbers and the limits of inversions, computed with exact integers
independently of this code (the project's reference values, part 4), and here again by going
through every order; Kendall's tau as in the examples of SciPy's `kendalltau`.
"""

from collections import Counter
from fractions import Fraction
from itertools import combinations, pairwise, permutations
from math import factorial

import pytest

from cards.answers import GRADES, Grade
from cards.digest import Digest, Point
from cards.kinds.base import Attempt, Occasion
from cards.kinds.inversions import chance, in_order, inversions, mahonian
from cards.kinds.order import ORDER
from tests.cards.digests import kept

LIMITS = [
    (4, 0, 0.0417),
    (5, 1, 0.0417),
    (6, 2, 0.0278),
    (7, 4, 0.0345),
    (8, 6, 0.0305),
    (9, 9, 0.0376),
    (10, 12, 0.0363),
]
"""Points, the most inversions that are clear, and the chance of so few: reference, part 4."""


def test_the_mahonian_numbers_of_four_are_as_published():
    """Of the 24 orders of four, 1, 3, 5, 6, 5, 3, 1 have 0 to 6 inversions."""
    assert mahonian(4) == (1, 3, 5, 6, 5, 3, 1)


@pytest.mark.parametrize("among", range(1, 9))
def test_every_order_of_up_to_eight_counts_as_computed(among):
    """Brute force: all permutations, their pairs counted one by one."""
    counted = Counter(
        sum(a > b for a, b in combinations(order, 2)) for order in permutations(range(among))
    )
    assert mahonian(among) == tuple(counted[wrong] for wrong in range(len(counted)))
    assert sum(mahonian(among)) == factorial(among)


@pytest.mark.parametrize("among", range(2, 30))
def test_there_are_as_many_orders_as_there_are_and_as_many_one_way_as_the_other(among):
    """Sum n!, symmetric, mean n(n - 1)/4: facts of the inversion statistic."""
    counts = mahonian(among)
    pairs = among * (among - 1) // 2
    assert sum(counts) == factorial(among)
    assert counts == counts[::-1]
    assert len(counts) == pairs + 1
    mean = Fraction(sum(wrong * count for wrong, count in enumerate(counts)), sum(counts))
    assert mean == Fraction(pairs, 2)


@pytest.mark.parametrize(("among", "most", "probability"), LIMITS)
def test_the_limits_of_clear_are_as_published(among, most, probability):
    """The most inversions with P <= .05, and their exact probability."""
    assert float(chance(most, among)) == pytest.approx(probability, abs=5e-5)
    assert chance(most, among) <= Fraction(1, 20) < chance(most + 1, among)


def test_three_in_order_are_luck_one_time_in_six():
    """So three points are never better than hazy."""
    assert chance(0, 3) == Fraction(1, 6)


@pytest.mark.parametrize(
    ("order", "tau"),
    [((1, 2, 4, 3, 5), 0.8), ((5, 1, 2, 3, 4), 0.2), ((1, 2, 3, 4, 5), 1.0)],
)
def test_inversions_are_kendalls_tau(order, tau):
    """Without ties, tau = 1 - 4k / n(n - 1): SciPy's values for these orders."""
    pairs = len(order) * (len(order) - 1)
    assert 1 - 4 * inversions(order) / pairs == pytest.approx(tau)


@pytest.mark.parametrize("order", list(permutations(range(5))))
def test_the_longest_run_in_order_is_as_long_as_any(order):
    """Brute force over every choice among five."""
    longest = max(
        size
        for size in range(6)
        for some in combinations(order, size)
        if all(a < b for a, b in pairwise(some))
    )
    run = [number for number in order if number in in_order(order)]
    assert run == sorted(run)
    assert len(run) == longest


def occasion(points: int) -> Occasion:
    """Return the first asking of the order of so many points."""
    digest = kept(Digest("A Book", points=tuple(Point(f"Event {n}") for n in range(points))))
    return Occasion(digest, next(iter(ORDER.sources(digest))))


def with_inversions(right: tuple[int, ...], wrong: int) -> tuple[int, ...]:
    """Return an order with exactly so many inversions, made by putting late ones early."""
    order: list[int] = []
    left = wrong
    for place, number in reversed(list(enumerate(right))):
        jump = min(left, len(right) - 1 - place)
        order.insert(jump, number)
        left -= jump
    assert left == 0
    return tuple(order)


@pytest.mark.parametrize(("among", "most", "probability"), LIMITS)
def test_an_order_is_clear_up_to_its_limit_and_hazy_beyond(among, most, probability):
    """Vivid without an inversion, clear up to the published limit, hazy with one more."""
    asked = occasion(among)
    right = ORDER.answer(asked).order

    def grade(wrong: int) -> Grade:
        return ORDER.mark(asked, Attempt(order=with_inversions(right, wrong))).grade

    assert grade(0) is Grade.VIVID
    assert grade(most) is (Grade.CLEAR if most else Grade.VIVID)
    assert grade(most + 1) is Grade.HAZY
    assert grade(among * (among - 1) // 2) is Grade.BLANK


@pytest.mark.parametrize("among", range(3, 8))
def test_blind_ordering_is_clear_in_one_of_twenty_and_hazy_in_one_of_four(among):
    """Over every order of up to seven points: the share of each grade or better."""
    asked = occasion(among)
    right = ORDER.answer(asked).order
    earned = Counter(ORDER.mark(asked, Attempt(order=order)).grade for order in permutations(right))
    better = Counter({g: sum(earned[b] for b in GRADES[GRADES.index(g) :]) for g in GRADES})
    assert better[Grade.CLEAR] <= factorial(among) / 20
    assert 0 < better[Grade.HAZY] <= factorial(among) / 4
