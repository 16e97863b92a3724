"""How much is known now."""

from math import sqrt

import pytest

from cards.kinds.base import KindName
from cards.retention.known import Known, Recall, known_now
from tests.cards.retention.telling import BOOK, OTHER

NEXT, THEME = KindName.NEXT, KindName.THEME


def test_what_is_known_is_the_sum_of_what_is_expected():
    """By book, by kind and altogether; what was never asked is only counted."""
    found = known_now(
        [
            Recall(NEXT, BOOK, 0.9),
            Recall(NEXT, BOOK, 0.5),
            Recall(THEME, BOOK, None),
            Recall(THEME, OTHER, 0.8),
        ]
    )
    assert found.whole.expected == pytest.approx(2.2)
    assert (found.whole.asked, found.whole.unasked) == (3, 1)
    assert found.whole.mean == pytest.approx(2.2 / 3)
    assert found.whole.spread == pytest.approx(sqrt(0.09 + 0.25 + 0.16))
    assert list(found.books) == [BOOK, OTHER]
    assert found.books[BOOK].mean == pytest.approx(0.7)
    assert (found.books[BOOK].asked, found.books[BOOK].unasked) == (2, 1)
    assert list(found.kinds) == [THEME, NEXT]
    assert found.kinds[THEME] == Known(1, 1, 0.8, pytest.approx(0.16))


def test_of_what_was_never_asked_nothing_is_known():
    """No mean is made up for it, nor for no item at all."""
    assert known_now([Recall(NEXT, BOOK, None)]).books[BOOK].mean is None
    empty = known_now([])
    assert (empty.whole, empty.books, empty.kinds) == (Known(), {}, {})
    assert (empty.whole.mean, empty.whole.spread) == (None, 0)
