"""Steps of `year_of_promises.feature`."""

from pytest_bdd import parsers, scenarios, then, when

from cards.commitments import Act
from cards.yearly.telling import figures, standing
from features.keeping_steps import told
from service.use_cases.yearly_review import yearly_review

scenarios("year_of_promises.feature")


def promise_of(keeping, book):
    (found,) = (each for each in yearly_review(keeping.desk, 2026).promises if each.title == book)
    return found


@when(told('on {on:Day} she says of "{book}": {outcome:Outcome}'))
def says_of_book(keeping, on, book, outcome):
    keeping.mira.on(on)
    keeping.says(outcome, which=keeping.books[book])


@when(told('on {on:Day} she lets go what "{book}" asks: "{reason}"'))
def lets_go(keeping, on, book, reason):
    keeping.mira.on(on)
    keeping.decides(Act.RELEASE, keeping.books[book], words=reason)


@when(parsers.parse("she looks at the year {year:d}"))
def looks_at(keeping, year):
    keeping.noted = yearly_review(keeping.desk, year)


@then(parsers.parse('the year is told as "{words}"'))
def year_is_told(keeping, words):
    assert figures(yearly_review(keeping.desk)) == words


@then(parsers.parse('of "{book}" it says "{words}"'))
def says_of_it(keeping, book, words):
    promise = promise_of(keeping, book)
    said = [standing(promise), *(each.told for each in promise.changes)]
    assert any(words in each for each in said), said


@then(parsers.parse('she is asked of "{book}": "{question}"'))
def asked_of_book(keeping, book, question):
    assert promise_of(keeping, book).renewing.question.value == question


@then(parsers.parse("the year {year:d} is as it was"))
def as_it_was(keeping, year):
    assert yearly_review(keeping.desk, year) == keeping.noted


@then(parsers.parse('"{one}" and "{other}" stand side by side: "{rule}"'))
def side_by_side(keeping, one, other, rule):
    (pair,) = yearly_review(keeping.desk, 2026).pairs
    assert {pair.one.title, pair.other.title} == {one, other}
    assert pair.rule == rule
