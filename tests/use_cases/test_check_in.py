"""Check-ins are facts about commitments: kept once, corrected, taken back, each with its dates."""

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from uuid import UUID, uuid4

import pytest

from cards.commitments import Act, Outcome, Pace
from cards.errors import CheckInMissing, CommitmentMissing, Conflict, Invalid
from cards.parts import PartKind
from service.use_cases.check_in import (
    MOST_A_DAY,
    Report,
    check_in,
    show_check_in,
    withdraw_check_in,
)
from service.use_cases.commitments import all_commitments, open_commitment, wants_word
from service.use_cases.decide import Ruling, decide
from service.use_cases.library import open_digest
from service.use_cases.mend_digest import remove_digest
from service.use_cases.preferences import Preferences, set_preferences
from tests.use_cases.house import House


@pytest.fixture
def promised(house: House, added: Callable[[], UUID]) -> UUID:
    """The first commitment of the digest."""
    return open_digest(house.desk, added()).kept.held(PartKind.COMMITMENT)[0].id


def test_a_check_in_is_kept_once(house: House, promised: UUID) -> None:
    """The same report twice is one fact, seen with the digest and with the commitment."""
    report = Report(uuid4(), promised, Outcome.KEPT, None, "At breakfast.", 2, "Hanne")
    for _ in range(2):
        check_in(house.desk, report)
    opened = open_commitment(house.desk, promised)
    (seen,) = opened.check_ins
    assert (seen.outcome, seen.note, seen.count, seen.witness) == (
        Outcome.KEPT,
        "At breakfast.",
        2,
        "Hanne",
    )
    assert (seen.day, seen.reported_on) == (house.now.date(), house.now.date())
    digest = open_digest(house.desk, opened.held.kept.digest_id)
    assert digest.check_ins == (seen,)
    assert show_check_in(house.desk, seen.id) == seen


def test_a_check_in_needs_a_commitment(house: House, promised: UUID) -> None:
    """A point is none, another reader's is none of ours, nor is one of a digest taken out."""
    digest_id = open_commitment(house.desk, promised).held.kept.digest_id
    point = open_digest(house.desk, digest_id).kept.held(PartKind.POINT)[0]
    other = house.another_reader()
    for desk, part in ((house.desk, point.id), (other.desk, promised), (house.desk, uuid4())):
        with pytest.raises(CommitmentMissing):
            check_in(desk, Report(uuid4(), part, Outcome.KEPT))
    remove_digest(house.desk, digest_id)
    with pytest.raises(CommitmentMissing):
        check_in(house.desk, Report(uuid4(), promised, Outcome.KEPT))
    with pytest.raises(CommitmentMissing):
        open_commitment(house.desk, promised)
    assert not wants_word(house.desk, promised)


@pytest.mark.parametrize(("days", "said"), [(1, "has not come yet"), (-1, "was made on")])
def test_a_check_in_is_about_a_day_it_can_be(
    house: House, promised: UUID, days: int, said: str
) -> None:
    """Neither about a day to come nor about one before the commitment was made."""
    day = house.now.date() + timedelta(days=days)
    with pytest.raises(Invalid, match=said) as refusal:
        check_in(house.desk, Report(uuid4(), promised, Outcome.KEPT, day))
    assert refusal.value.where == "day"
    assert open_commitment(house.desk, promised).check_ins == ()


def test_so_many_are_taken_about_a_day(house: House, promised: UUID) -> None:
    """What is more is refused and says what to do; another day takes as many again."""
    for _ in range(MOST_A_DAY):
        check_in(house.desk, Report(uuid4(), promised, Outcome.KEPT))
    with pytest.raises(Invalid, match="can count several deeds"):
        check_in(house.desk, Report(uuid4(), promised, Outcome.KEPT))
    house.now += timedelta(days=1)
    check_in(house.desk, Report(uuid4(), promised, Outcome.KEPT))


def test_an_id_belongs_to_one_check_in(house: House, promised: UUID) -> None:
    """Another report under the same id is refused, and the first one stands, on later days too."""
    report = Report(uuid4(), promised, Outcome.KEPT, house.now.date())
    first = check_in(house.desk, report)
    house.now += timedelta(days=1)
    with pytest.raises(Conflict):
        check_in(house.desk, replace(report, outcome=Outcome.MISSED))
    assert check_in(house.desk, report) == first
    assert open_commitment(house.desk, promised).check_ins == (first,)


