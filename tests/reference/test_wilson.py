"""Wilson bounds against published vectors.

Wilson 1927; Newcombe 1998, Stat. Med. 17, 857–872. The bounds to four places were computed with
50-digit decimal arithmetic and agree with statsmodels' `proportion_confint(method="wilson")`;
81/263 and 15/148 are Newcombe's own examples.
"""

import pytest
from statsmodels.stats.proportion import proportion_confint

from cards.retention.wilson import wilson

VECTORS = [
    (81, 263, 0.2553, 0.3662),
    (15, 148, 0.0624, 0.1605),
    (0, 20, 0.0, 0.1611),
    (1, 29, 0.0061, 0.1718),
    (9, 10, 0.5958, 0.9821),
    (45, 50, 0.7864, 0.9565),
]


@pytest.mark.parametrize(("recalled", "asked", "lower", "upper"), VECTORS)
def test_the_bounds_are_those_published(
    recalled: int, asked: int, lower: float, upper: float
) -> None:
    """Both bounds agree with the published ones to all four places given."""
    assert wilson(recalled, asked) == pytest.approx((lower, upper), abs=5e-5)


def test_all_that_came_back_mirrors_nothing_that_did() -> None:
    """What holds of nothing recalled holds of nothing forgotten, turned round."""
    lower, upper = wilson(0, 20)
    assert wilson(20, 20) == pytest.approx((1 - upper, 1 - lower))


def test_of_nothing_asked_nothing_is_known() -> None:
    """Without a single answer the bounds are as wide as can be."""
    assert wilson(0, 0) == (0.0, 1.0)


@pytest.mark.parametrize("asked", [1, 2, 7, 50, 999, 1_000_000])
@pytest.mark.parametrize("share", [0.0, 0.013, 0.5, 0.91, 1.0])
def test_the_bounds_are_those_of_statsmodels(share: float, asked: int) -> None:
    """Whatever was asked, down to one answer and up to a million."""
    recalled = round(share * asked)
    theirs = proportion_confint(recalled, asked, method="wilson")
    assert wilson(recalled, asked) == pytest.approx(theirs, abs=1e-7)
