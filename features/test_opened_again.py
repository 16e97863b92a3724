"""Steps of `opened_again.feature`."""

from datetime import timedelta
from uuid import uuid4

from pytest_bdd import given, parsers, scenarios, then, when

from cards.answers import Grade
from cards.commitments import Act
from cards.parts import Care, PartKind
from cards.rereading import Reason, minutes_a_page
from features.keeping_steps import told
from service.use_cases.care import set_care
from service.use_cases.decide import Ruling, decide
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


@given(parsers.parse("it is kept {care}, and nothing it asks is left open"))
def cared_for(mira, care):
    kept = mira.reports[0].kept
    set_care(mira.desk, kept.id, Care(care))
    for promise in kept.held(PartKind.COMMITMENT):
        decide(mira.desk, Ruling(uuid4(), promise.id, Act.RELEASE, words="Settled."))


@when(told("{day:Day} comes, and she asks which books to open again"))
def asks_on(mira, day):
    mira.on(day)
    asks(mira)


@when(told("she reads it again on {day:Day}"))
def reads_on(mira, day):
    mira.on(day)
    record_rereading(mira.desk, ReadAgain(uuid4(), mira.reports[0].kept.id))
    asks(mira)


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


@then(parsers.parse('she is to read around both quotations, "{first}" and "{second}"'))
def around_quotations(mira, first, second):
    (book,) = mira.noted.books
    assert [each.place for each in book.stretches] == [first, second]


@then("what stands there is shown beside each")
def shown_beside(mira):
    for each, words in zip(mira.noted.books[0].stretches, ("angels", "hearth"), strict=True):
        assert words in each.quotations[0].text


@then("the minutes are two for each page of them")
def two_a_page_of_them(mira):
    assert mira.noted.books[0].minutes == 2 * 3 * 2


@then(parsers.parse('"Silas Marner" is named {times}, because of the year'))
def because_of_year(mira, times):
    reasons = [[each.reason for each in book.reasons] for book in mira.noted.books]
    assert reasons == ([] if times == "never" else [[Reason.YEAR]])


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
