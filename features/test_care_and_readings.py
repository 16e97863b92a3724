"""Steps of `care_and_readings.feature`."""

from datetime import date

from pytest_bdd import given, scenarios, then, when

from cards.answers import Grade
from cards.parts import Care
from service.use_cases.add_digest import Status
from service.use_cases.care import set_care
from service.use_cases.library import list_digests
from service.use_cases.readings import beside, other_readings

scenarios("care_and_readings.feature")

AGAIN = """\
# Silas Marner

George Eliot · 186 pages

Finished: 11 February 2028

## Summary

I thought it a tale of gold; it is a tale of weaving. What was cut from the loom by one lie is
tied again thread by thread, by neighbours who never knew they were doing so.

## Points

1. A community is held together by small talk at the Rainbow. (p. 55)
2. Godfrey learns that what is refused once is not offered again. (p. 160)

## Commitments

1. I will sit in the village hall for an hour every Friday in March.

## Quotations

> Nobody's likely to know better than I do. (p. 165)
"""


def due_days(mira):
    return {key: item.due_on for key, item in mira.items().items() if item.kept.memory}


def cares(mira, care):
    set_care(mira.desk, mira.reports[0].kept.id, care)


@given("Mira answered everything that day")
def answered(mira):
    mira.answers_everything(Grade.CLEAR)
    mira.noted = due_days(mira)


@when("she lets it rest")
def rests(mira):
    cares(mira, Care.RESTING)


@when("she keeps it close")
def close(mira):
    cares(mira, Care.CLOSE)


@when("she keeps it steadily")
def steadily(mira):
    cares(mira, Care.STEADY)


@when("she reads it again and hands in another digest two years later")
def reads_again(mira):
    mira.source, mira.file = AGAIN, "silas-marner-again.docx"
    mira.adds()


@when("she corrects the year she finished it in, and hands the file in again")
def corrects_the_year(mira):
    mira.source = mira.source.replace("Finished: 4 January 2026", "Finished: 4 January 2025")
    mira.adds()


@then("nothing of it is asked that day")
def nothing_asked(mira):
    assert mira.sitting().items == ()


@then("it is asked as on the first day")
def asked(mira):
    assert len(mira.sitting().items) > 3


@then("every item is due no later than before")
def no_later(mira):
    now = due_days(mira)
    assert all(now[key] <= mira.noted[key] for key in mira.noted)
    assert now != mira.noted


@then("every item is due no sooner than before")
def no_sooner(mira):
    now = due_days(mira)
    assert all(now[key] >= mira.noted[key] for key in mira.noted)
    assert now != mira.noted


@then("every due day is as it was")
def as_it_was(mira):
    assert due_days(mira) == mira.noted


@then("both readings stand in her library")
def both_stand(mira):
    assert [report.status for report in mira.reports] == [Status.ADDED, Status.ADDED]
    assert len(list_digests(mira.desk).entries) == 2


@then("each is shown beside the other, the earlier first")
def side_by_side(mira):
    first, second = (report.kept for report in mira.reports)
    assert [kept.id for kept in other_readings(mira.desk, first.id)] == [second.id]
    shown = beside(mira.desk, second.id, first.id)
    assert (shown.earlier.id, shown.later.id) == (first.id, second.id)


@then("there is one digest, and it says the other year")
def one_digest(mira):
    assert mira.reports[1].status is Status.CHANGED
    (only,) = list_digests(mira.desk).entries
    assert only.kept.finished_on == date(2025, 1, 4)