def test_a_correction_takes_the_former_back(house: House, promised: UUID) -> None:
    """The former stays on record and counts no longer; what is not there cannot be corrected."""
    first = check_in(house.desk, Report(uuid4(), promised, Outcome.MISSED))
    corrected = Report(uuid4(), promised, Outcome.KEPT, instead_of=first.id)
    second = check_in(house.desk, corrected)
    assert check_in(house.desk, corrected) == second
    opened = open_commitment(house.desk, promised)
    assert {each.id: each.withdrawn_on for each in opened.check_ins} == {
        first.id: house.now.date(),
        second.id: None,
    }
    assert opened.held.tally.counts == {Outcome.KEPT: 1}
    for former in (first.id, uuid4()):
        with pytest.raises(CheckInMissing):
            check_in(house.desk, Report(uuid4(), promised, Outcome.KEPT, instead_of=former))
    assert len(open_commitment(house.desk, promised).check_ins) == 2


def test_what_is_taken_back_counts_until_then(house: House, promised: UUID) -> None:
    """Asked about a day before it was taken back, it counts; from that day on it does not."""
    fact = check_in(house.desk, Report(uuid4(), promised, Outcome.KEPT))
    said_on = house.now.date()
    house.now += timedelta(days=2)
    for _ in range(2):
        assert withdraw_check_in(house.desk, fact.id).withdrawn_on == house.now.date()
    before = open_commitment(house.desk, promised, on=said_on).held.stand
    after = open_commitment(house.desk, promised).held.stand
    assert before is not None
    assert after is not None
    assert [
        sum(period.done for period in stand.windows[-1].periods) for stand in (before, after)
    ] == [1, 0]
    with pytest.raises(CheckInMissing):
        withdraw_check_in(house.another_reader().desk, fact.id)
    with pytest.raises(CheckInMissing):
        show_check_in(house.desk, uuid4())


def test_a_day_once_fixed_moves_with_no_clock(house: House, promised: UUID) -> None:
    """A report keeps its days when the reader moves to another zone, or turns the day otherwise."""
    fact = check_in(house.desk, Report(uuid4(), promised, Outcome.KEPT))
    set_preferences(house.desk, Preferences(time_zone="Pacific/Auckland", turns_at=0))
    kept = show_check_in(house.desk, fact.id)
    assert (kept.day, kept.reported_on) == (fact.day, fact.reported_on)
    set_preferences(house.desk, Preferences(time_zone="Pacific/Pago_Pago"))
    stand = open_commitment(house.desk, promised, on=fact.day).held.stand
    assert stand is not None
    assert stand.pace is Pace.ON_COURSE


def test_a_day_earlier_by_the_clock_hides_nothing(house: House, added: Callable[[], UUID]) -> None:
    """Moved west on the day a digest came in, its commitments are still listed and opened."""
    house.now = house.now.replace(hour=11)
    set_preferences(house.desk, Preferences(time_zone="Pacific/Kiritimati"))
    part = open_digest(house.desk, added()).kept.held(PartKind.COMMITMENT)[0]
    set_preferences(house.desk, Preferences(time_zone="Pacific/Pago_Pago"))
    opened = open_commitment(house.desk, part.id)
    assert opened.day < opened.held.kept.commitment.entered_on
    assert opened.held.stand is not None
    assert opened.held.stand.pace is Pace.ON_COURSE
    listed = all_commitments(house.desk).by_pace[Pace.ON_COURSE]
    assert part.id in {each.id for each in listed}
    assert open_commitment(house.desk, part.id, opened.day).held.stand is None


def test_who_moves_west_can_still_say_and_decide(house: House, promised: UUID) -> None:
    """Where today has become the day before the commitment was made, today is no day before it."""
    house.now = house.now.replace(hour=6)
    set_preferences(house.desk, Preferences(time_zone="Pacific/Pago_Pago"))
    fact = check_in(house.desk, Report(uuid4(), promised, Outcome.KEPT))
    made_on = open_commitment(house.desk, promised).held.kept.commitment.made_on
    assert fact.day < made_on
    decide(house.desk, Ruling(uuid4(), promised, Act.PAUSE))
    assert open_commitment(house.desk, promised).held.stand is not None
