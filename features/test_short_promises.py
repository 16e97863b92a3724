"""Steps of `short_promises.feature`."""

from datetime import date

from pytest_bdd import parsers, scenarios, then, when

from cards.answers import Grade
from cards.commitments import Act, Outcome
from cards.kinds.base import KindName
from features.keeping_steps import days_to, told
from service.use_cases.commitments import open_commitment

scenarios("short_promises.feature")


@when(parsers.parse("she did so on {number:d} of the evenings"))
def did_so(keeping, number):
    for evening in (5, 7, 9, 6, 8)[:number]:
        keeping.mira.on(date(2026, 1, 9))
        keeping.says(Outcome.KEPT, date(2026, 1, evening))
    keeping.mira.on(date(2026, 1, 5))


@when(told("she sits down every day until {last:Day}"))
def sits_down(keeping, last):
    keeping.noted = []
    for day in days_to(keeping.mira.now.date(), last):
        keeping.mira.on(day)
        while items := keeping.mira.sitting().items:
            item = items[0].kept.item
            keeping.noted += [day] if item.kind is KindName.RESTATE else []
            keeping.mira.answer(item.id, Grade.CLEAR)


@when(told("later on {on:Day} she pauses it for a journey until {until:Day}"))
def pauses_for_journey(keeping, on, until):
    keeping.mira.on(on, 20)
    keeping.decides(Act.PAUSE, until=until, words="A journey.")


@then(told("it was said over on {first:Day}, and last on {last:Day}"))
def said_over(keeping, first, last):
    assert (keeping.noted[0], keeping.noted[-1]) == (first, last)


@then(parsers.parse('her sitting brings it up with the question "{question}"'))
def brings_it_up(keeping, question):
    assert keeping.brought_up() == keeping.ids[0]
    assert keeping.held().offer.question.value == question


@then("she may renew, reword, release or close it")
def may_do(keeping):
    assert keeping.held().offer.acts == (Act.RENEW, Act.REWORD, Act.RELEASE, Act.CLOSE)


@then(told("it is not brought up on any day until {last:Day}"))
def not_brought_up(keeping, last):
    for day in days_to(keeping.mira.now.date(), last):
        keeping.mira.on(day)
        assert keeping.brought_up() is None


@then("what she said in the first week is still on record")
def still_on_record(keeping):
    kept = open_commitment(keeping.desk, keeping.ids[0]).check_ins
    assert sorted(each.day.day for each in kept) == [5, 7, 9]
