"""Items: what a kept digest makes, and how each stands."""

from dataclasses import replace
from datetime import date

import pytest

from cards.answers import Grade
from cards.identity import keep
from cards.items import HELD_FROM, KeptItem, Standing, item_id, items_of, reconcile
from cards.kinds import KINDS
from cards.kinds.base import KindName
from cards.parts import PartKind
from cards.schedule import Memory
from tests.cards.digests import WHOLE, kept, new_ids

KNOWN = kept()


def again(digest, known=KNOWN):
    """Keep a digest that is known already; new parts get ids from 1000."""
    return keep(digest, known, new_ids(1000))


def test_every_part_makes_its_items():
    """A theme, commitments and quotations make one of each kind they can, in the order of kinds."""
    made = items_of(KNOWN)
    kinds = [item.kind for item in made]
    assert kinds == sorted(kinds, key=list(KINDS).index)
    numbers = {
        KindName.THEME: 1,
        KindName.RESTATE: 3,
        KindName.COMPLETE: 3,
        KindName.SOURCE: 3,
        KindName.ORDER: 1,
        KindName.PLACE: 3,
        KindName.ACROSS: 0,
    }
    assert {kind: kinds.count(kind) for kind in numbers} == numbers
    assert len({item.id for item in made}) == len(made)
    assert all(item.id == item_id(item.part_id, item.kind) for item in made)


def test_a_removed_digest_makes_no_items():
    """Taken out whole, it asks nothing."""
    assert items_of(replace(KNOWN, removed=True)) == ()


def test_reconcile_retires_what_is_no_longer_made():
    """An item whose source is gone is retired; restored, it is as it was."""
    known = items_of(KNOWN)
    without = again(replace(WHOLE, commitments=WHOLE.commitments[1:]))
    now = reconcile(items_of(without), known)
    assert {item.id for item in now} == {item.id for item in known}
    gone = [item for item in now if item.retired]
    assert [item.part_id for item in gone] == [KNOWN.held(PartKind.COMMITMENT)[0].id]
    assert set(reconcile(items_of(again(WHOLE, without)), now)) == set(known)


@pytest.mark.parametrize(
    ("stability", "grade", "standing"),
    [
        (HELD_FROM, Grade.CLEAR, Standing.HELD),
        (HELD_FROM - 0.1, Grade.VIVID, Standing.SETTLING),
        (400.0, Grade.BLANK, Standing.FADED),
        (0.5, Grade.HAZY, Standing.SETTLING),
    ],
)
def test_how_an_item_stands(stability, grade, standing):
    """Faded when it last came back blank, held from three weeks of stability."""
    day = date(2026, 3, 1)
    item = items_of(KNOWN)[0]
    memory = Memory(stability, 5.0, day, day, grade, 1, day)
    assert KeptItem(item, memory).standing is standing
    assert KeptItem(item, None).standing is Standing.UNASKED
