"""What a reader decided about a commitment holds, even where its digest is edited by hand."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import date, timedelta
from uuid import UUID, uuid4

import pytest

from cards.commitments import Act
from cards.digest import Commitment
from cards.errors import Invalid
from cards.parts import PartKind
from service.use_cases.commitments import open_commitment
from service.use_cases.decide import Ruling, decide, withdraw_decision
from service.use_cases.library import open_digest
from service.use_cases.mend_digest import mend_digest
from tests.use_cases.house import House

TWICE = "When the tea is poured, I will ask Hanne two questions."


@pytest.fixture
def digest_id(added: Callable[[], UUID]) -> UUID:
    """The digest, in the library."""
    return added()


def promised(house: House, digest_id: UUID) -> Sequence[UUID]:
    """The ids of its commitments."""
    return [part.id for part in open_digest(house.desk, digest_id).kept.held(PartKind.COMMITMENT)]


def reworded_by_hand(house: House, digest_id: UUID, words: str) -> None:
    """Write other words for the first commitment into the digest."""
    digest = open_digest(house.desk, digest_id).kept.digest()
    edited = (Commitment(words), *digest.commitments[1:])
    mend_digest(house.desk, digest_id, replace(digest, commitments=edited))


def test_a_wording_taken_back_leaves_what_was_edited_since(house: House, digest_id: UUID) -> None:
    """A new wording taken back after the digest was edited by hand does not undo the edit."""
    first, _ = promised(house, digest_id)
    decision = decide(house.desk, Ruling(uuid4(), first, Act.REWORD, words=TWICE))
    edited = TWICE.replace("two", "three")
    reworded_by_hand(house, digest_id, edited)
    for _ in range(2):
        withdraw_decision(house.desk, decision.id)
        assert open_commitment(house.desk, first).held.kept.text == edited


@pytest.mark.parametrize("act", [Act.START, Act.REWORD])
def test_what_came_to_touch_health_is_not_halved(house: House, digest_id: UUID, act: Act) -> None:
    """Nor after a decision that keeps the words it was about (design: never halved)."""
    first, _ = promised(house, digest_id)
    decide(house.desk, Ruling(uuid4(), first, act, words=TWICE if act is Act.REWORD else ""))
    reworded_by_hand(
        house, digest_id, "When the tea is poured, I will ask Hanne two questions on insulin."
    )
    house.now += timedelta(days=90)
    offer = open_commitment(house.desk, first).held.offer
    assert offer is not None
    assert Act.REWORD in offer.acts
    assert Act.HALVE not in offer.acts
    with pytest.raises(Invalid, match="health or medicine"):
        decide(house.desk, Ruling(uuid4(), first, Act.HALVE))


def test_a_started_commitment_is_told_in_the_words_it_has_now(
    house: House, digest_id: UUID
) -> None:
    """Its start stays the reader's; its words are those of the digest."""
    first, _ = promised(house, digest_id)
    house.now += timedelta(days=1)
    decide(house.desk, Ruling(uuid4(), first, Act.START))
    reworded_by_hand(house, digest_id, TWICE)
    stand = open_commitment(house.desk, first).held.stand
    assert stand is not None
    assert stand.life.text == TWICE
    assert stand.life.term.start == house.now.date()


def test_the_day_a_book_was_finished_can_be_corrected_again(house: House, digest_id: UUID) -> None:
    """A slip into a day to come, corrected, leaves what the book asked made on its true day."""
    first, _ = promised(house, digest_id)
    true = date(2025, 12, 1)
    for finished_on in (date(2052, 12, 1), true):
        digest = open_digest(house.desk, digest_id).kept.digest()
        mend_digest(house.desk, digest_id, replace(digest, finished_on=finished_on))
    assert open_commitment(house.desk, first).held.kept.commitment.made_on == true


def test_a_day_is_moved_within_a_life(house: House, digest_id: UUID) -> None:
    """No last day is moved to the end of time."""
    first, _ = promised(house, digest_id)
    words = "By Friday I will write one letter to Hanne."
    decide(house.desk, Ruling(uuid4(), first, Act.REWORD, words=words))
    with pytest.raises(Invalid, match="more than 100 years off") as refusal:
        decide(house.desk, Ruling(uuid4(), first, Act.MOVE, until=date.max))
    assert refusal.value.where == "until"
