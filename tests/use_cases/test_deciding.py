"""Decisions about commitments, and how commitments enter with their digests and rest."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta
from uuid import UUID, uuid4

import pytest
from sqlalchemy import text

from cards.answers import Grade
from cards.commitments import Act, Measure, Outcome, Pace, Period, Stand
from cards.digest import Commitment
from cards.errors import CommitmentMissing, Conflict, DecisionMissing, Invalid, InvalidDigest
from cards.kinds.base import KindName
from service.use_cases.add_digest import add_digest
from service.use_cases.bringing_up import brought_up
from service.use_cases.check_in import Report, check_in
from service.use_cases.commitments import all_commitments, list_commitments, open_commitment
from service.use_cases.decide import Ruling, decide, withdraw_decision
from service.use_cases.entering import enter_missing
from service.use_cases.items import list_items
from service.use_cases.library import open_digest
from service.use_cases.mend_digest import mend_digest
from service.use_cases.preferences import Preferences, set_preferences
from service.use_cases.sit import todays_sitting
from tests.use_cases.house import DIGEST, House

WEEKLY = "Write to Clara every Sunday."
OVER = "Write to Clara within two weeks."


def shelve(house: House, *commitments: str, finished_on: date | None = None) -> UUID:
    """Hand in a digest that asks for some things, and return its id."""
    asked = tuple(Commitment(each) for each in commitments)
    digest = replace(DIGEST, commitments=asked)
    kept = add_digest(house.desk, "silas.docx", house.shelf.put(digest)).kept
    if finished_on is not None:
        mend_digest(house.desk, kept.id, replace(kept.digest(), finished_on=finished_on))
    return kept.id


def promised(house: House, *commitments: str, finished_on: date | None = None) -> UUID:
    """Hand in a digest that asks for some things, and return the id of the first."""
    digest_id = shelve(house, *commitments, finished_on=finished_on)
    found = list_commitments(house.desk).commitments
    return next(each.id for each in found if each.kept.digest_id == digest_id)


def stand(house: House, commitment_id: UUID, on: date | None = None) -> Stand:
    """Return how a commitment stands."""
    found = open_commitment(house.desk, commitment_id, on).held.stand
    assert found is not None
    return found


def restate(house: House, commitment_id: UUID) -> UUID:
    """Return the id of the item that asks for a commitment again."""
    items = list_items(house.desk, limit=200).items
    return next(each.kept.item.id for each in items if each.kept.item.part_id == commitment_id)


def test_a_new_wording_keeps_memory_and_history(house: House) -> None:
    """Reworded, its item keeps its memory and its reports; taken back, the digest says it again."""
    weekly = promised(house, WEEKLY)
    check_in(house.desk, Report(uuid4(), weekly, Outcome.KEPT))
    item = restate(house, weekly)
    memory = house.answer(item, Grade.CLEAR).item.memory
    words = "When the church bell rings on Sunday, I will write to Clara."
    decided = decide(house.desk, Ruling(uuid4(), weekly, Act.REWORD, words=f" {words} "))
    opened = open_commitment(house.desk, weekly)
    assert opened.held.kept.text == words
    assert opened.held.stand is not None
    assert opened.held.stand.life.former == (WEEKLY,)
    assert len(opened.check_ins) == 1
    assert restate(house, weekly) == item
    assert house.items()[item].memory == memory
    withdraw_decision(house.desk, decided.id)
    assert open_commitment(house.desk, weekly).held.kept.text == WEEKLY
    digest = open_digest(house.desk, opened.held.kept.digest_id).kept.digest()
    assert [each.text for each in digest.commitments] == [WEEKLY]
    assert house.items()[item].memory == memory


def test_what_a_new_wording_says_is_what_it_asks(house: House) -> None:
    """The measure follows from the new words, half from halving, and what was from renewing."""
    weekly = promised(house, WEEKLY)
    words = "I will write to Clara twice a week."
    decide(house.desk, Ruling(uuid4(), weekly, Act.REWORD, words=words))
    assert stand(house, weekly).life.term.measure == Measure(2, Period.WEEK)
    house.now += timedelta(minutes=1)
    decide(house.desk, Ruling(uuid4(), weekly, Act.HALVE))
    assert stand(house, weekly).life.term.measure == Measure(1, Period.WEEK)
    house.now += timedelta(minutes=1)
    decide(house.desk, Ruling(uuid4(), weekly, Act.RENEW))
    assert stand(house, weekly).life.term.measure == Measure(1, Period.WEEK)


def test_an_edit_by_hand_is_read_anew_until_a_decision(house: House) -> None:
    """Mended in the digest, what is asked follows the words; once decided, an edit changes none."""
    weekly = promised(house, WEEKLY)
    digest_id = open_commitment(house.desk, weekly).held.kept.digest_id

    def say(words: str) -> None:
        kept = open_digest(house.desk, digest_id).kept.digest()
        mend_digest(house.desk, digest_id, replace(kept, commitments=(Commitment(words),)))

    say("Write to Clara every Saturday.")
    assert stand(house, weekly).life.term.measure == Measure(1, Period.WEEK, on=("SA",))
    decide(house.desk, Ruling(uuid4(), weekly, Act.REWORD, words="Write to Clara every Friday."))
    say("Write to Clara every Friday evening.")
    assert stand(house, weekly).life.term.measure == Measure(1, Period.WEEK, on=("FR",))


def test_a_book_finished_another_day_moves_what_it_asked(house: House) -> None:
    """When the day the book was finished is corrected, what counted from it counts anew."""
    today = house.now.date()
    letter = promised(house, OVER, finished_on=today - timedelta(days=30))
    assert stand(house, letter).pace is Pace.UNJUDGED
    digest_id = open_commitment(house.desk, letter).held.kept.digest_id
    kept = open_digest(house.desk, digest_id).kept.digest()
    mend_digest(house.desk, digest_id, replace(kept, finished_on=today))
    assert stand(house, letter).pace is Pace.ON_COURSE
    assert stand(house, letter).ends_on == today + timedelta(days=14)


def test_what_is_over_rests_until_it_is_renewed(house: House) -> None:
    """Past its end on arrival, it is not asked but brought up; renewed, it is asked again."""
    letter = promised(house, OVER, finished_on=house.now.date() - timedelta(days=400))
    set_preferences(house.desk, Preferences(unasked_a_day=100, minutes=120))

    def asked() -> set[UUID]:
        return {
            each.kept.item.part_id
            for each in todays_sitting(house.desk).items
            if each.kept.item.kind is KindName.RESTATE
        }

    assert asked() == set()
    up = brought_up(house.desk)
    assert up is not None
    assert up.id == letter
    decide(house.desk, Ruling(uuid4(), letter, Act.RENEW))
    assert asked() == {letter}
    assert brought_up(house.desk) is None


def test_one_is_brought_up_a_day_and_each_in_its_turn(house: House) -> None:
    """Of many old ones every day brings up one; passed over, it does not stand in the way."""
    long_ago = house.now.date() - timedelta(days=400)
    shelve(house, *(f"Write to {name} within two weeks." for name in "ABC"), finished_on=long_ago)
    up = set()
    for _ in range(3):
        found = brought_up(house.desk)
        assert found is not None
        up.add(found.id)
        house.now += timedelta(days=1)
    assert len(up) == 3
    found = brought_up(house.desk)
    assert found is not None
    decide(house.desk, Ruling(uuid4(), found.id, Act.CLOSE, outcome=Outcome.PARTLY))
    assert brought_up(house.desk) is None
    house.now += timedelta(days=1)
    left = brought_up(house.desk)
    assert left is not None
    assert left.id != found.id


def test_a_decision_is_kept_once(house: House) -> None:
    """The same again changes nothing, another under its id is refused; taken back it is over."""
    weekly = promised(house, WEEKLY)
    ruling = Ruling(uuid4(), weekly, Act.PAUSE, words="Away.")
    first = decide(house.desk, ruling)
    assert decide(house.desk, ruling) == first
    with pytest.raises(Conflict):
        decide(house.desk, replace(ruling, words="Ill."))
    assert stand(house, weekly).pace is Pace.PAUSED
    for _ in range(2):
        withdraw_decision(house.desk, first.id)
    assert stand(house, weekly).pace is Pace.ON_COURSE
    (kept,) = open_commitment(house.desk, weekly).decisions
    assert kept.withdrawn_on == house.now.date()


def test_anothers_commitment_cannot_be_decided(house: House) -> None:
    """Neither another reader's commitment nor their decision is found."""
    weekly = promised(house, WEEKLY)
    decided = decide(house.desk, Ruling(uuid4(), weekly, Act.RENEW))
    other = house.another_reader()
    with pytest.raises(CommitmentMissing):
        decide(other.desk, Ruling(uuid4(), weekly, Act.RENEW))
    with pytest.raises(DecisionMissing):
        withdraw_decision(other.desk, decided.id)
    assert all_commitments(other.desk).by_pace == {}
    assert len(open_commitment(house.desk, weekly).decisions) == 1


