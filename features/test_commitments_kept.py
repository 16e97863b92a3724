"""Steps of `commitments_kept.feature`."""

from dataclasses import replace
from datetime import date, timedelta

import pytest
from pytest_bdd import scenarios, then, when

from cards.answers import Grade
from cards.commitments import Act, Outcome, Pace, Rhythm
from cards.commitments.telling import progress
from cards.errors import Invalid
from features.keeping_steps import DAY, day_of, days_to, told
from service.use_cases.check_in import Report, check_in, withdraw_check_in
from service.use_cases.commitments import open_commitment, wants_word
from service.use_cases.preferences import Preferences, set_preferences

scenarios("commitments_kept.feature")


# What is said, and when


@when(told("on {on:Day} she pauses it until {until:Day}"))
def pauses(keeping, on, until):
    keeping.mira.on(on)
    keeping.decides(Act.PAUSE, until=until)


@when("she tells the same of both, and pauses the mill from 12 to 18 January")
def same_of_both(keeping):
    keeping.mira.on(date(2026, 1, 12))
    keeping.decides(Act.PAUSE, which=1, until=date(2026, 1, 18))
    for day, outcome in ((6, Outcome.KEPT), (14, Outcome.PARTLY), (20, Outcome.MISSED)):
        keeping.mira.on(date(2026, 1, max(day, 12)))
        for which in (0, 1):
            keeping.says(outcome, date(2026, 1, day), which)


@when(told("she keeps it to the letter until {last:Day}"))
def keeps_it(keeping, last):
    measure = keeping.held().kept.commitment.measure
    due = set(Rhythm(measure, keeping.made_on).expected(keeping.made_on, last))
    keeping.noted = []
    for day in days_to(keeping.made_on, last):
        keeping.mira.on(day)
        if day in due:
            keeping.says(Outcome.KEPT)
        keeping.noted += keeping.paces(day, day)
    assert len(due) >= 3


@when(told("she does so on {number:d} of the five evenings"))
def some_evenings(keeping, number):
    for evening in (5, 7, 9, 6, 8)[:number]:
        keeping.mira.on(date(2026, 1, 9))
        keeping.says(Outcome.KEPT, date(2026, 1, evening))


@when(told("she says at 02:00 on Monday {day:Day}: kept"))
def at_two(keeping, day):
    assert day.strftime("%A") == "Monday"
    keeping.mira.on(day, 2)
    keeping.says(Outcome.KEPT)


@when(told("at {hour:d}:{minute:d} on {day:Day} she says: kept"))
def at_an_hour(keeping, hour, minute, day):
    keeping.mira.on(day, hour, minute)
    keeping.says(Outcome.KEPT)


@when(told("she says each night at 01:30 until {last:Day} that she kept it"))
def each_night(keeping, last):
    for day in days_to(keeping.made_on, last):
        keeping.mira.on(day + DAY, 1, 30)
        keeping.says(Outcome.KEPT)
    keeping.noted = keeping.paces(keeping.made_on, last)


@when(told('on {on:Day} she moves to "{zone}"'))
def moves(keeping, on, zone):
    keeping.mira.on(on)
    keeping.noted = keeping.paces(keeping.made_on, on - DAY)
    set_preferences(keeping.desk, Preferences(time_zone=zone))
    keeping.mira.now += timedelta(days=2)


@when(told("on {on:Day} she corrects that: {outcome:Outcome}"))
def corrects(keeping, on, outcome):
    keeping.mira.on(on)
    former = keeping.reported[-1]
    keeping.says(outcome, former.day, instead_of=former.id)


@when(told("on {on:Day} she takes that back"))
def takes_back(keeping, on):
    keeping.mira.on(on)
    withdraw_check_in(keeping.desk, keeping.reported[-1].id)


@when("she says it over in that day's sitting")
def says_it_over(keeping):
    (asked,) = keeping.mira.sitting().items
    assert asked.kept.item.part_id == keeping.ids[0]
    keeping.mira.answer(asked.kept.item.id, Grade.CLEAR)


