"""The calendar: what it is made from, and what opens it."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from uuid import UUID, uuid4

from icalendar import Calendar

from cards.commitments import Act, Pace
from service.use_cases.calendar import calendar_facts, open_calendar
from service.use_cases.decide import Ruling, decide
from service.use_cases.reminding import new_address, revoke_address, set_reminders
from tests.use_cases.house import House

PAGES = "https://books.example/"


def test_it_is_made_from_the_day_and_the_commitments(
    house: House, added: Callable[[], UUID]
) -> None:
    """Each commitment comes with its book, its pace and its link; the hour is that of the mail."""
    added()
    set_reminders(house.desk, mail=False, to=None, at=21)
    facts = calendar_facts(replace(house.desk, address=PAGES))

    assert facts.today == date(2026, 1, 5)
    assert facts.remind_at == 21
    assert facts.sitting.minutes == 10
    assert facts.sitting.items > 0
    assert facts.sitting.due > 0
    assert [each.title for each in facts.commitments] == ["Silas Marner"] * 2
    for each in facts.commitments:
        assert each.address == f"{PAGES}commitments/{each.id}/check-in"
        assert each.pace is Pace.ON_COURSE


def test_an_address_opens_it_until_it_is_revoked(house: House, added: Callable[[], UUID]) -> None:
    """What was made opens the calendar, what was guessed or revoked opens nothing."""
    added()
    made = new_address(house.desk, "Desk")
    written = open_calendar(house.desk, made.secret)

    assert written is not None
    todays = {f"{each.id}@catchword" for each in calendar_facts(house.desk).commitments}
    assert todays <= {event["UID"] for event in Calendar.from_ical(written).events}
    for guessed in ("", made.secret[:-1], made.secret.swapcase(), "a" * 43, str(made.address.id)):
        assert open_calendar(house.desk, guessed) is None
    revoke_address(house.desk, made.address.id)
    assert open_calendar(house.desk, made.secret) is None


def test_an_address_opens_nothing_of_another_reader(house: House) -> None:
    """Each reader's addresses open that reader's calendar alone."""
    made = new_address(house.desk, "Desk")

    assert open_calendar(house.another_reader().desk, made.secret) is None


def test_what_is_released_leaves_it(house: House, added: Callable[[], UUID]) -> None:
    """A released commitment is in the calendar no longer."""
    added()
    released, kept = (each.id for each in calendar_facts(house.desk).commitments)
    decide(house.desk, Ruling(uuid4(), released, Act.RELEASE, words="Hanne moved away."))
    written = house.desk.feeds.to_calendar(calendar_facts(house.desk)).decode()

    assert str(released) not in written
    assert str(kept) in written
