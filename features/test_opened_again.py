"""Steps of `opened_again.feature`."""

from datetime import timedelta
from uuid import uuid4

from pytest_bdd import given, parsers, scenarios, then, when

from cards.answers import Grade
from cards.rereading import Reason, minutes_a_page
from service.use_cases.rereading import (
    ReadAgain,
    earlier_rereadings,
    list_rereading,
    record_rereading,
)

scenarios("opened_again.feature")

KNOWN = (12, 20, 42, 110, 131, 139)
"""The pages her digest names."""


@given("its theme came back blank twice running")
def blank_twice(mira):
    for _ in range(2):
        mira.answer(mira.theme().item.id, Grade.BLANK)
        mira.now += timedelta(days=1)


@given(parsers.parse("nothing was heard of the letters to old friends until {day:d} {month} 2026"))
def silence(mira, day, month):
    mira.at(day, month)


@when("she asks which books to open again")
def asks(mira):
    mira.noted = list_rereading(mira.desk)


@when(parsers.parse('she reads "{pages}" of it again in {minutes:d} minutes'))
def reads(mira, pages, minutes):
    digest_id = mira.reports[0].kept.id
    record_rereading(mira.desk, ReadAgain(uuid4(), digest_id, pages=pages, minutes=minutes))
    mira.noted = list_rereading(mira.desk)


@when("it comes back clear")
def clear(mira):
    mira.answer(mira.theme().item.id, Grade.CLEAR)


@then('"Silas Marner" is named because of its theme')
def because_of_theme(mira):
    (book,) = mira.noted.books
    assert [each.reason for each in book.reasons] == [Reason.THEME]
    assert book.title == "Silas Marner"


@then('"Silas Marner" is named because of the letters')
def because_of_letters(mira):
    (book,) = mira.noted.books
    stalled = [each.sentence for each in book.reasons if each.reason is Reason.STALLED]
    assert any("I will write to one old friend" in each for each in stalled)


@then("every page named stands in her digest, or next to one that does")
def pages_known(mira):
    named = {
        page for each in mira.noted.books[0].stretches for page in range(each.first, each.last + 1)
    }
    assert named == {page + off for page in KNOWN for off in (-1, 0, 1)}


@then("the minutes are two for each page")
def two_a_page(mira):
    assert mira.noted.books[0].minutes == 2 * 3 * len(KNOWN)


@then("no book is to be opened again")
def nothing(mira):
    assert mira.noted.books == ()


@then("its theme is asked within three days, due or not")
def asked_soon(mira):
    theme = mira.theme().item.id
    for _ in range(3):
        mira.now += timedelta(days=1)
        if theme in {item.kept.item.id for item in mira.sitting().items}:
            return
    raise AssertionError


@then("she is told that none came back before and one since")
def helped(mira):
    (told,) = earlier_rereadings(mira.desk)
    assert "none came back before and one since" in told.helped.sentence


@then("a page takes her three minutes from then on")
def own_pace(mira):
    assert minutes_a_page([each.rereading for each in earlier_rereadings(mira.desk)]) == 3