@pytest.mark.parametrize(
    ("ruling", "refusal"),
    [
        ({"act": Act.RESUME}, Invalid),
        ({"act": Act.MOVE, "until": date(2027, 1, 1)}, Invalid),
        ({"act": Act.CLOSE}, Invalid),
        ({"act": Act.REWORD, "words": "  "}, Invalid),
        ({"act": Act.REWORD, "words": "w" * 2001}, Invalid),
        ({"act": Act.MEASURE, "measure": Measure(0, Period.DAY)}, Invalid),
        ({"act": Act.PAUSE, "day": date(2999, 1, 1)}, Invalid),
        ({"act": Act.RENEW, "day": date(1999, 1, 1)}, Invalid),
    ],
    ids=lambda value: value["act"].value if isinstance(value, dict) else "",
)
def test_what_cannot_be_decided_leaves_all_as_it_was(
    house: House, ruling: dict[str, object], refusal: type[Exception]
) -> None:
    """A decision that cannot be is refused, and neither a fact nor a word of the digest changes."""
    weekly = promised(house, WEEKLY)
    before = open_commitment(house.desk, weekly)
    revision = open_digest(house.desk, before.held.kept.digest_id).kept.revision
    with pytest.raises((refusal, InvalidDigest)):
        decide(house.desk, Ruling(uuid4(), weekly, **ruling))  # type: ignore[arg-type]
    assert open_commitment(house.desk, weekly) == before
    assert open_digest(house.desk, before.held.kept.digest_id).kept.revision == revision


