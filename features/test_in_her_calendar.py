"""Steps of `in_her_calendar.feature`."""

from datetime import date
from uuid import UUID

import pytest
import recurring_ical_events
from icalendar import Calendar
from pytest_bdd import given, scenarios, then, when

from cards.commitments import Act, Rhythm
from features.keeping_steps import DAY, days_to, told
from service.use_cases.calendar import open_calendar
from service.use_cases.reminding import new_address, revoke_address

scenarios("in_her_calendar.feature")


@pytest.fixture
def address(keeping):
    """An address of her calendar."""
    return new_address(keeping.desk, "The wall")


@given(told("on {on:Day} she fell ill until {until:Day}"))
def fell_ill(keeping, on, until):
    keeping.mira.on(on)
    keeping.decides(Act.PAUSE, until=until)


@given(told("on {on:Day} she let it go"))
def let_go(keeping, on):
    keeping.mira.on(on)
    keeping.decides(Act.RELEASE, words="Hanne reads to me now.")


@when("her calendar is read")
def is_read(keeping, address):
    keeping.noted = Calendar.from_ical(open_calendar(keeping.desk, address.secret))


@when("she revokes the address of her calendar")
def revokes(keeping, address):
    assert open_calendar(keeping.desk, address.secret) is not None
    revoke_address(keeping.desk, address.address.id)


def shown(keeping, last, owner: UUID):
    """Return when what bears an id is shown, from the day it was promised on."""
    events = recurring_ical_events.of(keeping.noted).between(keeping.made_on, last + DAY)
    return sorted(each.start for each in events if each["UID"] == f"{owner}@catchword")


@then(told("the days shown until {last:Day} are those on which a word is expected"))
def as_expected(keeping, last):
    measure = keeping.held().kept.commitment.measure
    expected = list(Rhythm(measure, keeping.made_on).expected(keeping.made_on, last))
    assert shown(keeping, last, keeping.ids[0]) == expected


@then(told("the first of them is {first:Day}"))
def first_shown(keeping, first):
    assert shown(keeping, date(2027, 1, 1), keeping.ids[0])[0] == first


@then(told("the promise is shown on {number:d} days, the last of them {last:Day}"))
def so_many(keeping, number, last):
    found = shown(keeping, date(2027, 1, 1), keeping.ids[0])
    assert (len(found), found[-1]) == (number, last)


@then(told("the promise is a task due on {day:Day}"))
def is_task(keeping, day):
    (task,) = keeping.noted.walk("VTODO")
    assert task["UID"] == f"{keeping.ids[0]}@catchword"
    assert task["DUE"].dt == day


@then(told("the promise is shown on {one:Day} and on {other:Day}, and on no day between"))
def none_between(keeping, one, other):
    found = shown(keeping, other, keeping.ids[0])
    assert found[-2:] == [one, other]


@then("the promise is not shown")
def not_shown(keeping):
    named = {str(each["UID"]) for each in keeping.noted.walk() if "UID" in each}
    assert named == {f"{keeping.desk.reader}@catchword"}


@then("the sitting is shown every day of the year at one hour of the clock in London")
def at_one_hour(keeping):
    last = date(2026, 12, 31)
    found = shown(keeping, last, keeping.desk.reader)
    assert [each.date() for each in found] == days_to(keeping.made_on, last)
    assert len({each.time() for each in found}) == 1
    assert {each.utcoffset().total_seconds() for each in found} == {0, 3600}


@then("it opens nothing any more")
def opens_nothing(keeping, address):
    assert open_calendar(keeping.desk, address.secret) is None


@then("no guess opens anything")
def no_guess(keeping):
    assert open_calendar(keeping.desk, "A" * 43) is None
