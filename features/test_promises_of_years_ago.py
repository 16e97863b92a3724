"""Steps of `promises_of_years_ago.feature`."""

from datetime import date

from pytest_bdd import parsers, scenarios, then, when

from cards.answers import Grade
from cards.commitments import Act, Outcome, Pace
from cards.commitments.telling import told as told_of
from cards.kinds.base import KindName
from features.keeping_steps import DAY, days_to, told
from service.use_cases.letters import letter
from service.use_cases.preferences import Preferences, set_preferences, show_reader

scenarios("promises_of_years_ago.feature")


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


@when(told("the mail of {day:Day} is written"))
def mail_is_written(keeping, day):
    keeping.mira.on(day, 7)
    keeping.noted = letter(keeping.desk, show_reader(keeping.desk), "mira@example.org", "1", None)


@then(parsers.parse('of all four it names only the promise of "{book}"'))
def names_only(keeping, book):
    (named,) = keeping.noted.commitments
    assert (named.title, keeping.noted.more) == (book, 0)


@when(told('she says of "{book}" what came of it: {outcome:Outcome}'))
def came_of_it(keeping, book, outcome):
    keeping.decides(Act.CLOSE, keeping.books[book], outcome=outcome)


@when("she says so of all the others")
def of_all_others(keeping):
    for book in ("Walden", "Middlemarch"):
        came_of_it(keeping, book, Outcome.MISSED)
        keeping.mira.now += DAY


@when(parsers.parse('she renews the promise of "{book}"'))
def renews_promise(keeping, book):
    keeping.decides(Act.RENEW, keeping.books[book])


@when("she says that she wrote to Hanne on all fourteen evenings of March 2019")
def all_fourteen(keeping):
    for day in days_to(date(2019, 3, 4), date(2019, 3, 17)):
        keeping.says(Outcome.KEPT, day, keeping.books["Walden"])


@then(parsers.parse('of "{book}" she is told "{words}"'))
def told_of_book(keeping, book, words):
    assert told_of(keeping.stand(which=keeping.books[book])) == words


@then(told('of "{book}" it is {pace:Pace} on {day:Day}'))
def pace_of_book(keeping, book, pace, day):
    assert keeping.stand(day, keeping.books[book]).pace is pace


@then(parsers.parse('of all four only the promise of "{book}" was asked'))
def only_one_asked(keeping, book):
    assert keeping.noted == {keeping.ids[keeping.books[book]]}


@then(parsers.parse('of all four only the promises of "{one}" and "{other}" are asked'))
def only_two_asked(keeping, one, other):
    sits_daily(keeping, date(2026, 1, 11))
    assert keeping.noted == {keeping.ids[keeping.books[one]], keeping.ids[keeping.books[other]]}


@then(parsers.parse('each of the three was brought up once, with the question "{question}"'))
def each_once(keeping, question):
    three = [keeping.books[book] for book in ("Walden", "Middlemarch", "Emma")]
    assert sorted(keeping.noted) == sorted(keeping.ids[each] for each in three)
    assert {keeping.held(each).offer.question.value for each in three} == {question}


@then("nothing more is brought up today")
def nothing_more(keeping):
    assert keeping.brought_up() is None


@then('"Emma" is done, and is not brought up again')
def emma_is_done(keeping):
    assert keeping.stand(which=keeping.books["Emma"]).pace is Pace.DONE
    found = brought_up_until(keeping, date(2026, 1, 9))
    assert keeping.ids[keeping.books["Emma"]] not in found
    assert len(set(found)) > 1


@then(told("nothing is brought up on any day until {last:Day}"))
def nothing_on_any_day(keeping, last):
    keeping.says(Outcome.KEPT, which=3)
    assert set(brought_up_until(keeping, last)) == {None}