def test_commitments_kept_before_they_were_live_enter_once(
    house: House, added: Callable[[], UUID]
) -> None:
    """A library of before has its commitments entered when it is opened, retired ones too."""
    added()
    with house.store.engines.writing.begin() as connection:
        connection.execute(text("DELETE FROM commitments"))
    assert all_commitments(house.desk).by_pace == {}
    assert enter_missing(house.desk) == 1
    assert enter_missing(house.desk) == 0
    found = [each for those in all_commitments(house.desk).by_pace.values() for each in those]
    assert {each.kept.text for each in found} == {each.text for each in DIGEST.commitments}


def test_a_day_asked_about_knows_only_what_was_known_on_it(house: House) -> None:
    """Before it came in it does not stand; later facts are not known on an earlier day."""
    weekly = promised(house, WEEKLY)
    entered = house.now.date()
    assert open_commitment(house.desk, weekly, entered - timedelta(days=1)).held.stand is None
    house.now += timedelta(days=20)
    decide(house.desk, Ruling(uuid4(), weekly, Act.RELEASE, words="Clara has moved in."))
    assert stand(house, weekly).pace is Pace.RELEASED
    assert stand(house, weekly, entered).pace is Pace.ON_COURSE
    assert [each.stand for each in list_commitments(house.desk, on=entered).commitments] != []
