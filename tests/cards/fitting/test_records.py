"""What considering weights came to, told as a whole."""

import pytest

from cards.fitting.records import Comparison, Considered, Verdict
from cards.kinds.base import KindName
from cards.weighting import PUBLISHED


@pytest.mark.parametrize(
    ("general", "kind", "changes"),
    [(False, False, False), (True, False, True), (False, True, True)],
)
def test_anything_adopted_is_a_change(general, kind, changes):
    """A change for every kind or for one is a change; the sentence is that for every kind."""
    comparison = Comparison(738_000, 0.4, 0.3, 0.01)
    considered = Considered(
        Verdict(None, 100, 20, comparison, general, "All of them."),
        (Verdict(KindName.THEME, 100, 20, comparison, kind, "One of them."),),
        PUBLISHED,
    )
    assert considered.adopted is changes
    assert considered.sentence == "All of them."
    assert comparison.gain == pytest.approx(0.1)
