"""What the answers add up to is the same however it was brought together."""

from collections.abc import Callable
from datetime import date, timedelta
from random import Random
from uuid import UUID, uuid4

import pytest

from cards.answers import Grade
from cards.retention.reading import read
from cards.retention.tally import Tally, TallyKey
from service.use_cases import tallying
from service.use_cases.answer import record_answer, take_back
from service.use_cases.items import list_items
from service.use_cases.ports import Desk
from service.use_cases.preferences import Preferences, set_preferences
from service.use_cases.recording import GivenAnswer
from service.use_cases.tallying import bring_on, tallied
from tests.use_cases.house import House


def from_scratch(desk: Desk) -> dict[TallyKey, Tally]:
    """Return what the answers add up to, read anew."""
    with desk.store.writing() as work:
        kept = work.tallies.all(desk.reader)
        work.tallies.add(
            desk.reader, {key: Tally(*(-each for each in tally)) for key, tally in kept.items()}
        )
        work.tallies.reach(desk.reader, work.readers.get(desk.reader).days.of(desk.now()).min)
        return tallied(work, desk.reader)  # and leaves it all uncommitted


def test_a_life_of_answers_adds_up(house: House, added: Callable[[], UUID]) -> None:
    """Brought on day by day, with late answers and some taken back, it is as read anew."""
    added()
    chance = Random(7)
    items = [each.kept.item.id for each in list_items(house.desk).items]
    given: list[UUID] = []
    grades = list(Grade)
    for day in range(60):
        house.now += timedelta(days=1)
        for item in chance.sample(items, 3):
            late = timedelta(days=chance.choice([0, 0, 0, 1, 2, 3, 9]))
            answer = GivenAnswer(uuid4(), item, chance.choice(grades), house.now - late)
            record_answer(house.desk, answer)
            given.append(answer.id)
        if chance.random() < 0.3:
            take_back(house.desk, chance.choice(given), uuid4())
        if day % 5 == 0:
            bring_on(house.desk)
    with house.desk.store.reading() as work:
        kept = work.tallies.all(house.desk.reader)
        told = tallied(work, house.desk.reader)
    assert kept
    assert kept != told
    assert told == from_scratch(house.desk)
    assert 0 < read(told).whole().n < len(given)


def test_what_comes_in_meanwhile_is_counted(
    house: House, added: Callable[[], UUID], monkeypatch: pytest.MonkeyPatch
) -> None:
    """An answer for an old day that arrives while the tallies are brought on is in them."""
    added()
    items = [each.kept.item.id for each in list_items(house.desk).items]
    for item in items:
        record_answer(house.desk, GivenAnswer(uuid4(), item, Grade.CLEAR))
    begun = house.now
    house.now += timedelta(days=9)
    begin = tallying._begin

    def late(desk: Desk) -> date:
        answer = GivenAnswer(uuid4(), items[0], Grade.BLANK, begun + timedelta(days=3))
        record_answer(house.desk, answer)
        return begin(desk)

    monkeypatch.setattr(tallying, "_begin", late)
    bring_on(house.desk)
    with house.desk.store.reading() as work:
        whole = read(work.tallies.all(house.desk.reader)).whole()
    assert (whole.n, whole.recalled) == (1, 0)
    with house.desk.store.reading() as work:
        assert tallied(work, house.desk.reader) == from_scratch(house.desk)


def test_nothing_answered_adds_up_to_nothing(house: House) -> None:
    """An empty library has no tallies, and bringing them on twice changes nothing."""
    bring_on(house.desk)
    bring_on(house.desk)
    with house.desk.store.reading() as work:
        assert tallied(work, house.desk.reader) == {}


@pytest.mark.parametrize("back", ["the clock", "the date line"])
def test_what_is_answered_on_a_day_told_already_is_counted(
    house: House, added: Callable[[], UUID], back: str
) -> None:
    """A clock set right that ran ahead, or a flight over the date line, loses no answer."""
    added()
    set_preferences(house.desk, Preferences(time_zone="Pacific/Kiritimati"))
    items = [each.kept.item.id for each in list_items(house.desk).items]
    start = house.now.replace(hour=14, minute=30)  # 04:30 of the next day there
    house.now = start
    for item in items:
        record_answer(house.desk, GivenAnswer(uuid4(), item, Grade.CLEAR))
    house.now = start + timedelta(days=400 if back == "the clock" else 5)
    bring_on(house.desk)
    if back == "the clock":
        house.now = start + timedelta(days=3)
    else:  # 25 hours behind: for an hour, its day is the one before yesterday’s here
        set_preferences(house.desk, Preferences(time_zone="Pacific/Pago_Pago"))
        house.now = house.now.replace(minute=45)
    for item in items:
        record_answer(house.desk, GivenAnswer(uuid4(), item, Grade.HAZY))
    house.now += timedelta(days=9)
    with house.desk.store.reading() as work:
        told = tallied(work, house.desk.reader)
    assert told == from_scratch(house.desk)
    assert read(told).whole().n == len(items)
