"""In which order unasked items are let in."""

from collections import Counter
from uuid import UUID

from cards.items import KeptItem, items_of
from cards.kinds.base import KindName
from cards.parts import Care
from cards.planning import Unasked
from cards.planning.entering import entering
from cards.sitting import let_in
from tests.cards.digests import WHOLE, kept
from tests.cards.planning.libraries import fresh

BOOKS = [kept(WHOLE, start=1_000 * number) for number in range(3)]


def test_the_days_items_are_those_a_sitting_lets_in():
    """Day after day the kinds are those that `let_in` chooses, until none is left."""
    waiting = [KeptItem(item, None) for book in BOOKS for item in items_of(book)]
    counted = Counter((each.item.digest_id, each.item.kind) for each in waiting)
    unasked = [Unasked(book, Care.STEADY, kind, n) for (book, kind), n in counted.items()]
    order = [(unasked[each].book, unasked[each].kind) for each in entering(unasked, 5, 999)]
    for begin in range(0, len(order), 5):
        chosen = let_in(waiting, 5, {})
        found = order[begin : begin + 5]
        assert found == [(each.item.digest_id, each.item.kind) for each in chosen]
        waiting = [each for each in waiting if each not in chosen]
    assert not waiting


def test_no_more_are_let_in_than_the_days_hold():
    """Two a day for three days are six; at none a day there is none."""
    unasked = [fresh(100), Unasked(UUID(int=9), Care.CLOSE, KindName.THEME, 1)]
    assert entering(unasked, 2, 3).tolist() == [1, 0, 0, 0, 0, 0]
    assert entering(unasked, 0, 3).tolist() == []
    assert entering([], 2, 3).tolist() == []


def test_of_a_book_at_rest_nothing_is_let_in():
    """Its unasked items stay so."""
    assert entering([fresh(3, Care.RESTING), fresh(1)], 9, 9).tolist() == [1]
