"""Which unasked items may be let in on a day."""

from dataclasses import replace
from uuid import UUID

from cards.items import KeptItem, items_of
from cards.kinds import KINDS
from cards.sitting import let_in
from tests.cards.digests import WHOLE, kept

UNASKED = [KeptItem(item, None) for item in items_of(kept(WHOLE))]


def test_all_kinds_are_let_in_in_turn():
    """One of each kind the digest makes before any kind has two."""
    made = {each.item.kind for each in UNASKED}
    chosen = let_in(UNASKED, len(made), {})
    assert {each.item.kind for each in chosen} == made
    assert [each.item.kind for each in chosen] == [kind for kind in KINDS if kind in made]
    assert len(let_in(UNASKED, 1_000, {})) == len(UNASKED)


def test_a_days_items_are_the_same_however_far_the_sitting_has_come():
    """Answering the first of them leaves the others as they were, of every kind."""
    more_themes = [
        KeptItem(replace(UNASKED[0].item, id=UUID(int=number)), None) for number in range(1, 9)
    ]
    waiting = [*UNASKED[:1], *more_themes, *UNASKED[1:]]
    first, *others = let_in(waiting, 6, {})
    rest = [each for each in waiting if each != first]
    assert let_in(rest, 6, {first.item.kind: 1}) == others


def test_without_places_nothing_is_let_in():
    """No places, or fewer than none."""
    assert let_in(UNASKED, 0, {}) == []
    assert let_in(UNASKED, -3, {}) == []
