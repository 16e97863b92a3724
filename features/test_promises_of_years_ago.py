"""Steps of `promises_of_years_ago.feature`."""

from datetime import date

import pytest
from pytest_bdd import given, parsers, scenarios, then, when

from cards.answers import Grade
from cards.commitments import Act, Outcome, Pace
from cards.commitments.telling import told as told_of
from cards.kinds.base import KindName
from features.keeping_steps import DAY, day_of, days_to, told
from service.use_cases.preferences import Preferences, set_preferences

scenarios("promises_of_years_ago.feature")


@pytest.fixture
def books():
    """What number the promise of each book has."""
    return {}


@given(told("on {on:Day} Mira hands in the digests of 2019"))
def hands_in(keeping, books, on, datatable):
    keeping.mira.on(on)
    for number, (title, finished, promise) in enumerate(datatable[1:]):
        keeping.promises(promise, finished=day_of(finished), title=title)
        books[title] = number


def brought_up_until(keeping, last):
    """Note what is brought up on each day until one."""
    found = []
    for day in days_to(keeping.mira.now.date(), last):
        keeping.mira.on(day)
        found.append(keeping.brought_up())
    return found


@when(told("she sits down every day until {last:Day}, and leaves nothing unasked"))
def sits_daily(keeping, last):
    set_preferences(keeping.desk, Preferences(unasked_a_day=100, minutes=60))
    keeping.noted = set()
    for day in days_to(keeping.mira.now.date(), last):
        keeping.mira.on(day)
        while items := keeping.mira.sitting().items:
            item = items[0].kept.item
            keeping.noted |= {item.part_id} if item.kind is KindName.RESTATE else set()
            keeping.mira.answer(item.id, Grade.CLEAR)


@when(told("she sits down every day until {last:Day}, and says nothing of what is brought up"))
def says_nothing(keeping, last):
    keeping.noted = brought_up_until(keeping, last)


@when(told('she says of "{book}" what came of it: {outcome:Outcome}'))
def came_of_it(keeping, books, book, outcome):
    keeping.decides(Act.CLOSE, books[book], outcome=outcome)


@when("she says so of all the others")
def of_all_others(keeping, books):
    for book in ("Walden", "Middlemarch"):
        came_of_it(keeping, books, book, Outcome.MISSED)
        keeping.mira.now += DAY


@when(parsers.parse('she renews the promise of "{book}"'))
def renews_promise(keeping, books, book):
    keeping.decides(Act.RENEW, books[book])


@when("she says that she wrote to Hanne on all fourteen evenings of March 2019")
def all_fourteen(keeping, books):
    for day in days_to(date(2019, 3, 4), date(2019, 3, 17)):
        keeping.says(Outcome.KEPT, day, books["Walden"])


@then(parsers.parse('of "{book}" she is told "{words}"'))
def told_of_book(keeping, books, book, words):
    assert told_of(keeping.stand(which=books[book])) == words


@then(told('of "{book}" it is {pace:Pace} on {day:Day}'))
def pace_of_book(keeping, books, book, pace, day):
    assert keeping.stand(day, books[book]).pace is pace


@then(parsers.parse('of all four only the promise of "{book}" was asked'))
def only_one_asked(keeping, books, book):
    assert keeping.noted == {keeping.ids[books[book]]}


@then(parsers.parse('of all four only the promises of "{one}" and "{other}" are asked'))
def only_two_asked(keeping, books, one, other):
    sits_daily(keeping, date(2026, 1, 11))
    assert keeping.noted == {keeping.ids[books[one]], keeping.ids[books[other]]}


@then(parsers.parse('each of the three was brought up once, with the question "{question}"'))
def each_once(keeping, books, question):
    three = [books[book] for book in ("Walden", "Middlemarch", "Emma")]
    assert sorted(keeping.noted) == sorted(keeping.ids[each] for each in three)
    assert {keeping.held(each).offer.question.value for each in three} == {question}


@then("nothing more is brought up today")
def nothing_more(keeping):
    assert keeping.brought_up() is None


@then('"Emma" is done, and is not brought up again')
def emma_is_done(keeping, books):
    assert keeping.stand(which=books["Emma"]).pace is Pace.DONE
    found = brought_up_until(keeping, date(2026, 1, 9))
    assert keeping.ids[books["Emma"]] not in found
    assert len(set(found)) > 1


@then(told("nothing is brought up on any day until {last:Day}"))
def nothing_on_any_day(keeping, last):
    keeping.says(Outcome.KEPT, which=3)
    assert set(brought_up_until(keeping, last)) == {None}
