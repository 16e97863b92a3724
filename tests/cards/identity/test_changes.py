"""What an edit did to the parts of a digest, and the reader's word on it."""

from dataclasses import replace
from uuid import UUID

import pytest

from cards.digest import Commitment, Digest, Point
from cards.errors import PartMissing
from cards.identity import Became, afresh, changes, continued, keep
from cards.parts import PartKind
from tests.cards.digests import kept, new_ids

BEFORE = kept(
    Digest(
        "Walden",
        points=(
            Point("He builds a hut by the pond for twenty-eight dollars"),
            Point("He counts what his beans cost him and what they bring"),
            Point("Winter animals keep him company"),
        ),
        commitments=(Commitment("Walk to work on Mondays"),),
    )
)
HUT, BEANS, WINTER = BEFORE.held(PartKind.POINT)


def edited(*points, commitments=("Walk to work on Mondays",), known=BEFORE):
    """Return the digest with other points, as it is kept then."""
    digest = replace(
        known.digest(),
        points=tuple(map(Point, points)),
        commitments=tuple(map(Commitment, commitments)),
    )
    return keep(digest, known, new_ids(500))


def told(before, now):
    """Return what became of which part, in short."""
    return [
        (each.became, each.part.text, each.before and each.before.id)
        for each in changes(before, now)
    ]


def test_the_same_digest_has_no_changes():
    """Nor has one whose points only changed places."""
    assert changes(BEFORE, BEFORE) == ()
    assert changes(BEFORE, edited(WINTER.text, HUT.text, BEANS.text)) == ()


def test_a_small_rewording_is_told_and_keeps_its_history():
    """The part is the same, its words are others."""
    words = "He builds himself a hut by the pond for twenty-eight dollars"
    now = edited(words, BEANS.text, WINTER.text)
    assert told(BEFORE, now) == [(Became.REWORDED, words, HUT.id)]
    assert now.held(PartKind.POINT)[0].id == HUT.id


def test_another_claim_in_the_place_of_one_starts_afresh():
    """It is told whose place it took, and the other is not told as retired besides."""
    now = edited(HUT.text, "Most men lead lives of quiet desperation", WINTER.text)
    assert told(BEFORE, now) == [
        (Became.REPLACED, "Most men lead lives of quiet desperation", BEANS.id)
    ]


def test_what_is_new_gone_or_back_is_told():
    """A point more is fresh, one fewer is retired, one that returns is restored."""
    fewer = edited(HUT.text, WINTER.text)
    assert told(BEFORE, fewer) == [(Became.RETIRED, BEANS.text, BEANS.id)]
    again = edited(HUT.text, BEANS.text, WINTER.text, known=fewer)
    assert told(fewer, again) == [(Became.RESTORED, BEANS.text, BEANS.id)]
    more = edited(HUT.text, BEANS.text, WINTER.text, "Spring breaks the ice in a day")
    assert told(BEFORE, more) == [(Became.FRESH, "Spring breaks the ice in a day", None)]


def test_the_reader_can_say_that_it_is_the_same_point_after_all():
    """The fresh part takes on the retired one's identity, and says what it says now."""
    words = "Most men lead lives of quiet desperation"
    now = edited(HUT.text, words, WINTER.text)
    fresh = now.held(PartKind.POINT)[1]
    settled = continued(now, fresh.id, BEANS.id)
    assert [part.id for part in settled.held(PartKind.POINT)] == [HUT.id, BEANS.id, WINTER.id]
    assert settled.digest() == now.digest()
    assert settled.part(fresh.id).retired
    assert told(BEFORE, settled) == [(Became.REWORDED, words, BEANS.id)]


def test_the_reader_can_say_that_it_is_another_point():
    """The reworded part gets an identity of its own; the history stays with the old words."""
    words = "He builds himself a hut by the pond for twenty-eight dollars"
    now = edited(words, BEANS.text, WINTER.text)
    settled = afresh(now, HUT.id, HUT, new_ids(900))
    assert settled.digest() == now.digest()
    assert settled.held(PartKind.POINT)[0].id == UUID(int=900)
    assert settled.part(HUT.id) == replace(HUT, retired=True)


def test_overruling_twice_comes_back_to_where_it_began():
    """Afresh and then the same after all leaves the identities as they were."""
    words = "He builds himself a hut by the pond for twenty-eight dollars"
    now = edited(words, BEANS.text, WINTER.text)
    settled = afresh(now, HUT.id, HUT, new_ids(900))
    back = continued(settled, UUID(int=900), HUT.id)
    assert [part.id for part in back.held(PartKind.POINT)] == [HUT.id, BEANS.id, WINTER.id]


@pytest.mark.parametrize(
    ("part", "former"),
    [
        (HUT.id, UUID(int=77)),
        (UUID(int=77), HUT.id),
        (HUT.id, BEANS.id),
        (BEFORE.held(PartKind.COMMITMENT)[0].id, HUT.id),
    ],
)
def test_what_can_not_be_said_of_a_part_is_refused(part, former):
    """An unknown part, one still held, or one of another kind continues nothing."""
    with pytest.raises(PartMissing):
        continued(BEFORE, part, former)


def test_a_part_that_is_not_held_can_not_start_afresh():
    """Unknown or retired, it has nothing to begin with."""
    gone = edited(HUT.text, WINTER.text)
    for part_id in (UUID(int=77), BEANS.id):
        with pytest.raises(PartMissing):
            afresh(gone, part_id, None, new_ids(900))
