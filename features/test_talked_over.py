"""Steps of `talked_over.feature`."""

from datetime import UTC, date, datetime
from io import BytesIO
from uuid import uuid4

from pypdf import PdfReader
from pytest_bdd import given, parsers, scenarios, then, when

from cards.commitments import Act, Outcome
from cards.commitments.telling import measure_in_words
from cards.parts import PartKind
from cards.talk import Stage, length_of
from cards.yearly import Likeness
from features.keeping_steps import told
from service.use_cases.add_digest import add_digest
from service.use_cases.check_in import Report, check_in
from service.use_cases.commitments import open_commitment
from service.use_cases.decide import Ruling, decide
from service.use_cases.library import open_digest
from service.use_cases.talking import HeldTalk, record_talk, talk_sheet, talks_of, withdraw_talk
from service.use_cases.yearly_review import yearly_review

scenarios("talked_over.feature")

VISIT = "I will visit old Betty every Sunday."
WALDEN = """\
# Walden

Henry David Thoreau

## Summary

A man builds a house by a pond, and finds how little he needs.

## Commitments

1. I will write to no old friend by hand on the first Saturday of each month.
"""


def book(mira):
    return open_digest(mira.desk, mira.reports[0].kept.id).kept


def asked(mira):
    return [part.text for part in book(mira).held(PartKind.COMMITMENT)]


@given(
    parsers.parse('she wrote to a friend in February, and let the question at tea go, "{reason}"')
)
def wrote_and_let_go(mira, reason):
    tea, friend = book(mira).held(PartKind.COMMITMENT)
    mira.now = datetime(2026, 2, 7, 20, 0, tzinfo=UTC)
    check_in(mira.desk, Report(uuid4(), friend.id, Outcome.KEPT))
    decide(mira.desk, Ruling(uuid4(), tea.id, Act.RELEASE, words=reason))
    mira.noted = (tea.text, reason)


@given('"Walden" asks her to write to no old friend by hand')
def walden(mira):
    add_digest(mira.desk, "walden.md", WALDEN.encode())


@when(parsers.parse("she lays out a talk of {minutes:d} minutes"))
def lays_out(mira, minutes):
    mira.noted = talk_sheet(mira.desk, book(mira).id, length_of(minutes))


@when("she talks it over with Hanne, and they resolve to visit old Betty every Sunday")
def talks(mira):
    mira.noted = HeldTalk(uuid4(), book(mira).id, listener="Hanne", resolved=(VISIT,))
    record_talk(mira.desk, mira.noted)


@when(told("on {day:Day} she and Hanne resolve to visit old Betty every Sunday"))
def talks_on(mira, day):
    mira.on(day)
    talks(mira)


@when("she takes the talk back")
def takes_back(mira):
    withdraw_talk(mira.desk, book(mira).id, mira.noted.id)


@when("she sends the same talk again")
def again(mira):
    record_talk(mira.desk, mira.noted)


@when("the year is over")
def over(mira):
    mira.now = datetime(2027, 1, 3, 20, 0, tzinfo=UTC)
    mira.following = yearly_review(mira.desk)


@when("she looks back on the year")
def looks_back(mira):
    mira.following = yearly_review(mira.desk, 2026)


@then(parsers.parse("its parts take {minutes:d} minutes together"))
def together(mira, minutes):
    assert sum(each.minutes for each in mira.noted.sections) == minutes


@then("nothing she reads from shows the theme, an order or a place")
def nothing_shown(mira):
    read = [line for each in mira.noted.sections for line in each.lines]
    words = [line.words for line in read]
    points = [part.text for part in book(mira).held(PartKind.POINT)]
    (theme,) = book(mira).held(PartKind.THEME)
    assert not any(line.beside for line in read)
    assert theme.text not in words
    assert sorted(points) == sorted(each for each in words if each in points)
    assert [each for each in words if each in points] != points


@then("the sheet has one page to talk by and one to check by")
def two_pages(mira):
    first, second = PdfReader(BytesIO(mira.desk.press.talk(mira.noted))).pages
    assert "treachery" not in first.extract_text()
    assert "treachery" in second.extract_text()


@then("it ends with one question back")
def question_back(mira):
    assert mira.noted.sections[-1].stage is Stage.BACK


@then("the digest asks it of her from that day on")
def asks_it(mira):
    assert asked(mira)[-1] == VISIT


@then("the talk with Hanne is on record")
def on_record(mira):
    (talk,) = talks_of(mira.desk, book(mira).id)
    assert (talk.listener, talk.day) == ("Hanne", date(2026, 1, 5))


def visits(mira, day=None):
    promise = book(mira).held(PartKind.COMMITMENT)[-1]
    return open_commitment(mira.desk, promise.id, on=day).held


@then(told("the visits are asked once a week, on Sunday, from {day:Day} on"))
def visits_are_asked(mira, day):
    term = visits(mira).stand.life.term
    assert measure_in_words(term.measure) == "once a week, on Sunday"
    assert visits(mira).stand.life.asked_from == day


@then(told("the visits stand {pace:Pace} on {day:Day}, and {later:Pace} on {after:Day}"))
def visits_stand(mira, pace, day, later, after):
    assert visits(mira, day).stand.pace is pace
    assert visits(mira, after).stand.pace is later


@then("no talk is on record")
def no_talk(mira):
    assert talks_of(mira.desk, book(mira).id) == []


@then("the digest still asks what was resolved")
def still_asks(mira):
    assert asked(mira).count(VISIT) == 1


@then("it is on record once, and the digest asks it once")
def once(mira):
    assert len(talks_of(mira.desk, book(mira).id)) == 1
    assert asked(mira).count(VISIT) == 1


@then("its review counts one check-in kept")
def counts_one(mira):
    assert mira.following.year == 2026
    assert dict(mira.following.counts) == {Outcome.KEPT: 1}


@then("says that the question at tea was released, and why")
def released(mira):
    text, reason = mira.noted
    (gone,) = mira.following.changed
    assert (gone.text, gone.changes[0].told) == (text, f"Released: {reason}")


@then("the two stand side by side, and she is asked which is to hold")
def side_by_side(mira):
    (pair,) = mira.following.pairs
    assert pair.likeness is Likeness.COLLIDES
    assert pair.rule.endswith("which is to hold?")
    assert {pair.one.title, pair.other.title} == {"Silas Marner", "Walden"}
