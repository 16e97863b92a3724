"""The seconds each kind takes."""

from cards.kinds.base import KindName
from cards.sitting import pace
from cards.sitting.pace import USUAL


def test_every_kind_has_a_pace_before_anything_is_measured():
    """A new reader's sitting can be composed as well."""
    assert pace({}) == USUAL
    assert set(USUAL) == set(KindName)


def test_the_readers_own_median_counts_once_enough_is_measured():
    """From five answers on nothing but the reader's own seconds counts."""
    assert pace({KindName.THEME: (90, 100, 110, 95, 400)})[KindName.THEME] == 100


def test_one_slow_answer_does_not_tell_a_pace():
    """With one answer measured the usual seconds still stand."""
    assert pace({KindName.THEME: (600,)})[KindName.THEME] == USUAL[KindName.THEME]
    assert pace({KindName.THEME: (600, 600, 600)})[KindName.THEME] == 600