@when(told('on {on:Day} she says: kept, twice, "{note}" and {witness} saw it'))
def says_how_often(keeping, on, note, witness):
    keeping.mira.on(on)
    keeping.says(Outcome.KEPT, count=2, note=note, witness=witness)


@when("her telephone sends that once more")
def once_more(keeping):
    kept = keeping.reported[-1]
    keeping.mira.now += timedelta(hours=1)
    again = check_in(keeping.desk, Report(kept.id, kept.commitment_id, kept.outcome))
    assert again == kept


@when(told("on {on:Day} she tells the same of each, each in another order"))
def each_in_another_order(keeping, on, datatable):
    facts = [(said, day_of(day)) for said, day in datatable]
    orders = (facts, facts[::-1], facts[2:] + facts[:2])
    for which, order in enumerate(orders):
        for said, day in order:
            keeping.mira.on(on, 19, which)
            if said == "paused for three weeks":
                keeping.decides(Act.PAUSE, which, day=day, until=day + 20 * DAY)
            elif said == "renewed":
                keeping.decides(Act.RENEW, which, day=day)
            else:
                keeping.says(Outcome(said), day, which)


@when(told("on {on:Day} she says of {day:Day} what cannot be"))
def what_cannot_be(keeping, on, day):
    keeping.mira.on(on)
    with pytest.raises(Invalid) as refusal:
        keeping.says(Outcome.KEPT, day)
    keeping.noted = str(refusal.value)


# How it stands


@then("it was on course on every one of those days")
def on_course_throughout(keeping):
    assert set(keeping.noted) == {Pace.ON_COURSE}


@then(told("both stand alike on every day from {first:Day} to {last:Day}"))
@then(told("all stand alike on every day from {first:Day} to {last:Day}"))
def alike(keeping, first, last):
    paces = [keeping.paces(first, last, which) for which in range(len(keeping.ids))]
    assert len(paces) > 1
    assert all(each == paces[0] for each in paces)
    assert len(set(paces[0])) > 1


@then(told("what she said is about {day:Day}"))
def is_about(keeping, day):
    assert keeping.reported[-1].day == day


@then("what she said is about the days it was about")
def about_the_same(keeping):
    kept = open_commitment(keeping.desk, keeping.ids[0]).check_ins
    assert [each.day for each in kept] == [date(2026, 1, 18), date(2026, 1, 11)]
    assert sorted(kept, key=lambda each: each.day) == keeping.reported


@then("it stood on every day as it did")
def stood_as_it_did(keeping):
    last = keeping.made_on + DAY * (len(keeping.noted) - 1)
    assert keeping.paces(keeping.made_on, last) == keeping.noted


@then("both words are on record, the first one taken back")
def both_on_record(keeping):
    kept = {each.id: each for each in open_commitment(keeping.desk, keeping.ids[0]).check_ins}
    _, former, corrected = keeping.reported
    assert kept[corrected.id] == corrected
    assert kept[former.id] == replace(former, withdrawn_on=corrected.reported_on)


@then("she is asked whether she kept it")
def asked_whether(keeping):
    assert wants_word(keeping.desk, keeping.ids[0])


@then(told("she is asked no more until {last:Day}"))
def asked_no_more(keeping, last):
    for day in days_to(keeping.reported[-1].day, last):
        keeping.mira.on(day, 20)
        assert not wants_word(keeping.desk, keeping.ids[0])


@then(told("she is asked again on {day:Day}"))
def asked_again(keeping, day):
    keeping.mira.on(day)
    asked_whether(keeping)


@then("her note and her witness are on record")
def note_and_witness(keeping):
    (kept,) = open_commitment(keeping.desk, keeping.ids[0]).check_ins
    assert (kept.note, kept.witness, kept.deeds) == ("The storm scene.", "Hanne", 2)


@then(told('on {day:Day} she is told of "{words}"'))
def told_of_progress(keeping, day, words):
    assert progress(keeping.stand(day)) == words


@then(told('she is told "{refusal}"'))
def is_refused(keeping, refusal):
    assert keeping.noted == refusal


@then("nothing of it is kept")
def nothing_kept(keeping):
    assert open_commitment(keeping.desk, keeping.ids[0]).check_ins == ()
